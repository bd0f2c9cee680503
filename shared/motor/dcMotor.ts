import { nonNegative, positive } from "../quantity/domain.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { type MotorConstants, noLoadCurrentAt, torqueFromCurrent } from "./motorConstants.ts";

export interface MotorAtVoltage {
  readonly motor: MotorConstants;
  /** U, mean voltage at the motor, V. */ readonly voltage: number;
}

/** Steady point of a motor. */
export interface MotorPoint {
  /** I, A. */ readonly current: number;
  /** ω, rad/s. */ readonly angularVelocity: number;
  /** Q, N·m. */ readonly torque: number;
  /** U I, W. */ readonly electricalPower: number;
  /** Q ω, W. */ readonly shaftPower: number;
  /** Shaft power over electrical power, 1. */ readonly efficiency: number;
}

/**
 * Speed, torque, power and efficiency of a motor that draws `current` (A) at `voltage` (V).
 *
 *   ω = K_v (U − I R),   Q = K_t (I − I_0 − b ω),   η = Q ω/(U I)
 *
 * Source   any dc-motor text, e.g. Fitzgerald, Kingsley & Umans, Electric Machinery, 6th ed., chapter on dc machines.
 * Assumes  permanent magnets, no saturation, winding temperature as at the resistance given.
 * Range    from no load to stall; outside it the signs show that the motor brakes or generates.
 * Throws   OutOfDomain for constants that are not physical, a voltage or current that is not positive.
 *
 * @example motorAtCurrent({ motor: { speedConstant: 51.31, resistance: 0.085, noLoadCurrent: 0.9,
 *   noLoadCurrentSlope: 0 }, voltage: 14.8, current: 10 }).efficiency // 0.8577
 */
export function motorAtCurrent({ motor, voltage, current }: MotorAtVoltage & { readonly current: number }): MotorPoint {
  requireMotor(motor, voltage);
  positive(current, "motor current", "A");
  const angularVelocity = motor.speedConstant * (voltage - current * motor.resistance);
  const torque = torqueFromCurrent(motor, current, angularVelocity);
  const electricalPower = voltage * current;
  const shaftPower = torque * angularVelocity;
  return { current, angularVelocity, torque, electricalPower, shaftPower, efficiency: shaftPower / electricalPower };
}

/** Current with the rotor held, U/R, A; infinite for a winding without resistance. */
export function stallCurrent({ motor, voltage }: MotorAtVoltage): number {
  return voltage / motor.resistance;
}

/**
 * Current of the motor running free at `voltage`, A: (I_0 + b K_v U)/(1 + b K_v R), where the torque vanishes.
 * With b = 0 it is I_0.
 */
export function freeRunningCurrent({ motor, voltage }: MotorAtVoltage): number {
  const bKv = motor.noLoadCurrentSlope * motor.speedConstant;
  return noLoadCurrentAt(motor, motor.speedConstant * voltage) / (1 + bKv * motor.resistance);
}

/**
 * Point of best efficiency at `voltage`.
 *
 *   I = sqrt(I_f I_s),   η_max = (1 + b K_v R) (1 − sqrt(I_f/I_s))²
 *
 * with I_f the free-running and I_s the stall current. Because I_0 + b ω is linear in I at constant voltage, shaft
 * power stays (1 + b K_v R)(U − I R)(I − I_f), so the textbook optimum holds with I_f in the place of I_0.
 *
 * Source   any dc-motor text for b = 0; the extension by the algebra above.
 * Throws   OutOfDomain as motorAtCurrent, for a winding or no-load current of zero (no optimum: efficiency only rises
 *          towards one end), and where the no-load current is not below the stall current.
 */
export function bestEfficiencyPoint({ motor, voltage }: MotorAtVoltage): MotorPoint {
  const { free, stall } = turningRange({ motor, voltage });
  positive(free, "no-load current", "A");
  return motorAtCurrent({ motor, voltage, current: Math.sqrt(free * stall) });
}

/**
 * Point of greatest shaft power at `voltage`: I = (I_s + I_f)/2, P_max = (1 + b K_v R) R (I_s − I_f)²/4.
 * Half of the electrical power is lost there: a limit to know, not a place to work at.
 *
 * Source   as bestEfficiencyPoint.
 * Throws   OutOfDomain as motorAtCurrent, for a winding without resistance, and where the motor can not turn.
 */
export function greatestPowerPoint({ motor, voltage }: MotorAtVoltage): MotorPoint {
  const { free, stall } = turningRange({ motor, voltage });
  return motorAtCurrent({ motor, voltage, current: (stall + free) / 2 });
}

function turningRange({ motor, voltage }: MotorAtVoltage): { free: number; stall: number } {
  requireMotor(motor, voltage);
  positive(motor.resistance, "winding resistance", "Ω");
  const free = freeRunningCurrent({ motor, voltage });
  const stall = stallCurrent({ motor, voltage });
  if (free < stall) return { free, stall };
  throw new OutOfDomain({
    found: `the no-load current ${formatNumber(free)} A is not below the stall current ${formatNumber(stall)} A`,
    needed: `a motor that turns at ${formatNumber(voltage)} V`,
    mend: "Check the winding resistance and the no-load current",
  });
}

function requireMotor(motor: MotorConstants, voltage: number): void {
  positive(voltage, "motor voltage", "V");
  positive(motor.speedConstant, "speed constant K_v", "rad/(V·s)");
  nonNegative(motor.resistance, "winding resistance", "Ω");
  nonNegative(motor.noLoadCurrent, "no-load current", "A");
  nonNegative(motor.noLoadCurrentSlope, "growth of the no-load current", "A·s/rad");
}

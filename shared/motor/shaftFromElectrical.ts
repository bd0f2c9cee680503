import { finite, nonNegative, positive } from "../quantity/domain.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { inducedVoltage, type MotorConstants, torqueConstant, torqueFromCurrent } from "./motorConstants.ts";

export interface ElectricalReading {
  /** U, voltage at the controller's input, V. */ readonly voltage: number;
  /** I, current into the controller, A. */ readonly current: number;
  /** n, rotation rate of the shaft, rev/s. */ readonly rotationRate: number;
  readonly motor: MotorConstants;
  /** R_c, resistance of the controller in the motor's current path, Ω. */ readonly controllerResistance: number;
}

export interface ShaftFromElectrical {
  /** I_m, A. */ readonly motorCurrent: number;
  /** Q, N·m; negative where the reading leaves less than the no-load current. */ readonly torque: number;
  /** P, W; sign of the torque. */ readonly shaftPower: number;
}

/**
 * Shaft torque and power from what a power meter and a tachometer read, without a torque cell.
 *
 *   I_m (ω/K_v + I_m (R_m + R_c)) = U I       the power that enters the controller heats wire or turns the rotor
 *   Q = K_t (I_m − I_0 − b ω),   P = Q ω      ω = 2 π n, K_t = 1/K_v
 *
 * The root taken is the one that vanishes with the power; it is written so that R = 0 needs no case of its own.
 *
 * Source   average-value model of motor and step-down converter: Erickson & Maksimovic, Fundamentals of Power
 *          Electronics, 2nd ed. (2001), ch. 3; any dc-motor text for the torque.
 * Assumes  steady running, current of the motor continuous, controller losses proportional to I_m²; switching and
 *          standing losses of the controller are not modelled and would be counted as torque.
 * Range    any rotation rate at or above zero. A torque below zero is returned as it comes: it means that the no-load
 *          current, K_v or the pole count does not belong to the reading, and the caller must be able to see it.
 * Error    see shaftSensitivities; the no-load current dominates at low power, K_v everywhere else.
 * Throws   OutOfDomain for inputs that are not physical, and where no current satisfies the power balance.
 *
 * @example shaftFromElectrical({ voltage: 15.5, current: 5, rotationRate: 50, motor: { speedConstant: 52.36,
 *   resistance: 0.1, noLoadCurrent: 0.6, noLoadCurrentSlope: 0 }, controllerResistance: 0.01 }).torque // 0.1945 N·m
 */
export function shaftFromElectrical(reading: ElectricalReading): ShaftFromElectrical {
  const { motor } = reading;
  const omega = angularVelocityOf(reading);
  const motorCurrent = motorCurrentOf(reading, omega);
  const torque = torqueFromCurrent(motor, motorCurrent, omega);
  return { motorCurrent, torque, shaftPower: torque * omega };
}

/** Inputs whose doubt reaches the torque. */
export interface ShaftPartials {
  readonly voltage: number;
  readonly current: number;
  readonly rotationRate: number;
  readonly speedConstant: number;
  readonly motorResistance: number;
  readonly noLoadCurrent: number;
  readonly noLoadCurrentSlope: number;
  readonly controllerResistance: number;
}

/**
 * Partial derivatives of torque (N·m) and shaft power (W) by each input in its SI unit (rotation rate in rev/s), for
 * the law of propagation of uncertainty (JCGM 100:2008, 5.1). From the implicit balance f = R I² + E I − U I_bus = 0
 * with S = ∂f/∂I = E + 2 R I: ∂I/∂(U I_bus) = 1/S, ∂I/∂E = −I/S, ∂I/∂R = −I²/S.
 *
 * Source   the relations of `shaftFromElectrical`, differentiated.
 * Error    first order.
 * Throws   OutOfDomain as shaftFromElectrical, and at rest without power, where the current has no derivative.
 */
export function shaftSensitivities(reading: ElectricalReading): {
  readonly torque: ShaftPartials;
  readonly shaftPower: ShaftPartials;
} {
  const omega = angularVelocityOf(reading);
  const torque = torquePartials(reading, omega);
  const Q = torqueFromCurrent(reading.motor, motorCurrentOf(reading, omega), omega);
  const shaftPower = {
    voltage: torque.voltage * omega,
    current: torque.current * omega,
    rotationRate: torque.rotationRate * omega + 2 * Math.PI * Q,
    speedConstant: torque.speedConstant * omega,
    motorResistance: torque.motorResistance * omega,
    noLoadCurrent: torque.noLoadCurrent * omega,
    noLoadCurrentSlope: torque.noLoadCurrentSlope * omega,
    controllerResistance: torque.controllerResistance * omega,
  };
  return { torque, shaftPower };
}

function torquePartials(reading: ElectricalReading, omega: number): ShaftPartials {
  const { voltage: U, current: I, motor, controllerResistance } = reading;
  const Kv = motor.speedConstant;
  const Kt = torqueConstant(motor);
  const Im = motorCurrentOf(reading, omega);
  const S = inducedVoltage(motor, omega) + 2 * Im * (motor.resistance + controllerResistance);
  if (!(S > 0)) {
    throw new OutOfDomain({
      found: "the motor is at rest and draws no power",
      needed: "a reading with power or rotation",
      mend: "Leave readings at rest out",
    });
  }
  const byResistance = (-Kt * Im * Im) / S;
  return {
    voltage: (Kt * I) / S,
    current: (Kt * U) / S,
    rotationRate: -2 * Math.PI * Kt * (Im / (S * Kv) + motor.noLoadCurrentSlope),
    speedConstant: -torqueFromCurrent(motor, Im, omega) / Kv + (Kt * Im * omega) / (S * Kv * Kv),
    motorResistance: byResistance,
    noLoadCurrent: -Kt,
    noLoadCurrentSlope: -Kt * omega,
    controllerResistance: byResistance,
  };
}

/** Checks the reading; ω in rad/s. */
function angularVelocityOf(reading: ElectricalReading): number {
  const { voltage, current, rotationRate, motor, controllerResistance } = reading;
  finite(voltage, "voltage", "V");
  finite(current, "current", "A");
  positive(motor.speedConstant, "speed constant K_v", "rad/(V·s)");
  nonNegative(motor.resistance, "winding resistance", "Ω");
  nonNegative(motor.noLoadCurrent, "no-load current", "A");
  nonNegative(motor.noLoadCurrentSlope, "growth of the no-load current", "A·s/rad");
  nonNegative(controllerResistance, "controller resistance", "Ω");
  return 2 * Math.PI * nonNegative(rotationRate, "rotation rate", "rev/s");
}

function motorCurrentOf({ voltage, current, motor, controllerResistance }: ElectricalReading, omega: number): number {
  const P = voltage * current;
  const E = inducedVoltage(motor, omega);
  const R = motor.resistance + controllerResistance;
  if (P === 0) return 0;
  const denominator = E + Math.sqrt(E * E + 4 * R * P);
  if (denominator > 0 && Number.isFinite(denominator)) return (2 * P) / denominator;
  throw new OutOfDomain({
    found: `${formatNumber(P)} W into the controller at ${formatNumber(omega)} rad/s`,
    needed: `a power that a motor with ${formatNumber(R)} Ω and ${formatNumber(E)} V induced can take`,
    mend: "Check the sign of the current, the pole pairs and the motor's constants",
  });
}

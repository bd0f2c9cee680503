import type { TrueFall, TrueMotor, TruePropeller } from "./truth.ts";

export interface Thruster {
  readonly motor: TrueMotor;
  readonly propeller: TruePropeller;
  /** Resistance of the controller in the motor's current path, ohm. */
  readonly controllerResistance: number;
  readonly supply: { readonly openCircuitVoltage: number; readonly resistance: number };
  /** Density of the water, kg/m³. */
  readonly density: number;
  /** Extra torque of a flooded rotor, k ω^m, N·m. */
  readonly wetLoss?: { readonly coefficient: number; readonly exponent: number };
  /** Carried through the water: how fast at a time, m/s, and what the advance ratio does to the coefficients. */
  readonly towed?: { readonly speedAt: (time: number) => number; readonly fall: TrueFall };
}

/** Hold the throttle at `throttle` (0 to 1) for `duration` seconds. */
export interface Step {
  readonly duration: number;
  readonly throttle: number;
}

/** What is true at one moment. SI; rotation rate in rev/s. */
export interface Moment {
  readonly time: number;
  /** Throttle asked for, 0 to 1; the controller follows with a lag. */
  readonly asked: number;
  readonly rotationRate: number;
  /** Through the water, m/s. */
  readonly speed: number;
  /** Turns of the shaft since the start. */
  readonly turns: number;
  readonly thrust: number;
  readonly torque: number;
  readonly voltage: number;
  readonly current: number;
}

/** Time constant with which the controller follows the throttle that is asked for, s. */
const CONTROLLER_LAG = 0.3;
/** Step of the integration, s: a fiftieth of the shortest time constant. */
const TIME_STEP = 1e-3;

/**
 * Currents and voltages of motor, controller and supply at angular velocity `omega` and throttle `delta`.
 * Average-value model: delta U - I_m R_c = omega/K_v + I_m R_m, supply current delta I_m, U = U_oc - R_s delta I_m.
 * The controller lets the motor run on without braking, so the motor current never turns negative.
 */
export function electricalState(thruster: Thruster, delta: number, omega: number) {
  const { motor, supply, controllerResistance } = thruster;
  const surplus = delta * supply.openCircuitVoltage - omega / motor.speedConstant;
  const resistance = motor.resistance + controllerResistance + delta ** 2 * supply.resistance;
  const motorCurrent = Math.max(0, surplus / resistance);
  const current = delta * motorCurrent;
  return { motorCurrent, current, voltage: supply.openCircuitVoltage - supply.resistance * current };
}

/** Shaft torque of the motor after core and bearing friction, N·m; friction can hold a resting rotor but not turn it. */
function motorTorque(motor: TrueMotor, motorCurrent: number, omega: number): number {
  const friction = omega > 0 || motorCurrent > motor.noLoadCurrent ? motor.noLoadCurrent : motorCurrent;
  return (motorCurrent - friction - motor.noLoadCurrentSlope * omega) / motor.speedConstant;
}

function wetTorque({ wetLoss }: Thruster, omega: number): number {
  return wetLoss && omega > 0 ? wetLoss.coefficient * omega ** wetLoss.exponent : 0;
}

/** The throttle asked for at `time`, and the whole length of a schedule. */
function askedAt(schedule: readonly Step[], time: number): number {
  let end = 0;
  for (const step of schedule) {
    end += step.duration;
    if (time < end) return step.throttle;
  }
  return 0;
}

export const lengthOf = (schedule: readonly Step[]) => schedule.reduce((sum, step) => sum + step.duration, 0);

const STILL = { speed: 0, thrust: 1, torque: 1 };

/** Speed, and the coefficients as parts of those at rest, of a thruster that turns at `n`. */
function underWay({ towed, propeller }: Thruster, time: number, n: number): typeof STILL {
  if (!towed) return STILL;
  const speed = towed.speedAt(time);
  const J = n > 0 ? speed / (n * propeller.diameter) : 0;
  const at = ([linear, square]: readonly [number, number]) => 1 + linear * J + square * J ** 2;
  return { speed, thrust: at(towed.fall.thrust), torque: at(towed.fall.torque) };
}

/** Runs a thruster in still water, or towed, through a schedule and gives its state at each of `times` (s, rising). */
export function runThruster(thruster: Thruster, schedule: readonly Step[], times: readonly number[]): Moment[] {
  const { density, motor } = thruster;
  const { diameter: D, thrustCoefficient, torqueCoefficient } = thruster.propeller;
  const moments: Moment[] = [];
  let omega = 0;
  let delta = 0;
  let turns = 0;
  for (let step = 0; moments.length < times.length; step++) {
    const time = step * TIME_STEP;
    const asked = askedAt(schedule, time);
    const n = omega / (2 * Math.PI);
    const way = underWay(thruster, time, n);
    const torque = way.torque * (torqueCoefficient * density * n ** 2 * D ** 5) + wetTorque(thruster, omega);
    const { motorCurrent, current, voltage } = electricalState(thruster, delta, omega);
    while (moments.length < times.length && times[moments.length]! < time + TIME_STEP / 2) {
      const thrust = way.thrust * (thrustCoefficient * density * n ** 2 * D ** 4);
      const state = { asked, rotationRate: n, speed: way.speed, turns, thrust, torque, voltage, current };
      moments.push({ time: times[moments.length]!, ...state });
    }
    delta += ((asked - delta) * TIME_STEP) / CONTROLLER_LAG;
    turns += n * TIME_STEP;
    omega = Math.max(0, omega + ((motorTorque(motor, motorCurrent, omega) - torque) / motor.inertia) * TIME_STEP);
  }
  return moments;
}

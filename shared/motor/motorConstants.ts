/** What the steady model of a permanent-magnet motor needs; a stored motor can be handed over as it is. */
export interface MotorConstants {
  /** K_v, rad/(V·s). */ readonly speedConstant: number;
  /** R_m, winding resistance between two terminals, Ω. */ readonly resistance: number;
  /** I_0, no-load current extrapolated to rest, A. */ readonly noLoadCurrent: number;
  /** b, growth of the no-load current with angular velocity, A·s/rad. */ readonly noLoadCurrentSlope: number;
}

/**
 * Torque constant K_t = 1/K_v, N·m/A: the same constant as K_v when both are in SI.
 *
 * Source   power ω Q = E I of the rotor; any dc-motor text, e.g. Fitzgerald, Kingsley & Umans, Electric Machinery, 6th
 *          ed., chapter on dc machines, from memory.
 * Range    K_v greater than 0, which the caller has checked.
 */
export function torqueConstant({ speedConstant }: MotorConstants): number {
  return 1 / speedConstant;
}

/**
 * Current with the rotor held, U/R, A, at a mean `voltage` (V) at the motor; infinite for a winding without resistance.
 *
 * Source   Ohm's law; any dc-motor text.
 */
export function stallCurrent({ resistance }: MotorConstants, voltage: number): number {
  return voltage / resistance;
}

/**
 * Current of the motor running free at a mean `voltage` (V), A, where the torque vanishes. With b = 0 it is I_0.
 *
 *   I_f = (I_0 + b K_v U)/(1 + b K_v R)
 *
 * Source   any dc-motor text for b = 0; with b by ω = K_v (U − I R) and Q = K_t (I − I_0 − b ω) = 0.
 */
export function freeRunningCurrent(motor: MotorConstants, voltage: number): number {
  const bKv = motor.noLoadCurrentSlope * motor.speedConstant;
  return noLoadCurrentAt(motor, motor.speedConstant * voltage) / (1 + bKv * motor.resistance);
}

/** No-load current I_0 + b ω at `angularVelocity` (rad/s), A. */
export function noLoadCurrentAt(motor: MotorConstants, angularVelocity: number): number {
  return motor.noLoadCurrent + motor.noLoadCurrentSlope * angularVelocity;
}

/** Voltage the turning rotor induces, ω/K_v, V, at `angularVelocity` in rad/s. */
export function inducedVoltage(motor: MotorConstants, angularVelocity: number): number {
  return angularVelocity / motor.speedConstant;
}

/**
 * Shaft torque, N·m, from motor `current` (A) at `angularVelocity` (rad/s); negative below the no-load current.
 *
 *   Q = K_t (I − I_0 − b ω)
 *
 * Source   any dc-motor text for b = 0; b as drag in proportion to the speed, common practice, no source.
 * Assumes  permanent magnets, no saturation, current of the motor continuous.
 */
export function torqueFromCurrent(motor: MotorConstants, current: number, angularVelocity: number): number {
  return (current - noLoadCurrentAt(motor, angularVelocity)) / motor.speedConstant;
}

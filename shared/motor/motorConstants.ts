/** What the steady model of a permanent-magnet motor needs; a stored motor can be handed over as it is. */
export interface MotorConstants {
  /** K_v, rad/(V·s). */ readonly speedConstant: number;
  /** R_m, winding resistance between two terminals, Ω. */ readonly resistance: number;
  /** I_0, no-load current extrapolated to rest, A. */ readonly noLoadCurrent: number;
  /** b, growth of the no-load current with angular velocity, A·s/rad. */ readonly noLoadCurrentSlope: number;
}

/** Torque constant K_t = 1/K_v, N·m/A: the same constant as K_v when both are in SI. */
export function torqueConstant({ speedConstant }: MotorConstants): number {
  return 1 / speedConstant;
}

/** No-load current I_0 + b ω at `angularVelocity` (rad/s), A. */
export function noLoadCurrentAt(motor: MotorConstants, angularVelocity: number): number {
  return motor.noLoadCurrent + motor.noLoadCurrentSlope * angularVelocity;
}

/** Voltage the turning rotor induces, ω/K_v, V, at `angularVelocity` in rad/s. */
export function inducedVoltage(motor: MotorConstants, angularVelocity: number): number {
  return angularVelocity / motor.speedConstant;
}

/** Shaft torque K_t (I − I_0 − b ω), N·m, from motor `current` (A) at `angularVelocity` (rad/s). */
export function torqueFromCurrent(motor: MotorConstants, current: number, angularVelocity: number): number {
  return (current - noLoadCurrentAt(motor, angularVelocity)) / motor.speedConstant;
}

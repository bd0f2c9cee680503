import type { DriveRequest } from "../model/drive.ts";
import { currentFromTorque, inducedVoltage, type MotorConstants } from "../motor/motorConstants.ts";
import type { Supply } from "../supply/busVoltage.ts";

/**
 * Supply, controller, motor and propeller as one chain at bollard, reduced to what the steady state needs. Everything
 * here is a function of the angular velocity or, where the rotor may still be held by its friction, of the motor
 * current; nothing allocates, because a map of operating points asks for it a million times.
 */
export interface Chain {
  readonly motor: MotorConstants;
  readonly controllerResistance: number;
  readonly supply: Supply;
  readonly hotelPower: number;
  readonly thrusters: number;
  /** T/n² = K_T ρ D⁴, N·s². */ readonly thrustFactor: number;
  /** Q/ω² = K_Q ρ D⁵/(2π)², N·m·s². */ readonly torqueFactor: number;
}

/** The chain that a request describes; the request has been checked by `requireDrive`. */
export function chainOf(request: DriveRequest): Chain {
  const { density, diameter, thrustCoefficient, torqueCoefficient } = request;
  return {
    motor: {
      speedConstant: request.speedConstant,
      resistance: request.motorResistance,
      noLoadCurrent: request.noLoadCurrent,
      noLoadCurrentSlope: request.noLoadCurrentSlope,
    },
    controllerResistance: request.controllerResistance,
    supply: { openCircuitVoltage: request.supplyVoltage, resistance: request.supplyResistance },
    hotelPower: request.hotelPower,
    thrusters: request.thrusters,
    thrustFactor: thrustCoefficient * density * diameter ** 4,
    torqueFactor: (torqueCoefficient * density * diameter ** 5) / (2 * Math.PI) ** 2,
  };
}

/** Resistance in the path of the motor current, Ω. */
export function pathResistance(chain: Chain): number {
  return chain.motor.resistance + chain.controllerResistance;
}

/** Motor current, A, that turns the propeller at `omega` (rad/s). */
export function currentAt(chain: Chain, omega: number): number {
  return currentFromTorque(chain.motor, chain.torqueFactor * omega * omega, omega);
}

/** Voltage δ U that the controller must put on the motor and itself, V, for `current` (A) at `omega` (rad/s). */
export function inputVoltage(chain: Chain, omega: number, current: number): number {
  return inducedVoltage(chain.motor, omega) + current * pathResistance(chain);
}

/** Angular velocity, rad/s, at a motor current (A): K_v k ω² + b ω + I_0 = I; 0 while friction holds the rotor. */
export function velocityAtCurrent(chain: Chain, current: number): number {
  const { speedConstant, noLoadCurrent, noLoadCurrentSlope } = chain.motor;
  return positiveRoot(speedConstant * chain.torqueFactor, noLoadCurrentSlope, current - noLoadCurrent);
}

/** Angular velocity, rad/s, at a voltage δ U (V): R K_v k ω² + (1/K_v + R b) ω + R I_0 = δ U; 0 below break-away. */
export function velocityAtInputVoltage(chain: Chain, voltage: number): number {
  const { speedConstant, noLoadCurrent, noLoadCurrentSlope } = chain.motor;
  const R = pathResistance(chain);
  return positiveRoot(
    R * speedConstant * chain.torqueFactor,
    1 / speedConstant + R * noLoadCurrentSlope,
    voltage - R * noLoadCurrent,
  );
}

/** Positive root of a x² + b x = d for a, b not negative; free of cancellation, and right for a = 0. */
function positiveRoot(a: number, b: number, d: number): number {
  return d > 0 ? (2 * d) / (b + Math.sqrt(b * b + 4 * a * d)) : 0;
}

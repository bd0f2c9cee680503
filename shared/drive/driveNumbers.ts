import type { OPERATING_POINT_NUMBERS, OperatingPoint } from "../model/drive.ts";
import { inducedVoltage, noLoadCurrentAt } from "../motor/motorConstants.ts";
import type { Chain } from "./chain.ts";
import { inputVoltage } from "./chain.ts";
import type { SteadyState } from "./steadyState.ts";

export type DriveNumbers = Pick<OperatingPoint, keyof typeof OPERATING_POINT_NUMBERS>;

/** Everything a reader asks of a steady state, SI. Ratios are 0 where nothing is drawn, as nothing is delivered. */
export function driveNumbers(chain: Chain, throttle: number, state: SteadyState): DriveNumbers {
  const { angularVelocity: omega, motorCurrent: I, busVoltage: U } = state;
  const n = omega / (2 * Math.PI);
  const thrust = chain.thrustFactor * n * n;
  const torque = chain.torqueFactor * omega * omega;
  const shaftPower = torque * omega;
  const electricalPower = inputVoltage(chain, omega, I) * I;
  return {
    rotationRate: n,
    thrust,
    torque,
    motorCurrent: I,
    motorVoltage: inducedVoltage(chain.motor, omega) + I * chain.motor.resistance,
    supplyCurrent: chain.thrusters * throttle * I + chain.hotelPower / U,
    supplyVoltage: U,
    shaftPower,
    electricalPower,
    efficiency: ratio(shaftPower, electricalPower),
    thrustPerPower: ratio(thrust, electricalPower),
  };
}

/**
 * Where the power goes: U_oc I_s = supply loss + hotel load + N (controller + winding + friction + shaft).
 * Controller, winding and friction are of one thruster.
 */
export function driveLosses(chain: Chain, state: SteadyState, numbers: DriveNumbers): OperatingPoint["losses"] {
  const { angularVelocity: omega, motorCurrent: I } = state;
  return {
    supplyResistance: chain.supply.resistance * numbers.supplyCurrent ** 2,
    controllerResistance: chain.controllerResistance * I * I,
    winding: chain.motor.resistance * I * I,
    friction: noLoadCurrentAt(chain.motor, omega) * inducedVoltage(chain.motor, omega),
  };
}

/** `part` of `whole`; 0 for nothing of nothing. */
export function ratio(part: number, whole: number): number {
  return whole === 0 ? 0 : part / whole;
}

import type { OPERATING_POINT_NUMBERS, OperatingPoint } from "../model/drive.ts";
import { electricalPowerOf, partThrottleLossOf, supplyCurrentOf } from "./bus.ts";
import { type Chain, rotationRateAt } from "./chain.ts";
import {
  frictionLossOf,
  motorPowerOf,
  propellerTorque,
  type SteadyState,
  thrustOf,
  wetTorque,
  windingTemperatureOf,
} from "./shaftState.ts";

export type DriveNumbers = Pick<OperatingPoint, keyof typeof OPERATING_POINT_NUMBERS>;

/** Everything that is read off a steady state, SI. Ratios are 0 where nothing is drawn, as nothing is delivered. */
export function driveNumbers(chain: Chain, state: SteadyState): DriveNumbers {
  const { angularVelocity: omega, motorCurrent: I } = state;
  const thrust = thrustOf(chain, state);
  const rotationRate = rotationRateAt(chain, omega);
  const torque = state.status === "turning" ? propellerTorque(chain, omega) : 0;
  const shaftPower = torque * 2 * Math.PI * rotationRate;
  const electricalPower = electricalPowerOf(chain, state);
  return {
    rotationRate,
    thrust,
    torque,
    motorCurrent: I,
    motorVoltage: state.inputVoltage - I * chain.controllerResistance,
    supplyCurrent: supplyCurrentOf(chain, state),
    supplyVoltage: state.busVoltage,
    windingTemperature: windingTemperatureOf(chain, state),
    shaftPower,
    electricalPower,
    efficiency: ratio(shaftPower, electricalPower),
    thrustPerPower: ratio(thrust, electricalPower),
  };
}

/**
 * Where the power goes: U_oc I_s = supply loss + hotel load + N (standby + part throttle + controller + winding +
 * friction + water in the motor + gear + propeller shaft), W. All but the supply loss are of one thruster.
 *
 * Source   the balance of the model itself; a test adds the parts up.
 */
export function driveLosses(chain: Chain, state: SteadyState, numbers: DriveNumbers): OperatingPoint["losses"] {
  const { angularVelocity: omega, motorCurrent: I } = state;
  const turning = state.status === "turning";
  return {
    supplyResistance: chain.supplyResistance * numbers.supplyCurrent ** 2,
    controllerResistance: chain.controllerResistance * I * I,
    partThrottle: partThrottleLossOf(chain, state),
    standby: chain.standbyPower,
    winding: state.motorResistance * I * I,
    friction: turning ? frictionLossOf(chain, state) : 0,
    wetRotor: turning ? wetTorque(chain, omega) * omega : 0,
    gear: numbers.shaftPower * (1 / chain.gearEfficiency - 1),
  };
}

/** Efficiencies of the parts; 0 for nothing of nothing. That of the propeller needs more than the chain. */
export function chainEfficiencies(
  chain: Chain,
  state: SteadyState,
  numbers: DriveNumbers,
): Omit<OperatingPoint["efficiencies"], "propeller"> {
  const motorPower = motorPowerOf(chain, state);
  const geared = numbers.shaftPower / chain.gearEfficiency;
  return {
    supply: numbers.supplyVoltage / chain.supplyVoltage,
    controller: ratio(motorPower, numbers.electricalPower),
    motor: ratio(geared, motorPower),
    gear: ratio(numbers.shaftPower, geared),
  };
}

/** `part` of `whole`; 0 for nothing of nothing. */
export function ratio(part: number, whole: number): number {
  return whole === 0 ? 0 : part / whole;
}

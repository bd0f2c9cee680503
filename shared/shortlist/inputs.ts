import type { Advance } from "../drive/chain.ts";
import type { OpenWater } from "../model/drivePropeller.ts";
import type { ShortlistRequirement } from "../model/shortlist.ts";

/** What a motor brings into a combination. Absent limits are Infinity. */
export interface MotorInputs {
  speedConstant: number;
  motorResistance: number;
  noLoadCurrent: number;
  noLoadCurrentSlope: number;
  /** K/W; 0: the winding is not followed. */ thermalResistance: number;
  resistanceTemperature: number;
  surroundings: number;
  /** k of Q = k ω^m; 0: none. */ wetTorque: number;
  wetExponent: number;
  motorCurrent: number;
  motorPower: number;
  windingTemperature: number;
  motorVoltage: number;
}

export interface ControllerInputs {
  controllerResistance: number;
  freewheelVoltage: number;
  switchingLoss: number;
  standbyPower: number;
  controllerCurrent: number;
  controllerVoltage: number;
}

export interface SupplyInputs {
  supplyVoltage: number;
  supplyResistance: number;
  supplyCurrent: number;
  fuseCurrent: number;
  tetherCurrent: number;
  /** 0: none stated. */ leastVoltage: number;
  /** Charge that may be used down to the reserve, C; Infinity without end, NaN where not stated. */ charge: number;
}

export interface GearInputs {
  gearRatio: number;
  gearEfficiency: number;
}

/** A propeller running in one of the states asked for. */
export interface CurveInputs {
  thrustCoefficient: number;
  torqueCoefficient: number;
  readonly openWater: OpenWater | null;
  /** The same at the speed that is asked; null at rest. */ readonly advance: Advance | null;
  /** Rotation rates at which cavitation sets in and air is drawn; Infinity where not asked. */
  readonly cavitation: number;
  readonly ventilation: number;
}

/** Constants of the water and the vehicle. */
export interface CommonInputs {
  density: number;
  hotelPower: number;
  readonly thrusters: number;
}

/**
 * Everything that the steady state of one combination hangs on, flat and filled again for the next: what a chain is made of,
 * with limits and charge. The two coefficients are those of the curve that runs.
 */
export interface Inputs extends MotorInputs, ControllerInputs, SupplyInputs, GearInputs, CommonInputs {
  diameter: number;
  thrustCoefficient: number;
  torqueCoefficient: number;
}

/** An input that may carry a standard uncertainty, by its name in `Inputs`; of coefficients: with their state. */
export type DoubtfulInput =
  | Exclude<keyof Inputs, "thrusters" | "thrustCoefficient" | "torqueCoefficient">
  | "thrustAhead"
  | "torqueAhead"
  | "thrustAstern"
  | "torqueAstern";

export interface InputDoubt {
  readonly input: DoubtfulInput;
  readonly standardUncertainty: number;
}

export interface InputCorrelation {
  readonly of: DoubtfulInput;
  readonly and: DoubtfulInput;
  readonly coefficient: number;
}

/** Standard uncertainties that one part brings, and how they hang together. */
export interface Doubts {
  readonly inputs: readonly InputDoubt[];
  readonly correlations: readonly InputCorrelation[];
}

export const NO_DOUBT: Doubts = { inputs: [], correlations: [] };

/** Inputs before any part is put in. */
export function emptyInputs({ hotelPower, thrusters }: ShortlistRequirement, density: number): Inputs {
  return {
    ...{ speedConstant: 0, motorResistance: 0, noLoadCurrent: 0, noLoadCurrentSlope: 0 },
    ...{ thermalResistance: 0, resistanceTemperature: 0, surroundings: 0, wetTorque: 0, wetExponent: 2 },
    ...{ motorCurrent: 0, motorPower: 0, windingTemperature: 0, motorVoltage: 0 },
    ...{ controllerResistance: 0, freewheelVoltage: 0, switchingLoss: 0, standbyPower: 0 },
    ...{ controllerCurrent: 0, controllerVoltage: 0 },
    ...{ supplyVoltage: 0, supplyResistance: 0, supplyCurrent: 0, fuseCurrent: 0, tetherCurrent: 0 },
    ...{ leastVoltage: 0, charge: 0, gearRatio: 1, gearEfficiency: 1, diameter: 0 },
    ...{ thrustCoefficient: 0, torqueCoefficient: 0 },
    ...{ density, hotelPower, thrusters },
  };
}

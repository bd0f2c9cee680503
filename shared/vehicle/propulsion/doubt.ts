import type { VehicleNumbers } from "./vehicleNumbers.ts";

/** What a doubtful input acts on, so that what it does not touch need not be worked out again. */
export type DoubtOf = "propulsion" | "drag" | "tether" | "mass" | "weight" | "current";

/** One doubtful input of a vehicle. */
export interface Doubt {
  readonly key: string;
  /** Inputs of one group are told together; correlated ones share a group. */ readonly group: string;
  /** The group in words. */ readonly name: string;
  readonly mend: string;
  readonly of: DoubtOf;
  /** Its unit. */ readonly standardUncertainty: number;
  /** The numbers with the input changed by so much. */
  readonly shift: (numbers: VehicleNumbers, by: number) => VehicleNumbers;
}

export interface DoubtCorrelation {
  /** Places in the list of doubts. */ readonly a: number;
  readonly b: number;
  readonly coefficient: number;
}

export interface VehicleDoubts {
  readonly list: readonly Doubt[];
  readonly correlations: readonly DoubtCorrelation[];
}

/** A number of the vehicle changed as it stands. */
export const plain =
  (key: "wakeFraction" | "thrustDeduction" | "hotelPower" | "mass" | "netBuoyancy" | "payload" | "currentSpeed") =>
  (numbers: VehicleNumbers, by: number): VehicleNumbers => ({ ...numbers, [key]: numbers[key] + by });

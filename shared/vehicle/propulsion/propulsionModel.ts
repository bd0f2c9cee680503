import type { SupplyState } from "../../model/supplyState.ts";
import type { MotionWay } from "../../model/vehicle/motionAnswer.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { unitDirection, type Vector } from "../layout/wrenchMatrix.ts";
import { type ThrustGeometry, thrustGeometry } from "./thrustShares.ts";
import { type VehicleFacts, type VehicleNumbers, vehicleFacts } from "./vehicleNumbers.ts";
import { type DriveModel, driveModel, type WayAtSpeed, wayAtSpeed } from "./wayModel.ts";

/** Which drive a thruster has, and which way its forward thrust pushes. */
export interface ModelThruster {
  readonly name: string;
  readonly drive: number;
  readonly direction: Vector;
}

/** All thrusters of a vehicle, ready to be put on one bus. */
export interface PropulsionModel {
  readonly numbers: VehicleNumbers;
  readonly drives: readonly DriveModel[];
  readonly thrusters: readonly ModelThruster[];
  readonly geometry: ThrustGeometry;
  readonly supplyLimits: SupplyState["limits"];
}

/**
 * The thrusters of a vehicle on its supply.
 *
 * Throws   as `vehicleFacts` and `thrustGeometry`.
 */
export function propulsionModel(vehicle: Vehicle, facts: VehicleFacts = vehicleFacts(vehicle)): PropulsionModel {
  const { numbers, supply } = facts;
  return {
    numbers,
    drives: numbers.drives.map(driveModel),
    thrusters: vehicle.thrusters.map(({ name, drive, direction }, i) => ({
      name,
      drive: vehicle.drives.findIndex((one) => one.name === drive),
      direction: unitDirection(direction, `thrusters.${i}.direction`),
    })),
    geometry: thrustGeometry(vehicle),
    supplyLimits: supply.limits,
  };
}

/** The same vehicle with other numbers: a draw, or one input a little changed. */
export function withNumbers(model: PropulsionModel, numbers: VehicleNumbers): PropulsionModel {
  const drives = numbers.drives.map((ways, i) =>
    ways === model.numbers.drives[i] ? model.drives[i]! : driveModel(ways),
  );
  return { ...model, numbers, drives };
}

/** Unit vector of a way in the axes of the vehicle: x forward, y to starboard, z down. */
export const WAY_VECTOR: Readonly<Record<MotionWay, Vector>> = {
  ahead: [1, 0, 0],
  astern: [-1, 0, 0],
  starboard: [0, 1, 0],
  port: [0, -1, 0],
  up: [0, 0, -1],
  down: [0, 0, 1],
};

/** Each thruster at a velocity through the water. */
export interface ThrusterFlow {
  readonly ahead: WayAtSpeed;
  readonly astern: WayAtSpeed | null;
  /** Speed of the water into the propeller along its forward push, m/s; the other sign astern. */
  readonly inflow: number;
}

export interface Flow {
  readonly thrusters: readonly ThrusterFlow[];
  /** All ways that the thrusters share. */ readonly ways: readonly WayAtSpeed[];
}

/**
 * The water at each propeller.
 *
 *   V_A = (1 − w) v·d
 *
 * Assumes  one wake fraction for all thrusters; water that comes against the push, or across it, counts as none.
 */
export function flowAt({ drives, thrusters, numbers }: PropulsionModel, velocity: Vector): Flow {
  const made = new Map<string, WayAtSpeed>();
  const way = (drive: number, side: "ahead" | "astern", inflow: number): WayAtSpeed | null => {
    const model = drives[drive]![side];
    if (model === null) return null;
    // Inflows that differ by rounding alone are one.
    const key = `${drive} ${side} ${Math.max(0, inflow).toPrecision(12)}`;
    const one = made.get(key) ?? wayAtSpeed(model, inflow);
    made.set(key, one);
    return one;
  };
  const flows = thrusters.map(({ drive, direction: d }) => {
    const along = velocity[0] * d[0] + velocity[1] * d[1] + velocity[2] * d[2];
    const inflow = (1 - numbers.wakeFraction) * along;
    return { inflow, ahead: way(drive, "ahead", inflow)!, astern: way(drive, "astern", -inflow) };
  });
  return { thrusters: flows, ways: [...made.values()] };
}

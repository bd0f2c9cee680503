import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { PullFor } from "./linearMotion.ts";
import { tetherAtOne, tetherModel } from "./tetherModel.ts";
import { NO_PULL, type TetherPull, tetherOut } from "./tetherPull.ts";

/** A current, m/s, and where it comes from, off the bow, rad. */
export interface CurrentFrom {
  readonly speed: number;
  readonly from: number;
}

/** The tether of a vehicle in any current; what was solved for one question serves the next. */
export interface TetherBook {
  /** Its force in the current of the scenario, which the numbers may change. */ readonly pullFor: PullFor;
  /** Its force in a current, whatever the current of the numbers is. */
  readonly in: (current: CurrentFrom) => PullFor;
  /** Its force on a vehicle that holds its place in 1 m/s from an angle off the bow, rad. */
  readonly atOne: (numbers: VehicleNumbers) => (from: number) => TetherPull;
}

/** Currents whose difference is below this part are told from one model by its slope. */
const NEAR = 2e-3;

/**
 * Quick models of a tether, one for each current that is asked for.
 *
 * Source   `tetherModel`, `tetherPulls`.
 * Assumes  as those.
 * Error    as `tetherModel`.
 */
export function tetherBook(
  vehicle: Vehicle,
  numbers: VehicleNumbers,
  length = vehicle.scenario.tetherLength,
): TetherBook {
  const out = tetherOut(vehicle, numbers, length);
  if (out === null) return { pullFor: () => () => NO_PULL, in: () => () => () => NO_PULL, atOne: () => () => NO_PULL };
  const { currentFrom } = vehicle.scenario;
  const own = tetherModel(out, currentFrom);
  const models: { readonly current: CurrentFrom; readonly pullFor: PullFor }[] = [
    { current: { speed: numbers.currentSpeed, from: currentFrom }, pullFor: own },
  ];
  const there = { ...out, numbers: { ...numbers, currentSpeed: 1 } };
  const held = new Map<number, (numbers: VehicleNumbers) => TetherPull>();
  return {
    pullFor: own,
    in: (current) => {
      const known = models.find(({ current: one }) => one.from === current.from && isNear(one.speed, current.speed));
      if (known) return at(known.pullFor, current.speed);
      const pullFor = tetherModel({ ...out, numbers: { ...numbers, currentSpeed: current.speed } }, current.from);
      models.push({ current, pullFor });
      return at(pullFor, current.speed);
    },
    atOne: (changed) => (from) => {
      // Its upper end is straight astern: what comes from port is the mirror image of what comes from starboard.
      const side = Math.sin(from) < 0 ? -1 : 1;
      const angle = Math.acos(Math.cos(from));
      const key = Number(angle.toFixed(9));
      const known = held.get(key) ?? tetherAtOne(there, angle, [Math.cos(angle), Math.sin(angle), 0]);
      held.set(key, known);
      const pull = known({ ...changed, currentSpeed: 1 });
      const [x, y, z] = pull.force;
      return { ...pull, force: [x, side * y, z] };
    },
  };
}

const isNear = (a: number, b: number) => Math.abs(a - b) <= NEAR * Math.min(Math.abs(a), Math.abs(b));

const at =
  (pullFor: PullFor, currentSpeed: number): PullFor =>
  (numbers) =>
    pullFor({ ...numbers, currentSpeed });

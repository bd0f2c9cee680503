import type { TetherRequest } from "../../model/vehicle/tetherShape.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { InputProblem } from "../../quantity/problem.ts";
import type { Vector } from "../layout/wrenchMatrix.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { checkTether } from "../tether/checkTether.ts";
import { type Near, searchAnchor } from "../tether/searchAnchor.ts";
import { chordOf, shapeProblem } from "../tether/solveTether.ts";

/** A tether that is out, and the water it hangs in. */
export interface TetherOut {
  readonly vehicle: Vehicle;
  readonly numbers: VehicleNumbers;
  /** Length paid out, m. */ readonly length: number;
}

export interface TetherPull {
  /** Force on the vehicle ahead, to starboard and down, N. */ readonly force: Vector;
  readonly converged: boolean;
  /** What the search for one nearby may begin with. */ readonly near: Near | null;
}

export const NO_PULL: TetherPull = { force: [0, 0, 0], converged: true, near: null };

/** Error of the integration: far finer than any tether is known. */
const TOLERANCE = 1e-7;

/** The tether of a vehicle in its scenario; null where none is out. */
export function tetherOut(
  vehicle: Vehicle,
  numbers: VehicleNumbers,
  length = vehicle.scenario.tetherLength,
): TetherOut | null {
  return vehicle.tether === undefined || length === 0 ? null : { vehicle, numbers, length };
}

/**
 * The question to the tether at a velocity through the water (m/s, axes of the vehicle), with the current from an angle
 * off the bow (rad). Its upper end is at the surface, astern of the vehicle by the offset of the scenario.
 */
export function tetherRequest({ vehicle, numbers, length }: TetherOut, through: Vector, from: number): TetherRequest {
  const { cable, motion } = vehicle.tether!;
  const { depth, currentProfile, tetherOffset } = vehicle.scenario;
  const { normal, tangential, weight } = numbers.tether;
  const U = numbers.currentSpeed;
  const direction = wrapped(from + Math.PI);
  const current =
    currentProfile === "uniform" || depth === 0
      ? { kind: "uniform" as const, speed: U, direction }
      : {
          kind: "sheared" as const,
          direction,
          profile: [
            { depth: 0, speed: 0 },
            { depth, speed: U },
          ],
        };
  const drift: Vector = [-U * Math.cos(from), -U * Math.sin(from), 0];
  return {
    tether: {
      ...cable,
      ...{ length, normalDragCoefficient: cable.normalDragCoefficient * normal },
      tangentialDragCoefficient: cable.tangentialDragCoefficient * tangential,
      netWeightPerLength: cable.netWeightPerLength * weight,
    },
    surroundings: { density: numbers.density, current, currentRelativeUncertainty: 0 },
    vehicle: {
      depth,
      velocity: { forward: through[0] + drift[0], starboard: through[1] + drift[1], down: through[2] },
    },
    motion,
    given: { what: "upperEnd", upperEnd: { forward: -tetherOffset, starboard: 0, depth: 0 } },
  };
}

/** Part of a velocity by which another may differ for its shape to be a better beginning than none. */
const LIKE = 0.6;

/** Up and down a tether is taken in or paid out along itself: it pulls as at rest. */
export const handled = (through: Vector): Vector => (through[0] === 0 && through[1] === 0 ? [0, 0, 0] : through);

/**
 * Force of the tether on the vehicle, as a function of its velocity through the water; each search begins at the shape of
 * the nearest velocity that was asked before, the first one at `begin`.
 *
 * Source   as `solveTether`.
 * Assumes  straight up or down the tether is handled along itself, so that only its pull at rest counts.
 * Throws   InputProblem as `checkTether`, told from the fields of the vehicle: such as a tether that does not reach.
 */
export function tetherPulls(
  out: TetherOut | null,
  from: number,
  begin: Near | null = null,
): (through: Vector) => TetherPull {
  if (out === null) return () => NO_PULL;
  const known: { readonly through: Vector; readonly pull: TetherPull }[] = [];
  return (velocity) => {
    const through = handled(velocity);
    const nearest = leastBy(known, (one) => apart(one.through, through));
    if (nearest !== null && apart(nearest.through, through) === 0) return nearest.pull;
    const isLike = nearest !== null && apart(nearest.through, through) <= LIKE * Math.hypot(...through);
    const pull = pullAt(out, from, through, isLike ? nearest.pull.near : begin);
    known.push({ through, pull });
    return pull;
  };
}

function pullAt(out: TetherOut, from: number, through: Vector, near: Near | null): TetherPull {
  const request = tetherRequest(out, through, from);
  checkOfVehicle(request);
  const shape = shapeProblem(request, TOLERANCE);
  if (shape.loadSize === 0) return NO_PULL;
  const landing = searchAnchor({ ...shape, chord: chordOf(request)! }, near);
  const { converged, onVehicle } = landing;
  return { force: onVehicle, converged, near: converged ? landing : null };
}

const apart = (a: Vector, b: Vector): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function leastBy<T>(list: readonly T[], size: (one: T) => number): T | null {
  let least = Number.POSITIVE_INFINITY;
  let at: T | null = null;
  for (const one of list) {
    const now = size(one);
    if (now < least) [least, at] = [now, one];
  }
  return at;
}

/** Fields of a vehicle that the question to its tether takes from elsewhere. */
const FIELD_OF_VEHICLE: Readonly<Record<string, string>> = {
  "tether.length": "scenario.tetherLength",
  "surroundings.density": "water",
};

function checkOfVehicle(request: TetherRequest): void {
  try {
    checkTether(request);
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    const { where } = error.problem;
    const field = FIELD_OF_VEHICLE[where] ?? where.replace(/^tether\./, "tether.cable.");
    throw new InputProblem({ ...error.problem, where: field });
  }
}

/** An angle brought into what a direction may be. */
const wrapped = (angle: number) => Math.atan2(Math.sin(angle), Math.cos(angle));

import type { Tether, TetherMotion, TetherSurroundings } from "../../model/vehicle/tether.ts";
import type { TetherRequest, TetherUpperPlace } from "../../model/vehicle/tetherShape.ts";
import { finite } from "../../quantity/domain.ts";
import { checkTether } from "./checkTether.ts";
import { tensionOf } from "./describeShape.ts";
import { searchAnchor } from "./searchAnchor.ts";
import { chordOf, shapeProblem } from "./solveTether.ts";
import { currentAt, loadOf } from "./tetherLoad.ts";
import { shapeFrom, type TetherAnchor } from "./tetherShape.ts";

export interface TowedTether {
  readonly tether: Tether;
  readonly surroundings: TetherSurroundings;
  /** Depth of the vehicle, m. */ readonly depth: number;
  readonly upperEnd: TetherUpperPlace;
  readonly motion: TetherMotion;
}

export interface TetherForceAt {
  /** Force of the tether against the motion of the vehicle, N; negative where it pulls ahead. */
  readonly resistance: number;
  /** Force of the tether on the vehicle to starboard, N. */ readonly starboard: number;
  /** Force of the tether on the vehicle downwards, N. */ readonly down: number;
  readonly converged: boolean;
  /** What to give as `near` for a speed nearby; null where there is no load to start from. */
  readonly anchor: TetherAnchor | null;
}

/** Error of the integration: 1e-6 of the length is more than a speed needs. */
const TOLERANCE = 1e-8;

/**
 * Force of the tether on a vehicle that drives ahead at a steady speed through the water at its depth, N.
 *
 * Over the ground the vehicle moves with that speed ahead and with the current at its own depth, so that in a uniform
 * current, with both ends moving, the current does not matter.
 *
 * Source   as `solveTether`.
 * Throws   InputProblem as `solveTether`; OutOfDomain for a speed that is not finite.
 *
 * @example tetherForceAt({ ...towed, speed: 1 }).resistance // 68.2231895 N
 */
export function tetherForceAt(
  towed: TowedTether & { readonly speed: number; readonly near?: TetherAnchor | null },
): TetherForceAt {
  const request = towingRequest(towed, finite(towed.speed, "speed through the water", "m/s"));
  checkTether(request);
  const shape = shapeProblem(request, TOLERANCE);
  if (shape.loadSize === 0) return { resistance: 0, starboard: 0, down: 0, converged: true, anchor: null };
  const { anchor, converged } = searchAnchor(
    { ...shape, chord: chordOf(request)! },
    towed.near ? { anchor: towed.near } : null,
  );
  const [forward, starboard, down] = tensionOf(shapeFrom(shape, anchor)[0]!);
  return { resistance: -forward + 0, starboard, down, converged, anchor };
}

/** The request of the same tether with the vehicle's velocity over the ground worked out from its speed through the water. */
export function towingRequest({ depth, upperEnd, ...rest }: TowedTether, speed: number): TetherRequest {
  const { tether, surroundings, motion } = rest;
  const still = { forward: 0, starboard: 0, down: 0 };
  const given = { what: "upperEnd", upperEnd } as const;
  const resting: TetherRequest = { tether, surroundings, motion, given, vehicle: { depth, velocity: still } };
  const load = loadOf(resting);
  const drift = currentAt(load, depth);
  const velocity = { forward: speed + drift * load.flowsTo[0], starboard: drift * load.flowsTo[1], down: 0 };
  return { ...resting, vehicle: { depth, velocity } };
}

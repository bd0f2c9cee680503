import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { nonNegative, positive } from "../../quantity/domain.ts";
import { formatQuantity } from "../../quantity/format.ts";
import { InputProblem, OutOfDomain, sentence } from "../../quantity/problem.ts";
import { METRE_PER_SECOND } from "./shownUnits.ts";
import { tetherDragBound } from "./tetherClosedForms.ts";
import { type TetherForceAt, type TowedTether, tetherForceAt } from "./tetherForceAt.ts";

export type SpeedWithTether =
  | {
      readonly state: "solved";
      /** Length paid out, m. */ readonly length: number;
      /** Greatest steady speed through the water, m/s. */ readonly speed: number;
      /** Force of the tether against the motion there, N. */ readonly resistance: number;
      /** Speed if the whole length were straight and square to the flow and the vehicle alone towed it, m/s. */
      readonly leastSpeed: number;
    }
  | { readonly state: "failed"; readonly length: number; readonly reason: string };

export interface SpeedAgainstTether extends TowedTether {
  /** Lengths paid out, m; that of the tether does not count. */ readonly lengths: readonly number[];
  /** Thrust left over the vehicle's own drag at a speed through the water, N. */
  readonly netThrustAvailable: (speed: number) => number;
  /** Speed to look up to, m/s: the vehicle's own without a tether. */ readonly greatestSpeed: number;
}

const NOT_FOUND = "vehicle.tether-not-found";
/** Width of the last bracket of a speed, relative: finer than any tether is known. */
const SPEED_TOLERANCE = 1e-6;

/**
 * Greatest steady speed for each length of tether paid out: where the thrust left over the vehicle's own drag is what the
 * tether takes.
 *
 *   F(V) = R_t(V, L)
 *
 * Assumes  the upper end keeps the place that is stated, so a longer tether is a slacker one.
 * Throws   OutOfDomain for a greatest speed that is not positive.
 */
export function speedAgainstTether(request: SpeedAgainstTether): SpeedWithTether[] {
  positive(request.greatestSpeed, "greatest speed", "m/s");
  return request.lengths.map((length) => {
    try {
      return speedAt({ ...request, tether: { ...request.tether, length } });
    } catch (error) {
      const isKnown =
        error instanceof InputProblem || (error instanceof OutOfDomain && error.problem.code === NOT_FOUND);
      if (isKnown) return { state: "failed", length, reason: sentence(error.problem) };
      throw error;
    }
  });
}

function speedAt(request: SpeedAgainstTether): SpeedWithTether {
  const { tether, surroundings, netThrustAvailable, greatestSpeed } = request;
  const { length } = tether;
  const force = rememberedForce(request);
  const whole = balance((speed) => netThrustAvailable(speed) - force(speed).resistance, greatestSpeed);
  if (whole === null) return { state: "failed", length, reason: "The thrust does not move this tether ahead." };
  const bound = (speed: number) => tetherDragBound({ ...tether, density: surroundings.density, speed, length });
  const leastSpeed = balance((speed) => netThrustAvailable(speed) - bound(speed), greatestSpeed) ?? 0;
  return { state: "solved", length, speed: whole, resistance: force(whole).resistance, leastSpeed };
}

/** The tether's force at a speed, each search begun from the one before. Throws OutOfDomain where one does not end. */
function rememberedForce(request: TowedTether): (speed: number) => TetherForceAt {
  let last: TetherForceAt | null = null;
  return (speed) => {
    last = tetherForceAt({ ...request, speed, near: last?.anchor ?? null });
    if (last.converged) return last;
    throw new OutOfDomain({
      code: NOT_FOUND,
      found: `The shape of the tether was not found at ${formatQuantity(speed, METRE_PER_SECOND)}`,
      needed: "a shape that ends where the tether is held",
      mend: "Pay out less",
    });
  };
}

/** Speed at which what is left over is nothing; the greatest one if something is left there, null if there is none at rest. */
function balance(left: (speed: number) => number, greatest: number): number | null {
  if (left(greatest) >= 0) return greatest;
  if (!(left(0) > 0)) return null;
  const { root } = bracketedRoot(left, 0, greatest, { relativeTolerance: SPEED_TOLERANCE });
  return nonNegative(root, "speed", "m/s");
}

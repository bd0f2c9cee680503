import type { SpeedAfter } from "../../model/vehicle/motionAnswer.ts";
import { simpson } from "./simpson.ts";
import { forcesAt, type WayProblem } from "./wayForces.ts";

/** Shares of the steady speed that are told. */
const SHARES = [0.5, 0.9, 0.95] as const;
const PIECES = 8;

/**
 * Time and way from rest at full thrust to shares of the steady speed.
 *
 *   t = ∫ M dV/F(V),  x = ∫ M V dV/F(V),  V = V_s tanh u
 *
 * With that substitution the first integrand is constant for a constant thrust and quadratic drag.
 *
 * Source   Newton's second law; Simpson's rule.
 * Assumes  added mass that does not change; thrusters that are at full thrust at once.
 */
export function upToSpeed(problem: WayProblem, steady: number): SpeedAfter[] {
  const drag = problem.model.numbers.drag[problem.way];
  if (!(steady > 0) || drag === null) return [];
  const M = problem.model.numbers.mass + drag.addedMass;
  const known = new Map<number, number>();
  const slowness = (u: number) => {
    const V = steady * Math.tanh(u);
    const at = known.get(u) ?? (M * steady) / (Math.cosh(u) ** 2 * forcesAt(problem, V).net);
    known.set(u, at);
    return at;
  };
  let [from, time, distance] = [0, 0, 0];
  return SHARES.map((share) => {
    const to = Math.atanh(share);
    time += simpson(slowness, from, to, PIECES);
    distance += simpson((u) => slowness(u) * steady * Math.tanh(u), from, to, PIECES);
    from = to;
    return { share, time, distance };
  });
}

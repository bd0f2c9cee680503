import { type TetherLoad, type Triple, multipliedLoad } from "./tetherLoad.ts";
import { type ShapeProblem, shapeFrom } from "./tetherShape.ts";
import { startingPull } from "./startingPull.ts";

type Matrix = readonly [Triple, Triple, Triple];

export interface Search {
  /** Force of the tether on the vehicle, N. */
  readonly pull: Triple;
  /** Distance of the upper end from where it is held, m. */
  readonly miss: number;
  readonly converged: boolean;
  readonly steps: number;
}

export interface LandingProblem extends ShapeProblem {
  /** From the vehicle to where the upper end is held, m. */
  readonly chord: Triple;
}

const TRIALS = { newton: 60, halvings: 8, continuation: 80 } as const;

/** Part of the length that the upper end may miss its place by, over the error of the integration. */
const MISS_OVER_TOLERANCE = 10;

/** Part of a force that it is changed by to find how the upper end moves. */
const NUDGE = 1e-5;

/**
 * Force of the tether on the vehicle for which the upper end lands where it is held.
 *
 * Newton's method on the force, each step damped until the miss shrinks, and Levenberg's where it does not. If that
 * stalls from the catenary of the whole load, the search starts again from the drag alone or the weight alone and brings
 * the other in by degrees.
 *
 * Source   shooting: Press et al., Numerical Recipes, 3rd ed. (2007), 18.1; damping: Levenberg, Q. Appl. Math. 2 (1944) 164.
 * Error    the miss is told; at a tolerance of 1e-10 it is below 1e-9 of the length.
 */
export function searchPull(problem: LandingProblem, near?: Triple): Search {
  const { load, depth, chord } = problem;
  const begins = near === undefined ? [] : [near];
  let steps = 0;
  let best: Search | null = null;
  for (const begin of [...begins, startingPull(load, depth, chord)]) {
    const found = newton(problem, begin);
    steps += found.steps;
    if (found.converged) return { ...found, steps };
    if (best === null || found.miss < best.miss) best = found;
  }
  for (const grown of ["weight", "drag"] as const) {
    const found = continued(problem, grown);
    steps += found.steps;
    if (found.converged) return { ...found, steps };
    if (found.miss < best!.miss) best = found;
  }
  return { ...best!, steps };
}

/** The load with one part of it grown from almost nothing to all, each time from the force found before. */
function continued(problem: LandingProblem, grown: "weight" | "drag"): Search {
  const loadAt = (share: number): TetherLoad => multipliedLoad(problem.load, { [grown]: share });
  let steps = 0;
  let share = 0;
  let stride = 0.02;
  let found = newton({ ...problem, load: loadAt(0) }, startingPull(loadAt(0), problem.depth, problem.chord));
  for (let trial = 0; trial < TRIALS.continuation && found.converged; trial++) {
    const next = Math.min(1, share + stride);
    const tried = newton({ ...problem, load: loadAt(next) }, found.pull);
    steps += tried.steps;
    if (!tried.converged) {
      stride /= 3;
      continue;
    }
    found = tried;
    share = next;
    stride *= 2;
    if (share === 1) return { ...found, steps };
  }
  return { ...found, converged: false, miss: missOf(problem, found.pull), steps };
}

const missOf = (problem: LandingProblem, pull: Triple) => Math.hypot(...missAt(problem, pull));

/** From where the upper end is held to where it lands, m. */
function missAt(problem: LandingProblem, pull: Triple): Triple {
  const end = shapeFrom(problem, pull)[1]!;
  const { chord, depth } = problem;
  return [end[3]! - chord[0], end[4]! - chord[1], end[5]! - depth - chord[2]];
}

function newton(problem: LandingProblem, begin: Triple): Search {
  const goal = MISS_OVER_TOLERANCE * problem.tolerance * problem.load.length;
  let pull = begin;
  let miss = missAt(problem, pull);
  let damping = 0;
  for (let steps = 0; steps < TRIALS.newton; steps++) {
    if (size(miss) <= goal) return { pull, miss: size(miss), converged: true, steps };
    const J = slopes(problem, pull, miss);
    const better = betterPull(problem, pull, miss, J, damping);
    if (better === null) return { pull, miss: size(miss), converged: false, steps };
    ({ pull, miss, damping } = better);
  }
  return { pull, miss: size(miss), converged: size(miss) <= goal, steps: TRIALS.newton };
}

/** How the miss changes with each part of the force, m/N: row by part of the miss. */
function slopes(problem: LandingProblem, pull: Triple, miss: Triple): Matrix {
  const nudge = NUDGE * size(pull) + 1e-12 * problem.loadSize * problem.load.length;
  const columns = [0, 1, 2].map((part) => {
    const moved = missAt(problem, nudged(pull, part, nudge));
    return moved.map((value, i) => (value - miss[i]!) / nudge);
  });
  return [0, 1, 2].map((row) => columns.map((column) => column[row]!)) as unknown as Matrix;
}

interface Better {
  readonly pull: Triple;
  readonly miss: Triple;
  readonly damping: number;
}

/** A force with a smaller miss: the whole Newton step if it can be, else ever more damped ones; null if none is. */
function betterPull(problem: LandingProblem, pull: Triple, miss: Triple, J: Matrix, damping: number): Better | null {
  let mu = damping;
  for (let trial = 0; trial < 24; trial++) {
    const step = mu === 0 ? solved(J, miss) : dampedStep(J, miss, mu);
    if (step !== null) {
      const next: Triple = [pull[0] - step[0], pull[1] - step[1], pull[2] - step[2]];
      const landed = missAt(problem, next);
      if (size(landed) < (1 - 1e-4) * size(miss)) {
        return { pull: next, miss: landed, damping: mu < 1e-7 ? 0 : mu / 10 };
      }
    }
    mu = mu === 0 ? 1e-6 : mu * 6;
  }
  return null;
}

/** Levenberg's step (JᵀJ + μ tr(JᵀJ) I) δ = Jᵀ r. */
function dampedStep(J: Matrix, r: Triple, mu: number): Triple | null {
  const A = [0, 1, 2].map((i) => [0, 1, 2].map((j) => J[0][i]! * J[0][j]! + J[1][i]! * J[1][j]! + J[2][i]! * J[2][j]!));
  const trace = A[0]![0]! + A[1]![1]! + A[2]![2]!;
  for (let i = 0; i < 3; i++) A[i]![i]! += mu * trace;
  const right = [0, 1, 2].map((i) => J[0][i]! * r[0] + J[1][i]! * r[1] + J[2][i]! * r[2]);
  return solved(A as unknown as Matrix, right as unknown as Triple);
}

/** Solution of A x = b by Cramer's rule; null where A is singular. */
export function solved([a, b, c]: Matrix, right: Triple): Triple | null {
  const columns: [Triple, Triple, Triple] = [
    [a[0], b[0], c[0]],
    [a[1], b[1], c[1]],
    [a[2], b[2], c[2]],
  ];
  const whole = determinant(...columns);
  const x = [0, 1, 2].map((part) => {
    const changed = columns.with(part, right) as [Triple, Triple, Triple];
    return determinant(...changed) / whole;
  });
  return x.every(Number.isFinite) ? (x as unknown as Triple) : null;
}

function determinant(p: Triple, q: Triple, r: Triple): number {
  return (
    p[0] * (q[1] * r[2] - q[2] * r[1]) - p[1] * (q[0] * r[2] - q[2] * r[0]) + p[2] * (q[0] * r[1] - q[1] * r[0])
  );
}

const size = (a: Triple) => Math.hypot(...a);

export function nudged(pull: Triple, part: number, by: number): Triple {
  return pull.with(part, pull[part]! + by) as unknown as Triple;
}

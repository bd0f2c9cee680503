import { dampedSolution, solvedSystem } from "./linearSystem.ts";
import { type ShapeProblem, shapeFrom, type TetherAnchor } from "./tetherShape.ts";
import { size, type Triple } from "./triple.ts";

export interface LandingProblem extends ShapeProblem {
  /** From the vehicle to where the upper end is held, m. */
  readonly chord: Triple;
}

/** A matrix by rows. */
type Slopes = readonly (readonly number[])[];

export interface Landing {
  readonly anchor: TetherAnchor;
  /** Tension at the vehicle, N. */ readonly onVehicle: Triple;
  /** Distance of the ends from where they are held, m. */
  readonly miss: number;
  readonly converged: boolean;
  readonly steps: number;
  /** What a search from here on can begin with; null where none was needed. */
  readonly known: KnownSlopes | null;
}

export interface KnownSlopes {
  /** How the ends move with the unknowns, m, as it was last known. */
  readonly slopes: Slopes;
  /** Tension that the unknown tension is counted in, N. */
  readonly forceScale: number;
}

/** Part of the length that the ends may miss their places by, over the error of the integration. */
const MISS_OVER_TOLERANCE = { aim: 10, accepted: 100 } as const;
/** Damping that is tried first and its growth, until it is so strong that no step remains. */
const DAMPING = { first: 1e-6, growth: 6, trials: 24 } as const;
/** A step that leaves more than this part of the miss was taken with slopes that no longer hold. */
const SLOW = 0.3;
const MAXIMUM_STEPS = 60;

/**
 * Newton's method on tension and depth at the anchor, with slopes by differences, kept up to date by Broyden's rule while
 * they serve and taken afresh when they do not. A step that does not shrink the miss is damped by Levenberg's rule until
 * it does.
 *
 * Source   Broyden, Math. Comp. 19 (1965) 577; Levenberg, Q. Appl. Math. 2 (1944) 164.
 */
export function newtonLanding(problem: LandingProblem, begin: TetherAnchor, known: KnownSlopes | null = null): Landing {
  const unit = problem.tolerance * problem.load.length;
  const forceScale = known?.forceScale ?? scaleOf(problem, begin);
  const anchorAt = (u: readonly number[]) => anchorOf(begin.along, u, forceScale, problem.load.length);
  const landedAt = (u: readonly number[]) => landed(problem, anchorAt(u));
  const freshSlopes = () => slopesAt(problem, (u) => landedAt(u).miss, now.u, now.miss);
  const first = unknownsOf(begin, forceScale, problem.load.length);
  let now: Landed & { readonly u: readonly number[] } = { u: first, ...landedAt(first) };
  let slopes = known?.slopes ?? null;
  let isFresh = false;
  for (let steps = 0; ; steps++) {
    const far = length(now.miss);
    const isDone = far <= MISS_OVER_TOLERANCE.aim * unit || steps === MAXIMUM_STEPS;
    if (!isDone && slopes === null) [slopes, isFresh] = [freshSlopes(), true];
    const better = isDone ? null : betterUnknowns(landedAt, now, slopes!, isFresh ? DAMPING.trials : 1);
    if (isDone || (better === null && isFresh)) {
      const converged = far <= MISS_OVER_TOLERANCE.accepted * unit;
      const next = slopes && { slopes, forceScale };
      return { anchor: anchorAt(now.u), onVehicle: now.onVehicle, miss: far, converged, steps, known: next };
    }
    const before = now;
    now = better ?? now;
    isFresh = length(now.miss) > SLOW * far;
    slopes = isFresh ? freshSlopes() : broyden(slopes!, difference(now.u, before.u), difference(now.miss, before.miss));
  }
}

/** Tension that the unknown tension is counted in, N. */
function scaleOf({ loadSize, load }: ShapeProblem, { tension }: TetherAnchor): number {
  return size(tension) + 1e-9 * loadSize * load.length;
}

const unknownsOf = ({ tension, depth }: TetherAnchor, force: number, long: number) => [
  tension[0] / force,
  tension[1] / force,
  tension[2] / force,
  depth / long,
];

function anchorOf(along: number, u: readonly number[], force: number, long: number): TetherAnchor {
  return { along, tension: [u[0]! * force, u[1]! * force, u[2]! * force], depth: u[3]! * long };
}

interface Landed {
  /** From where the ends are held to where they land, m: three parts of the upper end, and the vehicle's depth. */
  readonly miss: readonly number[];
  /** Tension at the vehicle, N. */ readonly onVehicle: Triple;
}

function landed(problem: LandingProblem, anchor: TetherAnchor): Landed {
  const { chord, depth } = problem;
  const [start, end] = shapeFrom(problem, anchor) as [Float64Array, Float64Array];
  return {
    miss: [end[3]! - chord[0], end[4]! - chord[1], end[5]! - start[5]! - chord[2], start[5]! - depth],
    onVehicle: [start[0]!, start[1]!, start[2]!],
  };
}

/** How the miss changes with each unknown, by a change large enough to stand above the error of the integration. */
function slopesAt(
  { tolerance }: ShapeProblem,
  missOf: (u: readonly number[]) => readonly number[],
  u: readonly number[],
  miss: readonly number[],
): Slopes {
  const nudge = Math.sqrt(tolerance);
  const columns = u.map((_, part) => missOf(u.with(part, u[part]! + nudge)));
  return miss.map((value, row) => columns.map((column) => (column[row]! - value) / nudge));
}

/** The anchor that brings the ends back to their places under a load a little changed. */
export function landingMover(
  problem: LandingProblem,
  anchor: TetherAnchor,
): (load: ShapeProblem["load"]) => TetherAnchor {
  const { along } = anchor;
  const force = scaleOf(problem, anchor);
  const long = problem.load.length;
  const u = unknownsOf(anchor, force, long);
  const missOf = (tried: readonly number[]) => landed(problem, anchorOf(along, tried, force, long)).miss;
  const miss = missOf(u);
  const slopes = slopesAt(problem, missOf, u, miss);
  return (load) => {
    const off = difference(landed({ ...problem, load }, anchor).miss, miss);
    const step = solvedSystem(slopes, off) ?? dampedSolution(slopes, off, 1e-12) ?? [0, 0, 0, 0];
    return anchorOf(along, difference(u, step), force, long);
  };
}

const length = (a: readonly number[]) => Math.sqrt(a.reduce((sum, part) => sum + part * part, 0));
const difference = (a: readonly number[], b: readonly number[]) => a.map((part, i) => part - b[i]!);

/** The slopes changed by as little as makes them right for the step that was taken. */
function broyden(slopes: Slopes, step: readonly number[], change: readonly number[]): Slopes {
  const squared = step.reduce((sum, part) => sum + part * part, 0);
  return slopes.map((row, i) => {
    const wrong = change[i]! - row.reduce((sum, slope, k) => sum + slope * step[k]!, 0);
    return row.map((slope, k) => slope + (wrong / squared) * step[k]!);
  });
}

/** Unknowns with a smaller miss: by the whole Newton step if it can be, else by ever more damped ones; null if none. */
function betterUnknowns(
  landedAt: (u: readonly number[]) => Landed,
  { u, miss }: Landed & { readonly u: readonly number[] },
  slopes: Slopes,
  trials: number,
): (Landed & { readonly u: readonly number[] }) | null {
  let mu = 0;
  for (let trial = 0; trial < trials; trial++) {
    const step = mu === 0 ? solvedSystem(slopes, miss) : dampedSolution(slopes, miss, mu);
    if (step !== null) {
      const next = difference(u, step);
      const tried = landedAt(next);
      if (length(tried.miss) < (1 - 1e-4) * length(miss)) return { u: next, ...tried };
    }
    mu = mu === 0 ? DAMPING.first : mu * DAMPING.growth;
  }
  return null;
}

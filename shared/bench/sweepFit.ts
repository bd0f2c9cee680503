import { autoregressiveRegression } from "../numeric/autoregressiveRegression.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";
import { type OriginFit, residualsOf } from "./coefficientFit.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";
import type { PlateauSource } from "./measuredPlateau.ts";
import { type SweepBlocks, sweepBlocksOf } from "./sweepBlocks.ts";
import { laggedSquares, risingAt, slopesOf } from "./sweepLag.ts";

/** Thrust coefficient of a sweep, and what a reader should know of how it came about. */
export interface SweepFit {
  /** As a fit of plateaus would give it: one influence for each bin that is used. */
  readonly fit: OriginFit;
  readonly blocks: number;
  readonly blockDuration: number;
  readonly autocorrelation: number;
  /** By which thrust comes after rotation rate, s. */
  readonly lag: Uncertain;
  /** Coefficients of the two ways, the lag not allowed for. */
  readonly up: Uncertain | null;
  readonly down: Uncertain | null;
  /** Up over down less 1 before the lag is allowed for; null for a sweep one way. */
  readonly lagEffect: number | null;
  readonly freeZero: boolean;
  readonly converged: boolean;
}

export const SWEEP_METHOD =
  "generalised least squares with first-order autocorrelated errors (Prais & Winsten 1954), standard error no less than Newey & West's (1987)";

const MAXIMUM_STEPS = 50;
/** Change of the lag in its standard errors that ends the search. */
const TOLERANCE = 0.01;
/** The same in blocks, for a log without noise. */
const EXACT = 1e-6;
/** Longest lag as part of the sweep's length: beyond, it is not a lag that was found. */
const LONGEST_LAG = 0.1;
/** Fewest blocks that half of a sweep is judged by. */
const FEWEST_IN_HALF = 12;
/**
 * Thrust coefficient from a slow ramp without plateaus, by regression on the whole trace:
 *
 *   T(t) - T_0(t) = K_T ρ D⁴ n²(t - τ) [+ a constant where the log holds no rest] + e(t),   e_t = ρ₁ e_(t-1) + innovation
 *
 * The lag τ takes in what makes thrust come after the rotation rate (scale, filter, water set in motion) or before it (a
 * slow tachometer), and, to first order, the inertia of the water: both go with d(n²)/dt. It is found by Gauss and
 * Newton's steps and its doubt is part of that of K_T.
 *
 * Source   Prais & Winsten (1954), Newey & West (1987): see `autoregressiveRegression`. Lag by linearisation: JCGM
 *          101:2008, 5.6 in spirit; common practice.
 * Assumes  one coefficient over the whole ramp, bollard condition, a lag that does not change.
 * Throws   OutOfDomain where the columns can not be told apart.
 */
export function sweepFitOf(
  source: PlateauSource,
  used: readonly JudgedPlateau[],
  { density, diameter }: { readonly density: number; readonly diameter: number },
): SweepFit {
  const blocks = sweepBlocksOf(source, used);
  const perSquare = density * diameter ** 4;
  const freeZero = source.thrustTare.windows.length === 0;
  const chosen = blocks.bins.flatMap((bin, i) => (bin >= 0 && Number.isFinite(blocks.thrusts[i]!) ? [i] : []));
  const { regression, lag, converged } = laggedRegression(blocks, chosen, { perSquare, freeZero });
  const zero = freeZero ? regression.coefficients.at(-1)! : 0;
  const [up, down] = ([1, -1] as const).map((direction) => {
    const part = chosen.filter((i) => risingAt(blocks, i) === direction);
    return wayFit(blocks, part, { perSquare, zero, lag });
  }) as [Uncertain | null, Uncertain | null];
  const K = regression.coefficients[0]!;
  const errors = (k: number) => Math.max(regression.standardErrors[k]!, regression.robustStandardErrors[k]!);
  const lagDoubt = uncertain(lag, errors(1) / Math.abs(K), regression.degreesOfFreedom);
  const lagEffect = up && down ? up.value / down.value - 1 : null;
  // Thrust ahead of the rotation rate: a slow tachometer, or a fading scale; one pace of the ramp can not tell them apart.
  const ambiguous = lagDoubt.interval95[1] < 0 ? Math.abs(K * (lagEffect ?? 0)) / 2 : 0;
  return {
    fit: {
      coefficient: K,
      influences: used.map((_, bin) =>
        chosen.reduce((sum, i, t) => sum + (blocks.bins[i] === bin ? regression.influences[0]![t]! : 0), 0),
      ),
      // Which of the two ways is right is not known: a uniform distribution between them.
      independent: Math.hypot(errors(0), ambiguous / Math.sqrt(3)),
      degreesOfFreedom: regression.degreesOfFreedom,
      chiSquared: regression.innovationSquares / regression.innovationVariance,
      scatterRatio: Math.max(1, errors(0) / regression.standardErrors[0]!),
      residuals: residualsOf(
        used.map(({ thrustPoint }) => thrustPoint),
        K,
      ),
      converged,
    },
    blocks: chosen.length,
    blockDuration: blocks.duration,
    autocorrelation: regression.autocorrelation,
    lag: lagDoubt,
    up,
    down,
    lagEffect,
    freeZero,
    converged,
  };
}

interface SweepModel {
  readonly perSquare: number;
  readonly freeZero: boolean;
}

/** Gauss and Newton's steps for the lag; where they do not settle, the regression at lag 0, told as not converged. */
function laggedRegression(blocks: SweepBlocks, chosen: readonly number[], { perSquare, freeZero }: SweepModel) {
  const slopes = slopesOf(blocks);
  const longest = LONGEST_LAG * (blocks.times[chosen.at(-1)!]! - blocks.times[chosen[0]!]!);
  const regressionAt = (lag: number) => {
    const shifted = laggedSquares(blocks, blocks.squares, lag);
    const moved = laggedSquares(blocks, slopes, lag);
    const columns = [chosen.map((i) => perSquare * shifted[i]!), chosen.map((i) => -perSquare * moved[i]!)];
    return autoregressiveRegression({
      y: chosen.map((i) => blocks.thrusts[i]!),
      columns: freeZero ? [...columns, chosen.map(() => 1)] : columns,
      follows: followsOf(blocks, chosen),
    });
  };
  let lag = 0;
  let regression = regressionAt(lag);
  let damping = 1;
  let last = 0;
  for (let step = 0; step < MAXIMUM_STEPS; step++) {
    const change = regression.coefficients[1]! / regression.coefficients[0]!;
    const doubt = regression.standardErrors[1]! / Math.abs(regression.coefficients[0]!);
    if (Math.abs(change) <= TOLERANCE * doubt + EXACT * blocks.duration)
      return { regression, lag, converged: regression.converged };
    // Between blocks the rate is drawn straight: across a corner the steps would swing to and fro for ever.
    if (change * last < 0) damping /= 2;
    lag += damping * change;
    last = change;
    if (!(Math.abs(lag) <= longest)) break;
    regression = regressionAt(lag);
  }
  return { regression: regressionAt(0), lag: 0, converged: false };
}

/** Neighbours among the chosen blocks that are neighbours in time. */
function followsOf({ follows }: SweepBlocks, chosen: readonly number[]): boolean[] {
  return chosen.map((i, t) => t > 0 && follows[i]! && chosen[t - 1] === i - 1);
}

interface WayModel {
  readonly perSquare: number;
  readonly zero: number;
  readonly lag: number;
}

/**
 * Coefficient of the blocks of one direction from rate and thrust of the same moment, Σ T n² / Σ n⁴, so that lag and
 * friction show as a difference between the ways. Its doubt is that of a regression with the lag allowed for: without, the
 * lag itself would pass for noise. Null with too few blocks.
 */
function wayFit(blocks: SweepBlocks, part: readonly number[], { perSquare, zero, lag }: WayModel): Uncertain | null {
  if (part.length < FEWEST_IN_HALF) return null;
  const thrusts = part.map((i) => blocks.thrusts[i]! - zero);
  const now = part.map((i) => perSquare * blocks.squares[i]!);
  const squares = laggedSquares(blocks, blocks.squares, lag);
  const { standardErrors, robustStandardErrors, degreesOfFreedom } = autoregressiveRegression({
    y: thrusts,
    columns: [part.map((i) => perSquare * squares[i]!)],
    follows: followsOf(blocks, part),
  });
  const product = now.reduce((sum, x, t) => sum + x * thrusts[t]!, 0);
  const slope = product / now.reduce((sum, x) => sum + x * x, 0);
  return uncertain(slope, Math.max(standardErrors[0]!, robustStandardErrors[0]!), degreesOfFreedom);
}

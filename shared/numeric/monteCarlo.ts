import { OutOfDomain } from "../quantity/problem.ts";
import { moments } from "./moments.ts";

/** What the draws of a result show. */
export interface DrawnSpread {
  readonly mean: number;
  readonly standardUncertainty: number;
  /** Cuts off the same share at either end. */
  readonly symmetricInterval: readonly [number, number];
  /** The shortest that holds the share. */
  readonly shortestInterval: readonly [number, number];
}

const COVERAGE = 0.95;

/**
 * Mean, standard deviation and 95 % intervals of the draws of a result.
 *
 * Source   JCGM 101:2008, 7.6 (mean, standard deviation), 7.7 and 5.3.2 to 5.3.4 (intervals).
 * Throws   OutOfDomain `numeric.few-draws` for fewer than 40 values, where 2.5 % is not one of them.
 */
export function spreadOf(values: ArrayLike<number>): DrawnSpread {
  const sorted = Float64Array.from(values).sort();
  const M = sorted.length;
  if (M < 40) throw fewDraws(M, 40);
  const { mean, standardDeviation } = moments(sorted);
  const q = Math.round(COVERAGE * M);
  const r = Math.floor((M - q + 1) / 2);
  let shortest = 0;
  for (let i = 1; i + q < M; i++) {
    if (sorted[i + q]! - sorted[i]! < sorted[shortest + q]! - sorted[shortest]!) shortest = i;
  }
  return {
    mean,
    standardUncertainty: standardDeviation,
    symmetricInterval: [sorted[r - 1]!, sorted[Math.min(r - 1 + q, M - 1)]!],
    shortestInterval: [sorted[shortest]!, sorted[Math.min(shortest + q, M - 1)]!],
  };
}

/**
 * Half a unit in the last of `digits` significant digits of a standard uncertainty: how far apart two statements of it may
 * be before they differ.
 *
 * Source   JCGM 101:2008, 7.9.2. Its examples: u = 0.000 35, two digits: 0.000 005; u = 2, one digit: 0.5.
 */
export function numericalTolerance(standardUncertainty: number, digits: number): number {
  if (!(standardUncertainty > 0)) return 0;
  const exponent = Number(standardUncertainty.toExponential(digits - 1).split("e")[1]);
  return 0.5 * 10 ** (exponent - digits + 1);
}

/** The four numbers that are stated of a spread. */
function statedNumbers({ mean, standardUncertainty, symmetricInterval }: DrawnSpread): number[] {
  return [mean, standardUncertainty, ...symmetricInterval];
}

/** Twice the greatest standard deviation of the averages over the turns. */
function movementOf(turns: readonly (readonly number[])[]): number {
  const spreads = turns[0]!.map((_, k) => moments(turns.map((turn) => turn[k]!)).standardDeviation);
  return (2 * Math.max(...spreads)) / Math.sqrt(turns.length);
}

/**
 * How far the stated numbers of `values` may still move, in their unit: twice the standard deviation of their average over
 * ten equal parts, the greatest of the four.
 *
 * Source   JCGM 101:2008, 7.9.4, from memory, which adds parts until this is within the tolerance.
 */
export function movementLeft(values: ArrayLike<number>): number {
  const parts = 10;
  const size = Math.floor(values.length / parts);
  const all = Float64Array.from(values);
  const turns = Array.from({ length: parts }, (_, k) =>
    statedNumbers(spreadOf(all.subarray(k * size, (k + 1) * size))),
  );
  return movementOf(turns);
}

/** Draws of a result next to what the law of propagation of uncertainty gave for it. */
export interface DrawnComparison {
  readonly mean: number;
  readonly standardUncertainty: number;
  /** Symmetric in probability. */ readonly interval95: readonly [number, number];
  readonly shortest95: readonly [number, number];
  readonly firstOrder95: readonly [number, number];
  /** Greatest distance between ends of the two intervals. */ readonly difference: number;
  /** Numerical tolerance of the standard uncertainty of first order. */ readonly tolerance: number;
  /** The difference is within the tolerance: the first order holds. */ readonly agrees: boolean;
  /** More draws would not move the numbers by more than the tolerance. */ readonly settled: boolean;
}

/** Digits to which a standard uncertainty is compared; JCGM 101:2008, 7.9.2, note 1: one or two. */
const DIGITS = 1;

/**
 * Do the draws bear out the first order?
 *
 * Source   JCGM 101:2008, 8.1, with the tolerance of 7.9.2 to one digit.
 * Throws   OutOfDomain `numeric.few-draws` as spreadOf.
 */
export function againstFirstOrder(
  values: ArrayLike<number>,
  firstOrder: { readonly standardUncertainty: number; readonly interval95: readonly [number, number] },
): DrawnComparison {
  const { mean, standardUncertainty, symmetricInterval, shortestInterval } = spreadOf(values);
  const tolerance = numericalTolerance(firstOrder.standardUncertainty, DIGITS);
  const difference = Math.max(...symmetricInterval.map((end, i) => Math.abs(end - firstOrder.interval95[i]!)));
  return {
    ...{ mean, standardUncertainty, interval95: symmetricInterval, shortest95: shortestInterval },
    ...{ firstOrder95: firstOrder.interval95, difference, tolerance },
    agrees: difference <= tolerance,
    settled: movementLeft(values) <= tolerance,
  };
}

function fewDraws(found: number, needed: number): OutOfDomain {
  return new OutOfDomain({
    code: "numeric.few-draws",
    found: `${found} draws`,
    needed: `at least ${needed}`,
    mend: "Ask for more draws",
  });
}

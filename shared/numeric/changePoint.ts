import { nonNegative } from "../quantity/domain.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { medianAbsoluteDeviation } from "./median.ts";

export interface ChangePointOptions {
  /** Fewest samples between two changes. */
  readonly minimumLength: number;
  /** What one more change must take off the sum of squares, squared unit of the values; see `changePenalty`. */
  readonly penalty?: number;
}

/** More blocks than this are never searched: it bounds the work where a long log holds no change at all. */
const MOST_BLOCKS = 20_000;
/** Blocks that a shortest segment is cut into. */
const BLOCKS_IN_SHORTEST = 4;

/**
 * Indices at which the mean of `values` changes: each is the first sample of a new segment, in rising order; empty where
 * it does not change. They make the sum of squares about the segment means plus `penalty` times their number least.
 * NaN marks a missing cell and is passed over.
 *
 * The search runs on means of short blocks, a quarter of `minimumLength` or what 20 000 blocks ask for; each change is
 * then moved to its best sample between its neighbours. Up to a `minimumLength` of 7, and 20 000 values, a block is one
 * sample and the answer is the exact optimum.
 *
 * Source   Killick, Fearnhead & Eckley, Journal of the American Statistical Association 107 (2012) 1590 (PELT).
 * Assumes  a level that is steady between jumps; a slow ramp comes out as a staircase.
 * Range    minimumLength a whole number of 1 or more.
 * Error    work grows as the number of values, plus at most the square of the number of blocks where nothing changes.
 *          A change is placed to the sample where the jump is some noise deviations high. In logs of more than 20 000
 *          values segments shorter than a 20 000th of the log can be passed over.
 * Throws   OutOfDomain for another minimumLength, a negative penalty, or infinite values.
 */
export function changePoints(values: ArrayLike<number>, { minimumLength, penalty }: ChangePointOptions): number[] {
  if (!Number.isInteger(minimumLength) || minimumLength < 1) {
    throw new OutOfDomain({
      found: `a shortest segment of ${minimumLength} samples`,
      needed: "a whole number of 1 or more",
      mend: "",
    });
  }
  const { numbers, rows } = presentNumbers(values);
  if (numbers.length < 2 * minimumLength) return [];
  const cost = segmentCost(numbers);
  const block = Math.max(1, Math.floor(minimumLength / BLOCKS_IN_SHORTEST), Math.ceil(numbers.length / MOST_BLOCKS));
  const changes = pelt({
    boundaries: Math.floor(numbers.length / block),
    at: (k) => (k === Math.floor(numbers.length / block) ? numbers.length : k * block),
    fewest: Math.ceil(minimumLength / block),
    cost,
    penalty: nonNegative(penalty ?? changePenalty(values), "penalty", ""),
  });
  const placed = block === 1 ? changes : placeExactly({ changes, block, minimumLength, cost, end: numbers.length });
  return placed.map((change) => rows[change]!);
}

/**
 * Penalty for one change in the mean of independent samples, squared unit of the values: 3 σ² ln n, σ from the
 * differences of neighbours so that the jumps themselves do not raise it.
 *
 * Source   Zhang & Siegmund, Biometrics 63 (2007) 22: a change counts about three parameters' worth of ln n.
 * Assumes  independent samples. Readings that hang together need a larger one: multiply by the inflation of
 *          `effectiveSampleSize` inside a segment.
 */
export function changePenalty(values: ArrayLike<number>): number {
  const { numbers } = presentNumbers(values);
  if (numbers.length < 2) return 0;
  const steps = numbers.subarray(1).map((value, i) => value - numbers[i]!);
  // Coarse readings repeat themselves and make the median step 0: the mean square then stands in.
  const spread = medianAbsoluteDeviation(steps) || Math.sqrt(steps.reduce((sum, s) => sum + s * s, 0) / steps.length);
  return 3 * (spread * spread * 0.5) * Math.log(numbers.length);
}

interface PeltProblem {
  /** Number of boundaries after the start; boundary k stands before sample at(k). */
  readonly boundaries: number;
  readonly at: (boundary: number) => number;
  /** Fewest boundaries from one change to the next. */
  readonly fewest: number;
  readonly cost: SegmentCost;
  readonly penalty: number;
}

/** Optimal partition with pruning; returns the samples at which segments start, without the first. */
function pelt({ boundaries, at, fewest, cost, penalty }: PeltProblem): number[] {
  const least = new Float64Array(boundaries + 1).fill(Infinity);
  const last = new Int32Array(boundaries + 1);
  // A boundary beaten at k may still win before k + fewest, where a change at k is not allowed yet.
  const dropFrom = new Int32Array(boundaries + 1).fill(boundaries + 1);
  least[0] = -penalty;
  let candidates: number[] = [0];
  for (let k = fewest; k <= boundaries; k++) {
    const start = k - fewest;
    if (start >= fewest) candidates.push(start);
    const end = at(k);
    for (const s of candidates) {
      const total = least[s]! + cost(at(s), end) + penalty;
      if (total < least[k]!) {
        least[k] = total;
        last[k] = s;
      }
    }
    const bound = least[k]!;
    for (const s of candidates) {
      if (dropFrom[s]! > boundaries && least[s]! + cost(at(s), end) >= bound) dropFrom[s] = k + fewest;
    }
    candidates = candidates.filter((s) => dropFrom[s]! > k);
  }
  const changes: number[] = [];
  for (let k = last[boundaries]!; k > 0; k = last[k]!) changes.unshift(at(k));
  return changes;
}

interface Placement {
  readonly changes: readonly number[];
  readonly block: number;
  readonly minimumLength: number;
  readonly cost: SegmentCost;
  readonly end: number;
}

/** Each change moved within a block either way to the sample that makes the sum of squares least. */
function placeExactly({ changes, block, minimumLength, cost, end }: Placement): number[] {
  const placed: number[] = [];
  changes.forEach((change, i) => {
    const before = placed[i - 1] ?? 0;
    const after = changes[i + 1] ?? end;
    const low = Math.max(before + minimumLength, change - block);
    const high = Math.min(after - minimumLength, change + block);
    let best = change;
    for (let c = low; c <= high; c++) {
      if (cost(before, c) + cost(c, after) < cost(before, best) + cost(best, after)) best = c;
    }
    placed.push(best);
  });
  return placed;
}

/** Sum of squares about the mean of samples `from` to `to - 1`. */
type SegmentCost = (from: number, to: number) => number;

/** Running sums of the values less their overall mean, so that a large level does not drown a small jump. */
function segmentCost(numbers: Float64Array): SegmentCost {
  const mean = numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
  const sums = new Float64Array(numbers.length + 1);
  const squares = new Float64Array(numbers.length + 1);
  numbers.forEach((value, i) => {
    const deviation = value - mean;
    sums[i + 1] = sums[i]! + deviation;
    squares[i + 1] = squares[i]! + deviation * deviation;
  });
  return (from, to) => {
    const sum = sums[to]! - sums[from]!;
    return Math.max(0, squares[to]! - squares[from]! - (sum * sum) / (to - from));
  };
}

function presentNumbers(values: ArrayLike<number>): { numbers: Float64Array; rows: Int32Array } {
  const numbers = new Float64Array(values.length);
  const rows = new Int32Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    if (!Number.isFinite(value)) {
      throw new OutOfDomain({ found: `value ${i} is ${value}`, needed: "a finite number", mend: "" });
    }
    numbers[count] = value;
    rows[count++] = i;
  }
  return { numbers: numbers.subarray(0, count), rows: rows.subarray(0, count) };
}

import { nonNegative } from "../quantity/domain.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { median, NORMAL_SCALE } from "./median.ts";

export interface ChangePointOptions {
  /** Fewest samples between two changes. */
  readonly minimumLength: number;
  /** What one more change must take off the sum of squares, squared unit of the values; see `changePenalty`. */
  readonly penalty?: number;
}

/** The first look never sees more places than this: it bounds the work where a long log holds no change at all. */
const MOST_PLACES = 10_000;
/** Places that the first look sees in a shortest segment. */
const PLACES_IN_SHORTEST = 4;

/**
 * Indices at which the mean of `values` changes: each is the first sample of a new segment, in rising order; empty where
 * it does not change. They make the sum of squares about the segment means plus `penalty` times their number least.
 * NaN marks a missing cell and is passed over.
 *
 * The search looks first at every few samples, a quarter of `minimumLength` or what 10 000 places ask for, then at every
 * sample near what it found. Up to a `minimumLength` of 7, and 10 000 values, the first look sees every sample and the
 * answer is the exact optimum.
 *
 * Source   Killick, Fearnhead & Eckley, Journal of the American Statistical Association 107 (2012) 1590 (PELT).
 * Assumes  a level that is steady between jumps; a slow ramp comes out as a staircase.
 * Range    minimumLength a whole number of 1 or more.
 * Error    work grows as the number of values, plus at most the square of 10 000 where nothing changes. In logs of more
 *          than 10 000 values segments shorter than a 10 000th of the log can be passed over.
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
  const end = numbers.length;
  if (end < 2 * minimumLength) return [];
  const search = {
    minimumLength,
    cost: segmentCost(numbers),
    penalty: nonNegative(penalty ?? changePenalty(values), "penalty", ""),
  };
  const stride = Math.max(1, Math.floor(minimumLength / PLACES_IN_SHORTEST), Math.ceil(end / MOST_PLACES));
  const coarse = pelt({ ...search, places: [...stepping(0, end, stride), end] });
  const changes = stride === 1 ? coarse : pelt({ ...search, places: placesNear(coarse, stride, end) });
  return changes.map((change) => rows[change]!);
}

/**
 * Penalty for one change in the mean of independent samples, squared unit of the values: 3 σ² ln n, σ from the median
 * step between neighbours so that the jumps themselves do not raise it.
 *
 * Source   Zhang & Siegmund, Biometrics 63 (2007) 22: a change counts about three parameters' worth of ln n.
 * Assumes  independent samples. Readings that hang together, or that the logger repeats until the next one comes, need
 *          a larger penalty: multiply by the inflation of `effectiveSampleSize` inside a segment.
 */
export function changePenalty(values: ArrayLike<number>): number {
  const { numbers } = presentNumbers(values);
  if (numbers.length < 2) return 0;
  const steps = numbers.subarray(1).map((value, i) => Math.abs(value - numbers[i]!));
  // Coarse readings repeat themselves and make the median step 0: the mean square, jumps and all, then stands in.
  const spread = NORMAL_SCALE * median(steps) || Math.sqrt(steps.reduce((sum, s) => sum + s * s, 0) / steps.length);
  const variance = (spread * spread) / 2;
  return 3 * variance * Math.log(numbers.length);
}

interface PeltSearch {
  /** Samples before which a segment may start, rising, from 0 to the number of samples. */
  readonly places: readonly number[];
  readonly minimumLength: number;
  readonly cost: SegmentCost;
  readonly penalty: number;
}

/** Optimal partition with pruning; returns the samples at which segments start, without the first. */
function pelt({ places, minimumLength, cost, penalty }: PeltSearch): number[] {
  const least = new Float64Array(places.length).fill(Infinity);
  const last = new Int32Array(places.length);
  // A start beaten at k may still win until a segment that starts at k is long enough, so it is dropped only there.
  const dropAt = new Float64Array(places.length).fill(Infinity);
  least[0] = -penalty;
  let starts: number[] = [];
  let next = 0;
  for (let k = 1; k < places.length; k++) {
    const end = places[k]!;
    for (; places[next]! <= end - minimumLength; next++) if (least[next]! < Infinity) starts.push(next);
    starts = starts.filter((s) => dropAt[s]! > end);
    for (const s of starts) {
      const total = least[s]! + cost(places[s]!, end) + penalty;
      if (total < least[k]!) {
        least[k] = total;
        last[k] = s;
      }
    }
    for (const s of starts) {
      const beaten = least[s]! + cost(places[s]!, end) >= least[k]!;
      if (beaten) dropAt[s] = Math.min(dropAt[s]!, end + minimumLength);
    }
  }
  const changes: number[] = [];
  for (let k = last[places.length - 1]!; k > 0; k = last[k]!) changes.push(places[k]!);
  return changes.reverse();
}

function stepping(from: number, to: number, stride: number): number[] {
  return Array.from({ length: Math.ceil((to - from) / stride) }, (_, i) => from + i * stride);
}

/** Every sample within a stride of a change, and the two ends. */
function placesNear(changes: readonly number[], stride: number, end: number): number[] {
  const places = [0];
  for (const change of changes) {
    const from = Math.max(places.at(-1)! + 1, change - stride);
    places.push(...stepping(from, Math.min(end, change + stride + 1), 1));
  }
  return [...places, end];
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

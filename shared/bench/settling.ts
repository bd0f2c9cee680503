import { median, medianAbsoluteDeviation } from "../numeric/median.ts";
import { moments } from "../numeric/moments.ts";
import { straightLine } from "../numeric/straightLine.ts";

export interface SettlingOptions {
  /** Changes smaller than this do not count as unsettled, unit of the values. */
  readonly tolerance: number;
}

/** Parts a stretch is cut into to see it settle. */
const PARTS = 48;
/** Standard deviations of the smoothed parts that settled parts keep within: by chance one in ten thousand is outside. */
const WIDTH = 4;
/** Tolerances that a drawn-in reading may at least lie from the centre. */
const LEAST_REACH = 4;
/** The wait is drawn out by this much: what is left of a decay at the edge of the noise would still pull the mean. */
export const SETTLING_MARGIN = 1.5;

/**
 * Sample from which `values` stay settled, or null where they still move, or are missing, when half of the stretch is over.
 *
 * The second half says what settled looks like: its mean and the spread of its parts. The stretch is settled after the
 * last parts of the first half that lie outside four spreads. No time is set beforehand: a light printed propeller
 * settles in tenths of a second, a tank with a slow return flow in tens of seconds.
 */
export function settledFrom(values: Float64Array, { tolerance }: SettlingOptions): number | null {
  const parts = Math.min(PARTS, values.length);
  if (parts < 4) return 0;
  // What is drawn in must still count as outside, or a run-up of a quiet signal would look settled from its first sample.
  const means = withoutSpikes(partMeans(values, parts, LEAST_REACH * tolerance));
  const half = parts >> 1;
  const lateMeans = means.subarray(half).filter((mean) => !Number.isNaN(mean));
  if (lateMeans.length < 2) return null;
  const late = moments(lateMeans);
  const band = Math.max(WIDTH * late.standardDeviation, tolerance);
  const isOutside = Array.from(means.subarray(0, half), (mean) => Math.abs(mean - late.mean) > band);
  const settled = isOutside.findLastIndex((outside, part) => outside && isMoving(isOutside, part)) + 1;
  if (settled >= half - 1 && settled > 1) return null;
  return Math.round((settled * SETTLING_MARGIN * values.length) / parts);
}

/** Parts that a movement shows in: what noise throws outside stands alone, or beside one that it was smoothed into. */
const MOVEMENT = 6;

/** Whether half of the parts up to `part` lie outside. */
function isMoving(isOutside: readonly boolean[], part: number): boolean {
  const recent = isOutside.slice(Math.max(0, part + 1 - Math.min(MOVEMENT, isOutside.length >> 2 || 1)), part + 1);
  return 2 * recent.filter(Boolean).length >= recent.length;
}

/** Parts a stretch is cut into to see whether it creeps. */
const CREEP_PARTS = 12;
/** Standard errors that a creep must be clear of noise. */
const CLEAR = 6;

/**
 * Whether `values` creep all along by more than `allowed` (unit of the values), clear of their noise. A slow decay makes
 * the second half as unsettled as the first, so that the two look alike.
 */
export function creeps(values: Float64Array, allowed: number): boolean {
  const means = partMeans(values, Math.min(CREEP_PARTS, values.length));
  const y = Array.from(means).filter((mean) => !Number.isNaN(mean));
  if (y.length < 5) return false;
  const { slope, slopeStandardError } = straightLine({ x: y.map((_, part) => part), y });
  return Math.abs(slope) * (y.length - 1) > allowed && Math.abs(slope) > CLEAR * slopeStandardError;
}

/** Means of equal parts, single wild readings drawn in to the edge of the plausible, at least `leastReach` away. */
function partMeans(values: Float64Array, parts: number, leastReach = 0): Float64Array {
  const { centre, spread } = lateSpread(values);
  const reach = Math.max(WILD * spread, leastReach) || Infinity;
  const isolated = isolatedIn(values, (value) => Math.abs(value - centre) > reach);
  return Float64Array.from({ length: parts }, (_, part) => {
    const from = Math.floor((part * values.length) / parts);
    const to = Math.floor(((part + 1) * values.length) / parts);
    let sum = 0;
    let count = 0;
    for (let i = from; i < to; i++) {
      const value = values[i]!;
      if (Number.isNaN(value) || isolated.has(i)) continue;
      sum += Math.min(centre + reach, Math.max(centre - reach, value));
      count++;
    }
    return count > 0 ? sum / count : Number.NaN;
  });
}

/** Wild readings in a row that are a glitch and no movement. */
const LONGEST_GLITCH = 3;

/** Positions of wild readings that stand in short runs amid plain ones. What is wild from the first reading on may be a run-up. */
function isolatedIn(values: Float64Array, isWild: (value: number) => boolean): ReadonlySet<number> {
  const isolated = new Set<number>();
  let start = -1;
  let hasPlainBefore = false;
  for (let i = 0; i <= values.length; i++) {
    if (i < values.length && (Number.isNaN(values[i]!) || isWild(values[i]!))) {
      if (start < 0) start = i;
      continue;
    }
    if (start >= 0 && hasPlainBefore && i - start <= LONGEST_GLITCH) for (let k = start; k < i; k++) isolated.add(k);
    start = -1;
    hasPlainBefore = true;
  }
  return isolated;
}

/** Standard deviations of the readings beyond which one is drawn in. */
const WILD = 10;

/** Centre and robust spread of the second half. */
function lateSpread(values: Float64Array): { centre: number; spread: number } {
  const late = everyNth(values.subarray(values.length >> 1), 512);
  return late.length === 0 ? { centre: 0, spread: 0 } : { centre: median(late), spread: medianAbsoluteDeviation(late) };
}

/** Running median of three: one part that a burst of glitches spoiled does not look like movement. */
function withoutSpikes(means: Float64Array): Float64Array {
  return means.map((_, i) => {
    const near = means.subarray(Math.max(0, i - 1), i + 2).filter((mean) => !Number.isNaN(mean));
    return near.length > 0 ? median(near) : Number.NaN;
  });
}

/** At most `most` numbers of `values`, evenly picked, missing cells left out: enough for a median. */
export function everyNth(values: Float64Array, most: number): Float64Array {
  const stride = Math.max(1, Math.floor(values.length / most));
  const picked = new Float64Array(Math.ceil(values.length / stride));
  let count = 0;
  for (let i = 0; i < values.length; i += stride) {
    const value = values[i]!;
    if (!Number.isNaN(value)) picked[count++] = value;
  }
  return picked.subarray(0, count);
}

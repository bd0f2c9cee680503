import { straightLine } from "../../numeric/straightLine.ts";
import { twoSidedPValue } from "../../numeric/studentT.ts";
import { plainMean } from "../sampleMean.ts";

/** Relative change of a quantity from start to end of one stretch. */
export interface Change {
  readonly change: number;
  readonly standardError: number;
}

export interface PooledChange extends Change {
  readonly stretches: number;
  /** Chance of so great a change where there is none. */
  readonly pValue: number;
}

/** Parts that a stretch is cut into, and readings that each needs. */
const PARTS = 10;
const FEWEST_READINGS = 20;
/** Fewest stretches whose disagreement shows how far one of them can be trusted. */
const FEWEST_STRETCHES = 3;
/** No stretch is known better than this: readings that never differ must not outweigh all others. */
const SMALLEST_ERROR = 1e-4;

/**
 * Change over a stretch by a straight line through the means of its tenths, as part of its mean; null for fewer than
 * 20 readings. `otherDoubt` is a standard uncertainty of the change, in the unit of the readings, that these do not show.
 *
 * Source   least squares: JCGM 100:2008, H.3; means of tenths, so that what hangs together counts once: common practice,
 *          no source.
 * Error    never told as better than 1e-4 of the mean.
 */
export function changeWithin(values: Float64Array, otherDoubt = 0): Change | null {
  let [present, sum] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i]!)) continue;
    present++;
    sum += values[i]!;
  }
  if (present < FEWEST_READINGS) return null;
  const mean = sum / present;
  if (mean === 0) return null;
  const parts = Array.from({ length: PARTS }, (_, i) => {
    const [from, to] = [i, i + 1].map((edge) => Math.round((edge * values.length) / PARTS));
    return { x: (i + 0.5) / PARTS - 0.5, y: plainMean(values.subarray(from, to)) };
  }).filter(({ y }) => Number.isFinite(y));
  if (parts.length < FEWEST_STRETCHES) return null;
  const line = straightLine({ x: parts.map(({ x }) => x), y: parts.map(({ y }) => y) });
  const standardError = Math.hypot(line.slopeStandardError, otherDoubt) / Math.abs(mean);
  const change = line.slope / mean;
  // A mean next to nothing makes no scale.
  if (!Number.isFinite(change) || !Number.isFinite(standardError)) return null;
  return { change, standardError: Math.max(SMALLEST_ERROR, standardError) };
}

/**
 * Weighted mean of the changes of several stretches, its standard error from how they disagree; null for fewer than 3.
 * Stretches are independent of one another where the readings within one are not, so that slow noise inside them does
 * not pass for a trend.
 *
 * Source   weighted mean with external consistency: Birge, Physical Review 40 (1932) 207.
 */
export function pooledChange(changes: readonly (Change | null)[]): PooledChange | null {
  const known = changes.filter((change) => change !== null);
  if (known.length < FEWEST_STRETCHES) return null;
  const weights = known.map(({ standardError }) => 1 / standardError ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const change = known.reduce((sum, one, i) => sum + weights[i]! * one.change, 0) / total;
  const dof = known.length - 1;
  const disagreement = known.reduce((sum, one, i) => sum + weights[i]! * (one.change - change) ** 2, 0) / dof;
  const standardError = Math.sqrt(Math.max(1, disagreement) / total);
  return { change, standardError, stretches: known.length, pValue: twoSidedPValue(change / standardError, dof) };
}

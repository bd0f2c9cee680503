import { OutOfDomain } from "../quantity/problem.ts";
import { moments } from "./moments.ts";

/** Longer series are cut into this many block means, so that the work stays bounded however slow the drift. */
const LONGEST_DIRECT_SERIES = 16_384;

/**
 * Autocorrelation coefficient r_k of evenly spaced `values` at `lag`, from -1 to 1.
 *
 *   r_k = Σ (x_i - m)(x_{i-k} - m) / Σ (x_i - m)²
 *
 * Missing cells (NaN) are left out and the gap is closed.
 *
 * Source   NIST/SEMATECH e-Handbook of Statistical Methods (2012), 1.3.5.12; checked against NIST StRD.
 * Range    lag 0 to count - 1, a whole number.
 * Throws   OutOfDomain for another lag, for no numbers, or where all are equal and no correlation is defined.
 */
export function autocorrelation(values: ArrayLike<number>, lag: number): number {
  const deviations = deviationsFromMean(values, 0, values.length);
  if (!Number.isInteger(lag) || lag < 0 || lag >= deviations.length) {
    throw new OutOfDomain({
      found: `a lag of ${lag} in ${deviations.length} numbers`,
      needed: `a whole number from 0 to ${deviations.length - 1}`,
      mend: "",
    });
  }
  const total = laggedProduct(deviations, 0);
  if (total === 0) {
    throw new OutOfDomain({ found: "numbers that are all equal", needed: "numbers that vary", mend: "" });
  }
  return laggedProduct(deviations, lag) / total;
}

export interface EffectiveSampleSize {
  /** Independent samples the series is worth, from 1 to its count. */
  readonly effective: number;
  /** count / effective: factor on the squared standard error of the mean, 1 or more. */
  readonly inflation: number;
}

/**
 * Independent samples that `values[from]` to `values[to - 1]`, evenly spaced, are worth for their mean:
 * the standard error of the mean is standardDeviation / sqrt(effective).
 *
 *   n_eff = n / τ,   τ = -1 + 2 Σ_m (r_2m + r_2m+1), summed while the pairs stay positive
 *
 * Pairs, not single coefficients: one coefficient that noise pushes below zero must not end the sum too early, which
 * would promise more than the log holds. The r_k have the whole sum of squares below the line and so carry the factor
 * (1 - k/n) of the exact variance of a mean already; it is not applied again.
 * Of a series longer than 16 384 the same is done on equal block means, whose scatter is compared with that of the samples.
 *
 * Source   Geyer, Statistical Science 7 (1992) 473, initial positive sequence; block means: Flyvbjerg & Petersen,
 *          J. Chem. Phys. 91 (1989) 461.
 * Range    never more than the count: alternating samples are not counted as better than independent ones.
 *          Numbers that are all equal count in full; their doubt is the resolution, not the scatter.
 * Error    of a short series τ comes out too low, because the mean is taken from the same samples: by a sixth for 20 τ of
 *          samples, by half for 5 τ (first-order autoregressions, simulated). Work grows as count + 16 384², whatever the
 *          correlation.
 * Throws   OutOfDomain `numeric.no-numbers`.
 */
export function effectiveSampleSize(values: ArrayLike<number>, from = 0, to = values.length): EffectiveSampleSize {
  const deviations = deviationsFromMean(values, from, to);
  const count = deviations.length;
  const block = Math.ceil(count / LONGEST_DIRECT_SERIES);
  const means = block === 1 ? deviations : blockMeans(deviations, block);
  const varianceOfMean = (moments(means).variance * correlationTime(means)) / means.length;
  const independent = moments(deviations).variance / count;
  const inflation = independent > 0 ? Math.min(count, Math.max(1, varianceOfMean / independent)) : 1;
  return { effective: count / inflation, inflation };
}

/** Variance of the mean over its variance for independent samples, τ. */
function correlationTime(deviations: Float64Array): number {
  const total = laggedProduct(deviations, 0);
  if (total === 0) return 1;
  let sum = 0;
  for (let lag = 0; lag + 1 < deviations.length; lag += 2) {
    const pair = (laggedProduct(deviations, lag) + laggedProduct(deviations, lag + 1)) / total;
    if (pair <= 0) break;
    sum += pair;
  }
  return 2 * sum - 1;
}

function deviationsFromMean(values: ArrayLike<number>, from: number, to: number): Float64Array {
  const { count, mean } = moments(values, from, to);
  const deviations = new Float64Array(count);
  let filled = 0;
  for (let i = from; i < to; i++) {
    const value = values[i]!;
    if (!Number.isNaN(value)) deviations[filled++] = value - mean;
  }
  return deviations;
}

/** Means of consecutive blocks; a rest shorter than a block is left out. */
function blockMeans(values: Float64Array, block: number): Float64Array {
  return Float64Array.from(
    { length: Math.floor(values.length / block) },
    (_, b) => moments(values, b * block, (b + 1) * block).mean,
  );
}

function laggedProduct(deviations: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < deviations.length; i++) sum += deviations[i]! * deviations[i - lag]!;
  return sum;
}

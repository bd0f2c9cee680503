import { moments } from "./moments.ts";

/** Products that a sum over lags may take before the series is halved, so that a slow drift does not cost n². */
export const MOST_PRODUCTS = 2 ** 22;

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
 * A series that hangs together over so many samples that this gets long is halved by taking means of two, as often as
 * needed; the scatter of the means is compared with that of the samples.
 *
 * Source   Geyer, Statistical Science 7 (1992) 473, initial positive sequence; block means: Flyvbjerg & Petersen,
 *          J. Chem. Phys. 91 (1989) 461.
 * Range    never more than the count: alternating samples are not counted as better than independent ones.
 *          Numbers that are all equal count in full; their doubt is the resolution, not the scatter.
 * Error    of a short series τ comes out too low, because the mean is taken from the same samples: by a sixth for 20 τ of
 *          samples, by half for 5 τ (first-order autoregressions, simulated); `sharedCorrelation` puts it back.
 *          Work grows as count times the logarithm of count, whatever the correlation.
 * Throws   OutOfDomain `numeric.no-numbers`.
 */
export function effectiveSampleSize(values: ArrayLike<number>, from = 0, to = values.length): EffectiveSampleSize {
  const deviations = deviationsFromMean(values, from, to);
  const count = deviations.length;
  let means = deviations;
  let time = correlationTime(means);
  while (time === null) {
    means = meansOfTwo(means);
    time = correlationTime(means);
  }
  const varianceOfMean = (moments(means).variance * time) / means.length;
  const independent = moments(deviations).variance / count;
  const inflation = independent > 0 ? Math.min(count, Math.max(1, varianceOfMean / independent)) : 1;
  return { effective: count / inflation, inflation };
}

/** Variance of the mean over its variance for independent samples, τ; null where the sum would take too long. */
function correlationTime(deviations: Float64Array): number | null {
  const total = laggedProduct(deviations, 0);
  if (total === 0) return 1;
  let sum = 0;
  for (let lag = 0; lag + 1 < deviations.length; lag += 2) {
    if (lag * deviations.length > MOST_PRODUCTS) return null;
    const pair = (laggedProduct(deviations, lag) + laggedProduct(deviations, lag + 1)) / total;
    if (pair <= 0) break;
    sum += pair;
  }
  return 2 * sum - 1;
}

/** Distances of the numbers that are there from their mean. */
export function deviationsFromMean(values: ArrayLike<number>, from = 0, to = values.length): Float64Array {
  const { count, mean } = moments(values, from, to);
  const deviations = new Float64Array(count);
  let filled = 0;
  for (let i = from; i < to; i++) {
    const value = values[i]!;
    if (!Number.isNaN(value)) deviations[filled++] = value - mean;
  }
  return deviations;
}

/** Means of consecutive pairs; an odd one at the end is left out. */
export function meansOfTwo(values: Float64Array): Float64Array {
  return Float64Array.from({ length: values.length >> 1 }, (_, i) => (values[2 * i]! + values[2 * i + 1]!) / 2);
}

/** Σ d_i d_i-lag. */
export function laggedProduct(deviations: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < deviations.length; i++) sum += deviations[i]! * deviations[i - lag]!;
  return sum;
}

/**
 * Autocorrelation coefficient of evenly spaced `deviations` from their mean at `lag`, a whole number below their count;
 * from -1 to 1.
 *
 *   r_k = Σ d_i d_(i-k) / Σ d_i²
 *
 * Source   NIST/SEMATECH e-Handbook of Statistical Methods (2012), 1.3.5.12, from memory; checked
 *          against NIST StRD.
 * Range    deviations that are not all zero: of these no correlation is defined.
 */
export function autocorrelation(deviations: Float64Array, lag: number): number {
  return laggedProduct(deviations, lag) / laggedProduct(deviations, 0);
}

import { OutOfDomain } from "../quantity/problem.ts";
import { moments } from "./moments.ts";

/** Products that the sum over lags may take before the series is halved, so that a slow drift does not cost n². */
const MOST_PRODUCTS = 2 ** 22;

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
  /**
   * Further factor on the squared standard error for what taking the mean out of the same samples hides, 1 or more:
   * near 1 for a long series, beyond 2 where the samples hang together over a third of it.
   */
  readonly shortSeriesFactor: number;
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
 *          samples, by half for 5 τ (first-order autoregressions, simulated). `shortSeriesFactor` gives it back: a tenth
 *          is left for 10 τ of samples and a fifth for 3 τ (from memory of the source: Zięba & Ramza, Metrology and
 *          Measurement Systems 18 (2011) 529; measured by simulation). With the covariances beyond lag K taken as nought
 *          every r_k lacks the part V that the mean takes up, (1 - k/n) V, and solving for V gives the factor
 *          n (n - 1) / ((n - K)(n - K - 1)). V, added to the r_k, moves K out once.
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
  const varianceOfMean = (moments(means).variance * time.time) / means.length;
  const independent = moments(deviations).variance / count;
  const inflation = independent > 0 ? Math.min(count, Math.max(1, varianceOfMean / independent)) : 1;
  return { effective: count / inflation, inflation, shortSeriesFactor: shortSeriesFactor(means, time) };
}

/** Part of the samples that the lags may reach over. */
const LONGEST_REACH = 0.6;

/** The time with the mean's own part put back, by that without. */
function shortSeriesFactor(deviations: Float64Array, first: CorrelationTime): number {
  const count = deviations.length;
  if (count < 4 || first.time <= 1) return 1;
  const part = (first.time * meanTakenOut(count, first.lags)) / count;
  const total = laggedProduct(deviations, 0);
  let { sum, lags } = first;
  for (let lag = lags + 1; lag + 1 < LONGEST_REACH * count; lag += 2) {
    if (lag * count > MOST_PRODUCTS) break;
    const pair = (laggedProduct(deviations, lag) + laggedProduct(deviations, lag + 1)) / total;
    if (pair + part * (2 - (2 * lag + 1) / count) <= 0) break;
    sum += pair;
    lags = lag + 1;
  }
  const time = Math.max(first.time * meanTakenOut(count, first.lags), (2 * sum - 1) * meanTakenOut(count, lags));
  return Math.min(count, time / first.time);
}

/** n (n - 1) / ((n - K)(n - K - 1)) for K `lags` of `count` samples. */
function meanTakenOut(count: number, lags: number): number {
  const left = Math.max(2, count - lags);
  return (count * (count - 1)) / (left * (left - 1));
}

interface CorrelationTime {
  /** Variance of the mean over its variance for independent samples, τ. */
  readonly time: number;
  /** Σ of the r_k in it, r_0 included, and the last lag. */
  readonly sum: number;
  readonly lags: number;
}

/** Null where the sum would take too long. */
function correlationTime(deviations: Float64Array): CorrelationTime | null {
  const total = laggedProduct(deviations, 0);
  if (total === 0) return { time: 1, sum: 1, lags: 0 };
  let sum = 0;
  let lags = 0;
  for (let lag = 0; lag + 1 < deviations.length; lag += 2) {
    if (lag * deviations.length > MOST_PRODUCTS) return null;
    const pair = (laggedProduct(deviations, lag) + laggedProduct(deviations, lag + 1)) / total;
    if (pair <= 0) break;
    sum += pair;
    lags = lag + 1;
  }
  // The first pair alone, r_0 and r_1, is what independent samples have.
  return { time: 2 * sum - 1, sum, lags: lags === 1 ? 0 : lags };
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

/** Means of consecutive pairs; an odd one at the end is left out. */
function meansOfTwo(values: Float64Array): Float64Array {
  return Float64Array.from({ length: values.length >> 1 }, (_, i) => (values[2 * i]! + values[2 * i + 1]!) / 2);
}

function laggedProduct(deviations: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < deviations.length; i++) sum += deviations[i]! * deviations[i - lag]!;
  return sum;
}

import { moments } from "../numeric/moments.ts";
import { sharedCorrelation } from "../numeric/sharedCorrelation.ts";

/** Mean of the readings of a steady stretch and what its doubt is made of. */
export interface SampleMean {
  readonly mean: number;
  /** From the scatter of the readings (type A), unit of the mean. */
  readonly scatter: number;
  /** From the step of the reading where scatter does not even it out, unit of the mean. */
  readonly rounding: number;
  readonly standardDeviation: number;
  readonly samples: number;
  /** Independent readings that the samples are worth. */
  readonly effectiveSamples: number;
  /** Degrees of freedom of `scatter`. */
  readonly degreesOfFreedom: number;
  /** Of what it shares with other means that it was judged with; absent where it was judged alone. */
  readonly commonDegreesOfFreedom?: number | undefined;
  /** What the scatter was taken from: the readings, in a long stretch means of blocks of `blockSize`. */
  readonly series: Float64Array;
  /** A power of two, so that stretches of different length can be brought to the same blocks. */
  readonly blockSize: number;
}

/** Standard deviation, in steps, from which on scatter evens the rounding out: the error left is under 1 % of a step. */
const DITHER = 0.6;

/** Longer series are cut into this many block means before their correlation is looked at: its cost grows with the square. */
const MOST_BLOCKS = 1024;

/**
 * Mean of `values` (NaN: missing) whose readings come in steps of `resolution`.
 *
 * Source   type A from the effective number of independent readings, type B of rounding resolution/sqrt(12): JCGM
 *          100:2008, 4.2.3, 4.3.7 and F.2.2.1. That noise of half a step evens rounding out: Widrow & Kollár,
 *          Quantization Noise (2008), ch. 19.
 * Throws   OutOfDomain where no number is left.
 */
export function sampleMean(values: Float64Array, resolution: number): SampleMean {
  const { count, mean, standardDeviation } = moments(values);
  if (count < 2) return singleReading(mean, count, resolution);
  const blockSize = 2 ** Math.max(0, Math.ceil(Math.log2(values.length / MOST_BLOCKS)));
  const series = blockMeans(values, blockSize);
  const { inflation, degreesOfFreedom } = sharedCorrelation([series])[0]!;
  const scatter = scatterOf(series, inflation);
  return {
    mean,
    scatter,
    rounding: standardDeviation < DITHER * resolution ? resolution / Math.sqrt(12) : 0,
    standardDeviation,
    samples: count,
    effectiveSamples: scatter > 0 ? Math.min(count, Math.max(1, (standardDeviation / scatter) ** 2)) : count,
    degreesOfFreedom,
    series,
    blockSize,
  };
}

/** The same of the readings times `scale`. */
export function scaledMean(mean: SampleMean, scale: number): SampleMean {
  if (scale === 1) return mean;
  const size = Math.abs(scale);
  return {
    ...mean,
    mean: scale * mean.mean,
    scatter: size * mean.scatter,
    rounding: size * mean.rounding,
    standardDeviation: size * mean.standardDeviation,
    series: mean.series.map((value) => scale * value),
  };
}

/** Standard error of the mean of `series`, whose samples hang together by `inflation`. */
export function scatterOf(series: Float64Array, inflation: number): number {
  const { count, variance } = moments(series);
  return Math.sqrt((variance * inflation) / count);
}

function singleReading(mean: number, samples: number, resolution: number): SampleMean {
  const rounding = resolution / Math.sqrt(12);
  const none = {
    scatter: 0,
    standardDeviation: 0,
    degreesOfFreedom: Infinity,
    series: new Float64Array(0),
    blockSize: 1,
  };
  return { mean, rounding, samples, effectiveSamples: samples, ...none };
}

/** Means of equal blocks of `size` rows; NaN where a block holds no number. */
export function blockMeans(values: Float64Array, size: number): Float64Array {
  if (size === 1) return values;
  const means = new Float64Array(Math.floor(values.length / size));
  for (let block = 0; block < means.length; block++) {
    let sum = 0;
    let count = 0;
    for (let i = block * size; i < (block + 1) * size; i++) {
      const value = values[i]!;
      if (!Number.isNaN(value)) {
        sum += value;
        count++;
      }
    }
    means[block] = count > 0 ? sum / count : Number.NaN;
  }
  return means;
}

/** Mean of what is there; NaN where nothing is. One pass, for arrays that are long and looked at often. */
export function plainMean(values: Float64Array): number {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (!Number.isNaN(value)) {
      sum += value;
      count++;
    }
  }
  return sum / count;
}

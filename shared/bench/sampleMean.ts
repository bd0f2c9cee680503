import { effectiveSampleSize } from "../numeric/autocorrelation.ts";
import { moments } from "../numeric/moments.ts";

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
  /** How much the squared scatter grows because the samples hang together; below 1 by chance only. */
  readonly inflation: number;
  /** Degrees of freedom of `scatter`. */
  readonly degreesOfFreedom: number;
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
  const blocks = values.length > MOST_BLOCKS ? blockMeans(values) : values;
  const found = effectiveSampleSize(blocks);
  const effective = found.effective / found.shortSeriesFactor;
  const scatter = moments(blocks).standardDeviation / Math.sqrt(effective);
  return {
    mean,
    scatter,
    rounding: standardDeviation < DITHER * resolution ? resolution / Math.sqrt(12) : 0,
    standardDeviation,
    samples: count,
    effectiveSamples: scatter > 0 ? Math.min(count, Math.max(1, (standardDeviation / scatter) ** 2)) : count,
    inflation: standardDeviation > 0 ? count * (scatter / standardDeviation) ** 2 : 1,
    degreesOfFreedom: Math.max(1, effective - 1),
  };
}

function singleReading(mean: number, samples: number, resolution: number): SampleMean {
  const rounding = resolution / Math.sqrt(12);
  const none = { scatter: 0, standardDeviation: 0, inflation: 1, degreesOfFreedom: Infinity };
  return { mean, rounding, samples, effectiveSamples: samples, ...none };
}

/** Means of equal blocks of rows; NaN where a block holds no number. */
function blockMeans(values: Float64Array): Float64Array {
  const size = Math.ceil(values.length / MOST_BLOCKS);
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

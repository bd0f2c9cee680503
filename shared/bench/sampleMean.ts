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
  /** Degrees of freedom of `scatter`. */
  readonly degreesOfFreedom: number;
}

/** Standard deviation, in steps, from which on scatter evens the rounding out: the error left is under 1 % of a step. */
const DITHER = 0.6;

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
  const rounding = count < 2 || standardDeviation < DITHER * resolution ? resolution / Math.sqrt(12) : 0;
  if (count < 2) {
    return { mean, scatter: 0, rounding, standardDeviation: 0, samples: count, effectiveSamples: count, degreesOfFreedom: Infinity };
  }
  const { effective } = effectiveSampleSize(values);
  return {
    mean,
    scatter: standardDeviation / Math.sqrt(effective),
    rounding,
    standardDeviation,
    samples: count,
    effectiveSamples: effective,
    degreesOfFreedom: Math.max(1, effective - 1),
  };
}

/** Scatter and rounding together, unit of the mean. */
export function ownUncertainty({ scatter, rounding }: SampleMean): number {
  return Math.hypot(scatter, rounding);
}

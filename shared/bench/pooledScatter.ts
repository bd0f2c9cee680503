import type { SampleMean } from "./sampleMean.ts";

/** Scatter of one plateau's mean and its degrees of freedom. */
export interface PooledScatter {
  readonly scatter: number;
  readonly degreesOfFreedom: number;
}

/**
 * Scatter of the means of all plateaus of a run, where no plateau is taken to hang together less than all do on average.
 *
 * What makes readings of a stand hang together, an amplifier that wanders or water that swirls, is there in every
 * plateau; one short stretch shows it badly, and a plateau that by chance shows none of it would rule the fit. One that
 * hangs together more than the others keeps its own.
 *
 * Source   pooled estimates: JCGM 100:2008, 4.2.4 and H.3.6; degrees of freedom add up.
 */
export function pooledScatter(means: readonly SampleMean[]): PooledScatter[] {
  const known = means.filter(({ samples }) => samples > 1);
  const samples = known.reduce((sum, mean) => sum + mean.samples, 0);
  const shared = known.reduce((sum, mean) => sum + mean.samples * mean.inflation, 0) / samples;
  const together = known.reduce((sum, mean) => sum + mean.degreesOfFreedom, 0);
  return means.map((mean) => {
    const { scatter, degreesOfFreedom } = mean;
    if (mean.samples < 2 || !(shared > mean.inflation)) return { scatter, degreesOfFreedom };
    return {
      scatter: mean.standardDeviation * Math.sqrt(shared / mean.samples),
      degreesOfFreedom: Math.max(degreesOfFreedom, Math.min(together, mean.samples - 1)),
    };
  });
}

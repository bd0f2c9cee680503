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
  return atLeast(means, togetherness(means));
}

/** Part of the running scatter that a scale at rest must have to be taken to wander as it does when running. */
const SAME_WANDER = 0.5;

/**
 * Scatter of the means at rest. Rests are few and short; where the scale scatters at rest as it does when running, it is
 * the scale that wanders, and the plateaus tell how long it takes to.
 */
export function scatterAtRest(rests: readonly SampleMean[], plateaus: readonly SampleMean[]): PooledScatter[] {
  const isScale = pooledDeviation(rests) >= SAME_WANDER * pooledDeviation(plateaus);
  const own = togetherness(rests);
  const running = togetherness(plateaus);
  return atLeast(rests, isScale && running.inflation > own.inflation ? running : own);
}

/** How much the samples of several means hang together. */
interface Togetherness {
  readonly inflation: number;
  readonly degreesOfFreedom: number;
}

function togetherness(means: readonly SampleMean[]): Togetherness {
  const known = means.filter(({ samples }) => samples > 1);
  const samples = known.reduce((sum, mean) => sum + mean.samples, 0);
  return {
    inflation: known.reduce((sum, mean) => sum + mean.samples * mean.inflation, 0) / Math.max(1, samples),
    degreesOfFreedom: known.reduce((sum, mean) => sum + mean.degreesOfFreedom, 0),
  };
}

function pooledDeviation(means: readonly SampleMean[]): number {
  const samples = means.reduce((sum, mean) => sum + mean.samples, 0);
  const squares = means.reduce((sum, mean) => sum + mean.samples * mean.standardDeviation ** 2, 0);
  return samples > 0 ? Math.sqrt(squares / samples) : 0;
}

function atLeast(means: readonly SampleMean[], { inflation, degreesOfFreedom: together }: Togetherness) {
  return means.map((mean) => {
    const { scatter, degreesOfFreedom } = mean;
    if (mean.samples < 2 || !(inflation > mean.inflation)) return { scatter, degreesOfFreedom };
    return {
      scatter: mean.standardDeviation * Math.sqrt(inflation / mean.samples),
      degreesOfFreedom: Math.max(degreesOfFreedom, Math.min(together, mean.samples - 1)),
    };
  });
}

import { moments } from "../numeric/moments.ts";
import { type MeanInflation, sharedCorrelation } from "../numeric/sharedCorrelation.ts";
import { blockMeans, type SampleMean, scatterOf } from "./sampleMean.ts";

/** Scatter of one plateau's mean, and the degrees of freedom of the estimate behind it, which several may share. */
export interface PooledScatter {
  readonly scatter: number;
  readonly degreesOfFreedom: number;
  /** Of what it shares with the others; absent where the plateau stands alone. */
  readonly commonDegreesOfFreedom?: number | undefined;
}

/**
 * Scatter of the means of all plateaus of a run; how their readings hang together is taken from all of them at once.
 *
 * What makes readings of a stand hang together, an amplifier that wanders or water that swirls, is there in every
 * plateau; one short stretch shows it badly, and a plateau that by chance shows none of it would rule the fit. One that
 * hangs together beyond doubt more than the others keeps its own.
 *
 * Source   pooled estimates: JCGM 100:2008, 4.2.4 and H.3.6; see `sharedCorrelation`.
 */
export function pooledScatter(means: readonly SampleMean[]): PooledScatter[] {
  return judgedBy(means, means);
}

/** Part of the running scatter that a scale at rest must have to be taken to wander as it does when running. */
const SAME_WANDER = 0.5;

/**
 * Scatter of the means at rest. Rests are few and short; where the scale scatters at rest as it does when running, it is
 * the scale that wanders, and the plateaus tell how long it takes to. `plateaus`: with the rotation rate allowed for, or
 * a tiring battery would pass for a scale that wanders.
 */
export function scatterAtRest(rests: readonly SampleMean[], plateaus: readonly SampleMean[]): PooledScatter[] {
  const isScale = pooledDeviation(rests) >= SAME_WANDER * pooledDeviation(plateaus);
  return judgedBy(rests, isScale ? [...rests, ...plateaus] : rests);
}

function pooledDeviation(means: readonly SampleMean[]): number {
  const samples = means.reduce((sum, mean) => sum + mean.samples, 0);
  const squares = means.reduce((sum, mean) => sum + mean.samples * mean.standardDeviation ** 2, 0);
  return samples > 0 ? Math.sqrt(squares / samples) : 0;
}

/** Standard deviations of its own estimate by which a plateau must hang together more than all do, to keep its own. */
const BEYOND_DOUBT = 3;

/** Scatter of `means`, the first of `all`, by the correlation that all show together. */
function judgedBy(means: readonly SampleMean[], all: readonly SampleMean[]): PooledScatter[] {
  const known = all.filter(({ samples }) => samples > 1);
  const blockSize = Math.max(1, ...known.map((mean) => mean.blockSize));
  const series = known.map((mean) => blockMeans(mean.series, blockSize / mean.blockSize));
  const together = sharedCorrelation(series);
  return means.map((mean) => {
    const j = known.indexOf(mean);
    return j < 0 ? ownOf(mean) : ownOrPooled(mean, series[j]!, together[j]!);
  });
}

function ownOrPooled(own: SampleMean, series: Float64Array, together: MeanInflation): PooledScatter {
  if (moments(series).count < 2) return ownOf(own);
  const scatter = scatterOf(series, together.inflation);
  const mostByChance = Math.sqrt(1 + BEYOND_DOUBT * Math.sqrt(2 / own.degreesOfFreedom));
  if (own.scatter > mostByChance * scatter) return ownOf(own);
  const { degreesOfFreedom, commonDegreesOfFreedom } = together;
  return { scatter, degreesOfFreedom, commonDegreesOfFreedom };
}

const ownOf = ({ scatter, degreesOfFreedom }: SampleMean): PooledScatter => ({ scatter, degreesOfFreedom });

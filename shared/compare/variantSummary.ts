import type { VariantSummary } from "../model/comparison.ts";
import type { Reduction } from "../model/reduction.ts";
import { combined, known } from "../numeric/combined.ts";
import { thrustCoefficientOf } from "./runQuantity.ts";
import { occurrences, sideStatistics } from "./sideStatistics.ts";

/** Runs of one variant: every reduction is one mounting. */
export interface VariantRuns {
  readonly name: string;
  readonly reductions: readonly Reduction[];
}

/**
 * Geometric mean of the thrust coefficients of a variant's mountings with its full uncertainty, common causes
 * included (in a ratio some of them cancel, so the two do not add up to the ratio's). A single run speaks for itself.
 */
export function variantSummary({ name, reductions }: VariantRuns): VariantSummary {
  const single = reductions[0]!;
  if (reductions.length === 1) return { name, runs: 1, thrustCoefficient: single.thrustCoefficient, runToRun: null };
  const runs = reductions.map(thrustCoefficientOf);
  const side = sideStatistics(runs, occurrences(runs));
  const betweenRuns = side.betweenRuns!;
  const spread = Math.sqrt(Math.max(betweenRuns, side.withinRuns) / runs.length);
  const common = Math.hypot(...side.common.values());
  const scatter = { standardUncertainty: spread, degreesOfFreedom: runs.length - 1 };
  const { standardUncertainty: u, expanded95 } = combined([scatter, ...known(common)]);
  const factor = Math.exp(expanded95);
  const value = Math.exp(side.meanLog);
  return {
    name,
    runs: runs.length,
    thrustCoefficient: { value, standardUncertainty: value * u, interval95: [value / factor, value * factor] },
    runToRun: Math.sqrt(betweenRuns),
  };
}

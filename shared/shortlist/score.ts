import { CRITERIA, type Criterion, type ShortlistWeights } from "../model/shortlist.ts";
import type { CriterionScore } from "../model/shortlistResult.ts";
import type { Range } from "./tally.ts";
import type { Values } from "./values.ts";
import { CRITERION_WORDS } from "./words.ts";

/** How the scores of one shortlist are made. */
export interface Scoring {
  readonly ranges: Record<Criterion, Range>;
  /** Shares of all weights, which add up to 1. */ readonly weights: ShortlistWeights;
}

/** Weights as shares of their sum; the sum is not 0: `requireBox`. */
export function weightShares(weights: ShortlistWeights): ShortlistWeights {
  const sum = CRITERIA.reduce((total, criterion) => total + weights[criterion], 0);
  return Object.fromEntries(CRITERIA.map((criterion) => [criterion, weights[criterion] / sum])) as ShortlistWeights;
}

/**
 * Where a value lies between the worst (0) and the best (1) of those that meet the requirement: linear. 1 where all are
 * alike, and for what has no end; 0 for what is not known.
 */
function normalised(criterion: Criterion, value: number, { least, greatest }: Range): number {
  if (Number.isNaN(value)) return 0;
  if (value === Infinity || greatest <= least) return 1;
  const [worst, best] = CRITERION_WORDS[criterion].better === "more" ? [least, greatest] : [greatest, least];
  return (value - worst) / (best - worst);
}

/** Score of a combination: Σ w_i s_i, 0 to 1. */
export function scoreOf(values: Values, { ranges, weights }: Scoring): number {
  let sum = 0;
  for (const criterion of CRITERIA) {
    const weight = weights[criterion];
    if (weight > 0) sum += weight * normalised(criterion, values[criterion], ranges[criterion]);
  }
  // Rounding may leave the best of all a hair above.
  return Math.min(1, sum);
}

/** What the score is made of; criteria without weight are told too, so that a reader sees what they would do. */
export function scoresOf(values: Values, { ranges, weights }: Scoring, unitOfMargin: string): CriterionScore[] {
  return CRITERIA.map((criterion) => {
    const share = Math.min(1, Math.max(0, normalised(criterion, values[criterion], ranges[criterion])));
    return {
      criterion,
      value: Number.isFinite(values[criterion]) ? values[criterion] : null,
      unit: criterion === "thrustMargin" ? unitOfMargin : CRITERION_WORDS[criterion].unit,
      normalised: share,
      weight: weights[criterion],
      contribution: Math.min(1, weights[criterion] * share),
    };
  });
}

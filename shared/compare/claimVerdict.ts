import type { VariantRatio } from "../model/comparison.ts";
import { positive } from "../quantity/domain.ts";
import { ratioInWords } from "./ratioInWords.ts";

export interface ClaimVerdict {
  readonly verdict: "supported" | "refuted" | "open";
  readonly sentence: string;
}

/**
 * What a measured ratio says of a claim "more than `claimedFactor` times", such as "sanding more than doubles the
 * thrust" (factor 2): supported where the whole 95 % interval lies above the factor, refuted where it lies below, open
 * where the interval holds the factor.
 *
 * The interval is two-sided, so a claim exactly on the limit is wrongly supported, or wrongly refuted, in at most 25 of
 * 1000 such comparisons.
 *
 * Throws   OutOfDomain for a factor that is not positive.
 */
export function claimVerdict(ratio: Pick<VariantRatio, "value" | "interval95">, claimedFactor: number): ClaimVerdict {
  positive(claimedFactor, "claimed factor", "");
  const [low, high] = ratio.interval95;
  const claim = `"more than ${claimedFactor} times"`;
  const measured = ratioInWords(ratio);
  if (low > claimedFactor) {
    return { verdict: "supported", sentence: `These runs support ${claim}: the ratio is ${measured}.` };
  }
  if (high < claimedFactor) {
    return { verdict: "refuted", sentence: `These runs speak against ${claim}: the ratio is ${measured}.` };
  }
  return {
    verdict: "open",
    sentence: `These runs neither support nor refute ${claim}: the ratio is ${measured}. More mountings would narrow it.`,
  };
}

import type { Comparison, VariantRatio } from "../model/comparison.ts";
import type { JudgedClaim, ThrustClaim } from "../model/thrustClaim.ts";
import { positive } from "../quantity/domain.ts";
import { ratioInWords } from "./ratioInWords.ts";

type ClaimVerdict = Pick<JudgedClaim["verdicts"][number], "verdict" | "sentence">;

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

/** The claim judged by the ratio of thrust at equal rotation rate of each comparison; sentences name the pair where there are several. */
export function judgedThrustClaim(comparisons: readonly Comparison[], claim: ThrustClaim): JudgedClaim {
  const verdicts = comparisons.map(({ baseline, variant, thrustCoefficientRatio }) => {
    const { verdict, sentence } = claimVerdict(thrustCoefficientRatio, claim.factor);
    const pair = comparisons.length > 1 ? `${variant.name} over ${baseline.name}: ` : "";
    return { baseline: baseline.name, variant: variant.name, verdict, sentence: `${pair}${sentence}` };
  });
  return { ...claim, verdicts };
}

/** "The claim: more than 2 times the thrust at equal rotation rate, (a message to the co-op)." */
export function claimInWords({ factor, source }: ThrustClaim): string {
  const by = source === "" ? "its source is not stated" : source.replace(/\.$/, "");
  return `The claim: more than ${factor} times the thrust of the baseline at equal rotation rate (${by}).`;
}

import type { SpreadChoice, VariantRatio } from "../model/comparison.ts";
import { formatNumber, formatPercent } from "../quantity/format.ts";
import { SPREADS_DIFFER } from "./ratioDoubts.ts";

const LEVEL = `${100 * SPREADS_DIFFER} %`;

const CHOICE_WORDS: { readonly [C in SpreadChoice]: string } = {
  tested: `Two variants have one spread from mounting to mounting unless an F test at the ${LEVEL} level tells theirs apart.`,
  pooled: "Two variants are taken to have one spread from mounting to mounting, as chosen.",
  separate: "Each variant has its own spread from mounting to mounting, as chosen.",
};

/** The choice of spreads that the intervals of a comparison rest on, a sentence. */
export const spreadChoiceInWords = (choice: SpreadChoice): string => CHOICE_WORDS[choice];

/** Which spread from mounting to mounting serves which variant, and how far the two are alike. */
export function spreadsInWords({ used, variant, baseline, pValue }: NonNullable<VariantRatio["spreads"]>): string {
  const alike = pValue < 0.001 ? "in less than 1 of 1000 cases" : `in ${formatNumber(100 * pValue, 2)} of 100 cases`;
  const seen = `${formatPercent(baseline)} and ${formatPercent(variant)}; chance alone sets them so far apart ${alike}`;
  return used === "pooled" ? `one for both variants, from ${seen}` : `each variant its own, ${seen}`;
}

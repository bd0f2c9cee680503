import type { VariantRatio } from "../model/comparison.ts";
import { formatNumber } from "../quantity/format.ts";

/** Which spread from mounting to mounting serves which variant, and how far the two are alike. */
export function spreadsInWords({ used, variant, baseline, pValue }: NonNullable<VariantRatio["spreads"]>): string {
  const percent = (spread: number) => `${formatNumber(100 * spread, 2)} %`;
  const alike = pValue < 0.001 ? "in less than 1 of 1000 cases" : `in ${formatNumber(100 * pValue, 2)} of 100 cases`;
  const seen = `${percent(baseline)} and ${percent(variant)}; chance alone sets them so far apart ${alike}`;
  return used === "pooled" ? `one for both variants, from ${seen}` : `each variant its own, ${seen}`;
}

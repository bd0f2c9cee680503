import type { VariantRuns } from "./variantSummary.ts";

/** Two variants that are compared. */
export interface VariantPair {
  readonly baseline: VariantRuns;
  readonly variant: VariantRuns;
}

/** Every group against the baseline; with "all" then every other pair, in the order of the groups. */
export function variantPairs(
  groups: readonly VariantRuns[],
  baseline: VariantRuns,
  pairs: "baseline" | "all",
): VariantPair[] {
  const others = groups.filter((group) => group !== baseline);
  const against = others.map((variant) => ({ baseline, variant }));
  if (pairs === "baseline") return against;
  const among = others.flatMap((first, i) => others.slice(i + 1).map((variant) => ({ baseline: first, variant })));
  return [...against, ...among];
}

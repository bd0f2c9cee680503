import { computed } from "@preact/signals";
import { robustnessOf } from "../../../../shared/compare/robustness/robustnessOf.ts";
import type { Robustness } from "../../../../shared/model/robustness.ts";
import { reductionsOf } from "../variantGroups.ts";
import { baseline, groups, spreads } from "../variantsState.ts";

/** Each variant on show against the baseline, asked in other ways. */
export const robustness = computed((): Robustness[] => {
  const base = baseline.value;
  if (base === null) return [];
  const side = (group: typeof base) => ({ name: group.name, reductions: reductionsOf(group) });
  return groups.value
    .filter((group) => group.name !== base.name && reductionsOf(group).length > 0)
    .map((group) => robustnessOf({ baseline: side(base), variant: side(group) }, spreads.value));
});

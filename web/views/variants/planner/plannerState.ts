import { computed, signal } from "@preact/signals";
import { mountingPlan } from "../../../../shared/compare/planning/mountingPlan.ts";
import type { MountingPlan } from "../../../../shared/model/mountingPlan.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { reductionsOf } from "../variantGroups.ts";
import { compared, groups } from "../variantsState.ts";
import { type PlanDraft, planRequest } from "./plannerModel.ts";

export const draft = signal<PlanDraft>({ difference: 0.05, power: 0.8, paired: false, seed: 1 });

export function setDraft(part: Partial<PlanDraft>): void {
  draft.value = { ...draft.value, ...part };
}

export const planned = computed((): { readonly plan: MountingPlan } | { readonly problem: string } => {
  const diameters = groups.value.flatMap((group) => reductionsOf(group).map(({ diameter }) => diameter.value));
  const subject = {
    variants: groups.value.map(({ name }) => name),
    diameter: diameters.length === 0 ? null : Math.max(...diameters),
  };
  try {
    return { plan: mountingPlan(planRequest(draft.value, compared.value.comparisons, subject)) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
});

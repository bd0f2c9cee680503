import { computed, signal } from "@preact/signals";
import { anovaOf } from "../../../../shared/compare/variance/anovaOf.ts";
import type { Anova } from "../../../../shared/model/anova.ts";
import type { FactorName } from "../../../../shared/model/factor.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { groupedRuns } from "../groupedRuns.ts";

export const firstFactor = signal<FactorName>("finish");
export const secondFactor = signal<FactorName | null>(null);

export const anovaTold = computed((): { readonly anova: Anova } | { readonly problem: string } => {
  const second = secondFactor.value;
  const factors = second === null || second === firstFactor.value ? [firstFactor.value] : [firstFactor.value, second];
  try {
    return { anova: anovaOf(groupedRuns.value, { factors, quantity: "thrustCoefficient" }) };
  } catch (thrown) {
    return { problem: `${sentenceOf(thrown)} Only the variants on show count: tick more of them above.` };
  }
});

import { computed, signal } from "@preact/signals";
import { trendOf } from "../../../../shared/compare/trend/trendOf.ts";
import type { NumberFactorName } from "../../../../shared/model/factor.ts";
import type { RunQuantityName, Trend } from "../../../../shared/model/trend.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { groupedRuns } from "../groupedRuns.ts";

export const trendFactor = signal<NumberFactorName>("pitchRatio");
export const trendQuantity = signal<RunQuantityName>("thrustCoefficient");

export const trendTold = computed((): { readonly trend: Trend } | { readonly problem: string } => {
  try {
    const request = { factor: trendFactor.value, quantity: trendQuantity.value, scale: "linear" } as const;
    return { trend: trendOf(groupedRuns.value, request) };
  } catch (thrown) {
    return { problem: `${sentenceOf(thrown)} Only the variants on show count: tick more of them above.` };
  }
});

import { computed, signal } from "@preact/signals";
import type { ComparisonAnswer } from "../../../shared/model/comparisonRequest.ts";
import type { FactorName, NumberFactorName } from "../../../shared/model/factor.ts";
import type { RunQuantityName } from "../../../shared/model/trend.ts";

/** What is asked beyond the pairs: a trend over a number, an analysis of variance. */
export const trendFactor = signal<NumberFactorName>("pitchRatio");
export const trendQuantity = signal<RunQuantityName>("thrustCoefficient");
export const firstFactor = signal<FactorName>("finish");
export const secondFactor = signal<FactorName | null>("pitchRatio");

export const answered = computed((): ComparisonAnswer | null => null);

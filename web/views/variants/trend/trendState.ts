import { computed } from "@preact/signals";
import type { Trend } from "../../../../shared/model/trend.ts";
export { trendFactor, trendQuantity } from "../asked.ts";
export const trendTold = computed((): { readonly trend: Trend } | { readonly problem: string } => ({ problem: "" }));

import { computed } from "@preact/signals";
import type { Anova } from "../../../../shared/model/anova.ts";
export { firstFactor, secondFactor } from "../asked.ts";
export const anovaTold = computed((): { readonly anova: Anova } | { readonly problem: string } => ({ problem: "" }));

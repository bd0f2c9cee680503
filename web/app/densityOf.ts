import { computed, type ReadonlySignal } from "@preact/signals";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import { sentenceOf } from "../api/apiProblem.ts";

/** Density of the chosen fluid, kg/m³; null where it has none, with the sentence that says why. */
export function densityOf(fluid: ReadonlySignal<FluidState>) {
  return computed(() => {
    try {
      return { value: fluidProperties(fluid.value).density, problem: "" };
    } catch (thrown) {
      return { value: null, problem: sentenceOf(thrown) };
    }
  });
}

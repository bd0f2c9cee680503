import { computed, signal } from "@preact/signals";
import { fluidProperties } from "../../../shared/fluid/fluidProperties.ts";
import type { FluidState } from "../../../shared/model/fluid.ts";
import { densityOf } from "../../app/densityOf.ts";
import { project, runs } from "../../app/session.ts";

/** Water that a person chose on this screen; null: that of the bench. */
export const chosenFluid = signal<FluidState | null>(null);

export const fluid = computed(
  (): FluidState => chosenFluid.value ?? runs.value[0]?.document.recipe.fluid ?? project.value!.document.water,
);

const density = densityOf(fluid);
export const fluidDensity = computed(() => density.value.value);
export const fluidProblem = computed(() => density.value.problem);

/** Everything blade elements need of the water; null while the water chosen has no properties. */
export const fluidPropertiesOfBench = computed(() =>
  density.value.value === null ? null : fluidProperties(fluid.value),
);

import { computed, signal } from "@preact/signals";
import type { PrintedMaterial } from "../../../../shared/model/bladeStrength.ts";
import { PRINTED_MATERIALS } from "../../../../shared/propeller/strength/printedMaterials.data.ts";
import { formatQuantity } from "../../../../shared/quantity/format.ts";
import { parts } from "../../../app/session.ts";
import { RPM } from "../../bench/shownUnits.ts";
import { subject } from "../subject.ts";
import { SMOOTH, type SurfaceChoice } from "../surface/surfaceChoice.ts";
import { fluidPropertiesOfBench } from "../theoryFluid.ts";
import { type BladeRun, bladeTold, polarOf, strengthTold } from "./bladeModel.ts";

const chosenPropeller = signal<string | null>(null);
const chosenRate = signal<number | null>(null);
export const advanceSpeed = signal(0);
export const surface = signal<SurfaceChoice>(SMOOTH);
/** A polar as pasted; empty: the section model. */
export const polarText = signal("");
export const polar = computed(() => polarOf(polarText.value));
export const material = signal<PrintedMaterial>(PRINTED_MATERIALS[0]!);
/** Load over the predicted one: what uneven inflow and a snagged line add. */
export const loadFactor = signal(1);

/** Propellers whose blade shape is known. */
export const shaped = computed(() => parts.value.propellers.filter(({ document }) => document.geometry !== undefined));
export const propeller = computed(
  () => shaped.value.find(({ id }) => id === chosenPropeller.value) ?? shaped.value[0] ?? null,
);
export const rotationRate = computed(() => chosenRate.value ?? subject.value?.topRate ?? 50);

export function choosePropeller(id: string): void {
  chosenPropeller.value = id;
}
export function chooseRate(rate: number): void {
  chosenRate.value = rate;
}

export const run = computed((): BladeRun | null => {
  const geometry = propeller.value?.document.geometry;
  const fluid = fluidPropertiesOfBench.value;
  const { roughness, liftFactor } = surface.value;
  if (geometry === undefined || fluid === null || roughness === null || liftFactor === null) return null;
  return {
    geometry,
    fluid,
    surface: { roughness, liftFactor, dragFactor: 1 },
    rotationRate: rotationRate.value,
    advanceSpeed: advanceSpeed.value,
    ...("polars" in polar.value && polar.value.polars !== null ? { polars: polar.value.polars } : {}),
  };
});

/** What the card is about, in a phrase. */
export const bladeNote = computed(() =>
  propeller.value === null
    ? "no blade shape yet"
    : `${propeller.value.document.name}, ${formatQuantity(rotationRate.value, RPM)}`,
);

export const told = computed(() => (run.value === null ? null : bladeTold(run.value)));
export const strength = computed(() =>
  run.value === null ? null : strengthTold(run.value, material.value, loadFactor.value),
);

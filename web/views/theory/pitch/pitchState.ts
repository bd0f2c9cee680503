import { computed, signal } from "@preact/signals";
import type { BestPitch, BestPitchRequest } from "../../../../shared/model/bestPitch.ts";
import type { SeriesWithoutPitch } from "../../../../shared/model/seriesPropeller.ts";
import { bestPitch } from "../../../../shared/propeller/series/bestPitch.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { EXAMPLE_DIAMETER } from "../exampleDisc.ts";
import { draftLike } from "../predictions/predictionDraft.ts";
import { startingPropeller } from "../predictions/startingPropeller.ts";
import { fluidPropertiesOfBench } from "../theoryFluid.ts";
import { pitchSentence } from "./pitchModel.ts";

export const duty = signal<BestPitchRequest["duty"]>({ given: "thrust", thrust: 20 });
/** What is settled: a diameter (m), a rotation rate (rev/s), or both; null: the diameter of the measured propeller. */
export const fixed = signal<BestPitchRequest["fixed"] | null>(null);
export const advanceSpeed = signal(0);
/** Null: the series screw most like the measured propeller. */
const chosenSeries = signal<SeriesWithoutPitch | null>(null);

const like = computed(() => draftLike(startingPropeller()));
/** The diameter in force is nobody's propeller. */
export const isExample = computed(() => fixed.value === null && like.value.diameter === null);
export const fixedNow = computed(
  (): BestPitchRequest["fixed"] =>
    fixed.value ?? { given: "diameter", diameter: like.value.diameter ?? EXAMPLE_DIAMETER },
);

/** The series as it stands in the form. */
export const series = computed((): SeriesWithoutPitch => chosenSeries.value ?? like.value.series);

export function chooseSeries(chosen: SeriesWithoutPitch): void {
  chosenSeries.value = chosen;
}

export const request = computed((): BestPitchRequest | null => {
  const water = fluidPropertiesOfBench.value;
  if (water === null) return null;
  return {
    series: series.value,
    duty: duty.value,
    fixed: fixedNow.value,
    advanceSpeed: advanceSpeed.value,
    density: water.density,
    kinematicViscosity: water.kinematicViscosity,
    outsideRange: false,
  };
});

/** The answer in a sentence, where there is one. */
export const pitchNote = computed(() =>
  "result" in found.value && request.value !== null
    ? `${isExample.value ? "An example, as no propeller is known yet: " : ""}${pitchSentence(found.value.result, request.value)}`
    : "",
);

export const found = computed((): { readonly result: BestPitch } | { readonly problem: string } => {
  if (request.value === null) return { problem: "The water chosen has no properties." };
  try {
    return { result: bestPitch(request.value) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
});

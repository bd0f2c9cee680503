import { computed, signal } from "@preact/signals";
import type { Prediction } from "../../../../shared/model/prediction.ts";
import { predictorOf } from "../../../../shared/propeller/prediction/predictorOf.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { editProject } from "../../../app/edits.ts";
import { partOf, project } from "../../../app/session.ts";
import { groups } from "../../variants/variantsState.ts";
import { fluidPropertiesOfBench } from "../theoryFluid.ts";
import type { ShownPrediction } from "./shownPrediction.ts";

/** Names of the predictions taken out of the pictures for now. */
const hidden = signal<ReadonlySet<string>>(new Set());

export const predictions = computed((): readonly Prediction[] => project.value?.document.predictions ?? []);

export function isShown(name: string): boolean {
  return !hidden.value.has(name);
}

export function show(name: string, shown: boolean): void {
  const others = [...hidden.value].filter((one) => one !== name);
  hidden.value = new Set(shown ? others : [...others, name]);
}

/** Styles of the measured variants come first; a prediction keeps its own while variants come and go. */
const FIRST_STYLE = 3;

/** Every prediction as the pictures need it, computed here as the server and the command line would. */
export const allPredictions = computed((): ShownPrediction[] => {
  const fluid = fluidPropertiesOfBench.value;
  const taken = new Set(groups.value.map(({ style }) => style));
  let style = FIRST_STYLE - 1;
  return predictions.value.map((prediction) => {
    do style++;
    while (taken.has(style));
    return { prediction, style, ...resolved(prediction, fluid) };
  });
});

export const shownPredictions = computed(() =>
  allPredictions.value.filter(({ prediction }) => !hidden.value.has(prediction.name)),
);

function resolved(
  { source }: Prediction,
  fluid: typeof fluidPropertiesOfBench.value,
): Pick<ShownPrediction, "predictor" | "problem"> {
  if (source.kind === "staticMerit") return { predictor: null, problem: "" };
  if (fluid === null) return { predictor: null, problem: "The water chosen has no properties." };
  try {
    const geometry = source.kind === "blades" ? partOf("propellers", source.propellerId)?.document.geometry : undefined;
    return { predictor: predictorOf(source, { geometry, fluid }), problem: "" };
  } catch (thrown) {
    return { predictor: null, problem: sentenceOf(thrown) };
  }
}

export function addPrediction(prediction: Prediction): Promise<boolean> {
  return editProject(`Added the prediction ${prediction.name}`, (document) => ({
    ...document,
    predictions: [...(document.predictions ?? []), prediction],
  }));
}

export function changePrediction(name: string, prediction: Prediction): Promise<boolean> {
  return editProject(`Changed the prediction ${prediction.name}`, (document) => ({
    ...document,
    predictions: (document.predictions ?? []).map((one) => (one.name === name ? prediction : one)),
  }));
}

export function removePrediction(name: string): Promise<boolean> {
  return editProject(`Removed the prediction ${name}`, (document) => ({
    ...document,
    predictions: (document.predictions ?? []).filter((one) => one.name !== name),
  }));
}

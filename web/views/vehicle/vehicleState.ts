import { computed, effect, signal } from "@preact/signals";
import type { Scenario } from "../../../shared/model/vehicle/scenario.ts";
import type { Vehicle } from "../../../shared/model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../../../shared/model/vehicle/vehicleAnswer.ts";
import { vehicleAnswer } from "../../../shared/vehicle/vehicleAnswer.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { parts } from "../../app/session.ts";
import { allAssembled, chosenPlace, editBuild, vehicle } from "./build/buildState.ts";

/** Packs to choose from for the mission. */
const packs = computed(() => parts.value.packs.map(({ document }) => document));

/** What the sliders changed for now; kept in the build only when the builder says so. */
export const scenarioChange = signal<Partial<Scenario>>({});

// The sliders of one vehicle mean nothing for another.
effect(() => {
  void chosenPlace.value;
  scenarioChange.value = {};
});

export const shownVehicle = computed((): Vehicle | null => {
  const whole = vehicle.value;
  return whole === null ? null : { ...whole, scenario: { ...whole.scenario, ...scenarioChange.value } };
});

export const hasScenarioChange = computed(() => Object.keys(scenarioChange.value).length > 0);

export async function keepScenario(): Promise<void> {
  const change = scenarioChange.value;
  const kept = await editBuild((build) => ({ ...build, scenario: { ...build.scenario, ...change } }), "scenario");
  if (kept) scenarioChange.value = {};
}

export type Answered =
  | { readonly state: "none" }
  | { readonly state: "answered"; readonly of: Vehicle; readonly answer: VehicleAnswer }
  | { readonly state: "refused"; readonly why: string };

/** The answer of the vehicle on show; that of a moment ago while a new one is worked out. */
export const answered = signal<Answered>({ state: "none" });
export const isBehind = computed(() => answered.value.state === "answered" && answered.value.of !== shownVehicle.value);

/** A slider moves many times a second, and an answer takes longer than one of its steps. */
const PAUSE_MS = 60;
let timer: ReturnType<typeof setTimeout> | undefined;

effect(() => {
  const asked = shownVehicle.value;
  clearTimeout(timer);
  if (asked === null) {
    answered.value = { state: "none" };
    return;
  }
  timer = setTimeout(() => {
    answered.value = answerOf(asked);
  }, PAUSE_MS);
});

const remembered = new WeakMap<Vehicle, Answered>();

/** The same vehicle is answered once. */
function answerOf(asked: Vehicle): Answered {
  const known = remembered.get(asked);
  if (known) return known;
  const answer = freshAnswer(asked);
  remembered.set(asked, answer);
  return answer;
}

function freshAnswer(asked: Vehicle): Answered {
  try {
    return { state: "answered", of: asked, answer: vehicleAnswer(asked, null, packs.value) };
  } catch (thrown) {
    return { state: "refused", why: sentenceOf(thrown) };
  }
}

/** All vehicles of the project with their answers, for the table beside each other; made only where it is looked at. */
export const besideEachOther = computed(() =>
  allAssembled.value.map(({ build, ...made }) => ({
    name: build.name,
    answered: "vehicle" in made ? answerOf(made.vehicle) : ({ state: "none" } as const),
  })),
);

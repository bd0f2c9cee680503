import { computed, effect, signal } from "@preact/signals";
import type { Scenario } from "../../../shared/model/vehicle/scenario.ts";
import type { Vehicle } from "../../../shared/model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../../../shared/model/vehicle/vehicleAnswer.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { computeVehicle } from "../../api/vehicles.ts";
import { isReducing } from "../../app/reductions.ts";
import { noteChoice, route } from "../../app/route.ts";
import { wantedSection } from "../../app/sections.ts";
import { parts } from "../../app/session.ts";
import { gapText } from "./build/buildModel.ts";
import { allAssembled, chooseBuild, chosenPlace, editBuild, vehicle } from "./build/buildState.ts";

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

const NONE: Answered = { state: "none" };

/** The answer of the vehicle on show; that of a moment ago while a new one is worked out. */
export const answered = signal<Answered>(NONE);
export const isBehind = computed(
  () =>
    shownVehicle.value !== null && !(answered.value.state === "answered" && answered.value.of === shownVehicle.value),
);

/** A slider moves many times a second, and an answer takes longer than one of its steps. */
const PAUSE_MS = 80;
/** While runs are still read, each that arrives can change the propellers: one answer serves for many of them. */
const READING_PAUSE_MS = 1500;

// The workbench works it out in a thread, so that the page stays at hand; what is no longer wanted is stopped.
effect(() => {
  const asked = shownVehicle.value;
  if (asked === null) {
    answered.value = NONE;
    return;
  }
  const stop = new AbortController();
  const timer = setTimeout(
    async () => {
      const answer = await answerOf(asked, stop.signal);
      if (!stop.signal.aborted) answered.value = answer;
    },
    isReducing.value ? READING_PAUSE_MS : PAUSE_MS,
  );
  return () => {
    clearTimeout(timer);
    stop.abort();
  };
});

const remembered = new WeakMap<Vehicle, Answered>();

/** The same vehicle is asked for once. */
async function answerOf(vehicle: Vehicle, signal: AbortSignal): Promise<Answered> {
  const known = remembered.get(vehicle);
  if (known) return known;
  const answer = await freshAnswer(vehicle, signal);
  if (!signal.aborted) remembered.set(vehicle, answer);
  return answer;
}

async function freshAnswer(vehicle: Vehicle, signal: AbortSignal): Promise<Answered> {
  try {
    const packs = parts.value.packs.map(({ document }) => document);
    return { state: "answered", of: vehicle, answer: await computeVehicle({ vehicle, packs }, signal) };
  } catch (thrown) {
    return { state: "refused", why: sentenceOf(thrown) };
  }
}

export interface Beside {
  readonly name: string;
  readonly answered: Answered;
  /** What is missing for an answer, whole sentences; empty where nothing is. */
  readonly gap: string;
}

/** All vehicles of the project with their answers, as far as they have come; asked for by `lookBesides`. */
export const besideEachOther = signal<readonly Beside[]>([]);

/** Some vehicle of the project that can be answered has no answer yet. */
export const isAnswering = computed(() => {
  const all = allAssembled.value;
  const told = besideEachOther.value;
  return all.some((made, at) => "vehicle" in made && (told[at]?.answered.state ?? "none") === "none");
});

/** Works out every vehicle of the project for as long as something shows them. The returned function stops it. */
export function lookBesides(): () => void {
  const stop = new AbortController();
  const end = effect(() => {
    const all = allAssembled.value;
    besideEachOther.value = all.map(asKnown);
    // Each run that arrives would ask for every vehicle again.
    if (!isReducing.value) void answerAll(all, stop.signal);
  });
  return () => {
    end();
    stop.abort();
  };
}

/** What is known of a vehicle without asking. While runs are still read, a propeller that is missing may yet come. */
function asKnown({ build, ...made }: (typeof allAssembled.value)[number]): Beside {
  return {
    name: build.name,
    answered: "vehicle" in made ? (remembered.get(made.vehicle) ?? NONE) : NONE,
    gap: "problems" in made && !isReducing.value ? gapText(made.problems) : "",
  };
}

async function answerAll(all: typeof allAssembled.value, signal: AbortSignal): Promise<void> {
  for (const [at, made] of all.entries()) {
    if (signal.aborted || all !== allAssembled.peek()) return;
    if (!("vehicle" in made)) continue;
    const answer = await answerOf(made.vehicle, signal);
    if (signal.aborted || all !== allAssembled.peek()) return;
    besideEachOther.value = besideEachOther.peek().with(at, { name: made.build.name, answered: answer, gap: "" });
  }
}

/** Shows the vehicle and the section that the address asks for, once: from there on a person goes on as they like. */
export function followAddress(): void {
  const { choices } = route.value;
  const [place, section] = [choices.get("vehicle"), choices.get("section")];
  if (place !== null) {
    chooseBuild(Number(place) || 0);
    noteChoice("vehicle", null);
  }
  if (section !== null) {
    wantedSection.value = { id: section };
    noteChoice("section", null);
  }
}

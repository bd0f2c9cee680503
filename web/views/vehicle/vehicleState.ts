import { computed, effect, signal } from "@preact/signals";
import type { Scenario } from "../../../shared/model/vehicle/scenario.ts";
import type { Vehicle } from "../../../shared/model/vehicle/vehicle.ts";
import { isReducing } from "../../app/reductions.ts";
import { noteChoice, route } from "../../app/route.ts";
import { wantedSection } from "../../app/sections.ts";
import { chooseBuild, chosenPlace, editBuild, vehicle } from "./build/buildState.ts";
import { type Answered, answerOf, knownAnswer, NONE } from "./vehicleAnswers.ts";

/** What the sliders changed for now; kept in the build only when the builder says so. */
export const scenarioChange = signal<Partial<Scenario>>({});

export const hasScenarioChange = computed(() => Object.keys(scenarioChange.value).length > 0);

export const shownVehicle = computed((): Vehicle | null => {
  const whole = vehicle.value;
  // As it is kept it stays one object, so that its answer is known wherever it was asked for.
  if (whole === null || !hasScenarioChange.value) return whole;
  return { ...whole, scenario: { ...whole.scenario, ...scenarioChange.value } };
});

export async function keepScenario(): Promise<void> {
  const change = scenarioChange.value;
  const kept = await editBuild((build) => ({ ...build, scenario: { ...build.scenario, ...change } }), "scenario");
  if (kept) scenarioChange.value = {};
}

/** The answer of the vehicle on show; that of a moment ago while a new one is worked out. */
export const answered = signal<Answered>(NONE);
/** What is shown is not of the vehicle as it is now. */
export const isBehind = computed(() => {
  const [wanted, now] = [shownVehicle.value, answered.value];
  return wanted !== null && (now.state === "none" || now.of !== wanted);
});

// The sliders of one vehicle mean nothing for another, nor do its numbers.
effect(() => {
  void chosenPlace.value;
  scenarioChange.value = {};
  answered.value = NONE;
});

/** A slider moves many times a second, and an answer takes longer than one of its steps. */
const PAUSE_MS = 80;
/** While runs are still read, each that arrives can change the propellers: one answer serves for many of them. */
const READING_PAUSE_MS = 1500;

const isOnScreen = computed(() => route.value.screen === "vehicle");

// The workbench works it out in a thread, so that the page stays at hand; what is no longer wanted is stopped.
effect(() => {
  const asked = shownVehicle.value;
  if (asked === null) {
    answered.value = NONE;
    return;
  }
  // Elsewhere a vehicle is worked out only when it is looked at: an edit on the bench changes its propellers too.
  if (!isOnScreen.value) return;
  const known = knownAnswer(asked);
  if (known) {
    answered.value = known;
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

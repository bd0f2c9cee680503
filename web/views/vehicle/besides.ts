import { computed, effect, signal } from "@preact/signals";
import { isReducing } from "../../app/reductions.ts";
import { gapText } from "./build/buildModel.ts";
import { allAssembled } from "./build/buildState.ts";
import { type Answered, answerOf, knownAnswer, NONE } from "./vehicleAnswers.ts";

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
    answered: "vehicle" in made ? (knownAnswer(made.vehicle) ?? NONE) : NONE,
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

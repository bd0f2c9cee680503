import { signal } from "@preact/signals";
import type { SeriesWithoutPitch } from "../../../../shared/model/seriesPropeller.ts";
import type { PropellerDesigns } from "../../../../shared/model/shortlistDesign.ts";
import { designPropellers } from "../../../api/shortlists.ts";
import { openProjectId } from "../../../app/session.ts";
import { box, requirement } from "../shortlistState.ts";

export const series = signal<SeriesWithoutPitch>({ family: "wageningen-b", blades: 3, areaRatio: 0.5 });
export const aim = signal<"thrustPerPower" | "greatestThrust">("thrustPerPower");

type Designing =
  | { readonly state: "idle" }
  | { readonly state: "running"; readonly fraction: number }
  | { readonly state: "done"; readonly designs: PropellerDesigns }
  | { readonly state: "failed"; readonly why: string };

export const designing = signal<Designing>({ state: "idle" });
let stop: (() => void) | null = null;

export function startDesign(): void {
  designing.value = { state: "running", fraction: 0 };
  const { propellers: _unused, scaleTo: _sizes, series: _tried, ...rest } = box.value;
  const asked = { requirement: requirement.value, box: rest, series: [series.value], aim: aim.value };
  stop = designPropellers(openProjectId(), asked, {
    progress: (fraction) => {
      designing.value = { state: "running", fraction };
    },
    outcome: (designs) => {
      designing.value = { state: "done", designs };
    },
    problem: (problem) => {
      designing.value = { state: "failed", why: problem.message };
    },
  });
}

export function cancelDesign(): void {
  stop?.();
  designing.value = { state: "idle" };
}

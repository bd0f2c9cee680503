import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import { notesOf } from "../../app/notes.ts";
import type { Section } from "../../app/sections.ts";

/** The sections of the bench in the order they stand in: what is missing, picture, what is wrong, coefficients, then the rest. */
export function benchSections(run: Run, reduction: Reduction | null): Section[] {
  const missing = run.purpose === "propeller" && run.propellerId === undefined;
  const columns = { id: "bench-columns", label: run.confirmed ? "Columns" : "Columns to confirm" };
  return [
    ...(missing ? [{ id: "bench-needed", label: "Needed first" }] : []),
    ...(run.confirmed ? [] : [columns]),
    { id: "bench-picture", label: "Log over time" },
    ...(reduction === null ? [] : sectionsOfResult(reduction)),
    ...(run.confirmed ? [columns] : []),
    { id: "bench-setup", label: "On the stand" },
    { id: "bench-companion", label: "Electrical log" },
  ];
}

function sectionsOfResult(reduction: Reduction): Section[] {
  const { advance, budget } = reduction;
  return [
    ...(notesOf(reduction).length === 0 ? [] : [{ id: "bench-warnings", label: "What to know" }]),
    ...(advance === null ? [] : [{ id: "bench-advance", label: "At speed" }]),
    { id: "bench-coefficients", label: "Coefficients" },
    { id: "bench-quality", label: "Can it be trusted?" },
    ...(advance === null ? [{ id: "bench-fit", label: "Fit" }] : []),
    ...(budget === undefined ? [] : [{ id: "bench-doubt", label: "Doubt" }]),
    { id: "bench-plateaus", label: "Plateaus" },
    { id: "bench-tare", label: "Zero of the scale" },
  ];
}

import { type FinishedRun, finishOfRuns } from "../../shared/compare/finishOfRuns.ts";
import { DescribedBlade, type FinishFit } from "../../shared/model/finishFit.ts";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { checked } from "./checked.ts";
import type { Option, Words } from "./options.ts";

/** Options that describe the blades, for what a finish does to their sections. */
export const BLADE_OPTIONS = {
  blades: { value: "COUNT", text: "number of blades; with --pitch-ratio and --chord: drag of the blade sections" },
  "pitch-ratio": { value: "NUMBER", text: "pitch ratio at 0.7 of the radius" },
  chord: { value: "QUANTITY", text: "chord of a blade at 0.7 of the radius" },
} as const satisfies Record<string, Option>;

/** What the finishes do to the blade sections; null where the blades are not described. */
export function finishOf(words: Words, runs: readonly [FinishedRun, FinishedRun], claimed?: number): FinishFit | null {
  const names = Object.keys(BLADE_OPTIONS);
  if (!names.some((name) => words.has(name))) return null;
  const outline = {
    diameter: words.required("diameter", "length").value,
    bladeCount: words.required("blades", "number").value,
    pitchRatio: words.required("pitch-ratio", "number").value,
    chordAt07: words.required("chord", "length").value,
  };
  const blade = checked(DescribedBlade, { given: "outline", outline }, (field) => OPTION_OF[field]);
  return finishFit(finishOfRuns(blade, runs, claimed));
}

const OPTION_OF: Readonly<Record<string, string>> = {
  "outline.diameter": "diameter",
  "outline.bladeCount": "blades",
  "outline.pitchRatio": "pitch-ratio",
  "outline.chordAt07": "chord",
};

export const finishLines = ({ sentence, warnings }: FinishFit): string[] => [
  "",
  sentence,
  ...warnings.map(({ message }) => `Note: ${message}`),
];

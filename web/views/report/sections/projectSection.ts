import { describeFluid } from "../../../../shared/fluid/parseFluid.ts";
import { list, type ReportBlock, text } from "../reportBlocks.ts";
import type { ReportInput } from "../reportInput.ts";

/** What the project is, and what it holds. */
export function projectSection({ project, overview }: ReportInput): ReportBlock[] {
  return [
    ...(project.invented
      ? [text("Invented demonstration data. Nobody measured these numbers; they show what the workbench does.", true)]
      : []),
    ...(project.note === "" ? [] : [text(project.note)]),
    ...list([`The vehicle works in ${describeFluid(project.water)}.`, overview.holds]),
  ];
}

/** The answer of each screen that has one, as its sentence. */
export function answersSection(input: ReportInput): ReportBlock[] {
  const { overview, variants, theory, drive, shortlist, vehicles } = input;
  const told: readonly (readonly [string, string])[] = [
    ["What was measured", overview.answer],
    ["Variants", variants.answer === overview.answer ? "" : variants.answer],
    ["Theory", theory.answer],
    ["Drive", drive.answer],
    ["Shortlist", shortlist?.result.answer ?? ""],
    ...vehicles.map(
      ({ name, answered }) => [name, answered.state === "answered" ? answered.answer.sentence : ""] as const,
    ),
  ];
  return list(told.flatMap(([name, answer]) => (answer === "" ? [] : [`${name}: ${answer}`])));
}

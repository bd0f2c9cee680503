import { CAUTIONS, WHO_DECIDES } from "../../../app/cautionWords.ts";
import { joined } from "../../../app/words.ts";
import { heading, list, once, type ReportBlock, table, text } from "../reportBlocks.ts";
import type { ReportInput } from "../reportInput.ts";
import { reduceCommand } from "./reduceCommand.ts";
import { vehicleGrounds } from "./vehicleSection.ts";

const MADE = [
  "± is the half-width of a 95\u202f% interval; a range in brackets is the interval itself. The best estimate stands before it.",
  "Measured coefficients: readings of each plateau with their scatter and autocorrelation, resolution, tare, calibration and diameter, combined to first order (JCGM 100:2008, Guide to the expression of uncertainty in measurement), with Student's t for few readings.",
  "Variants: the spread between mountings where there are several, else the scatter inside the run, which leaves out what re-mounting changes.",
  "Computed answers: to first order from the uncertainty that parts and coefficients state. A number without ± is exact, rests on inputs that state no uncertainty, or is one of these, for which none is worked out: limits and where they are reached, powers of single losses, the numbers of a shortlist and of a table for a controller.",
];

/** What is taken for granted, and how the uncertainty was made. */
export function trustSection(input: ReportInput): ReportBlock[] {
  return [...list(MADE), ...vehicleGrounds(input)];
}

/** The cautions of the bench, of motors and of the drive, each once. */
export function cautionsSection({ shortlist }: ReportInput): ReportBlock[] {
  return list(
    once([...CAUTIONS.bench, ...CAUTIONS.motor, ...CAUTIONS.drive, ...(shortlist?.result.cautions ?? []), WHO_DECIDES]),
  );
}

/** Program, time and the bytes that everything rests on. */
export function provenanceSection({ program, madeAt, runs }: ReportInput): ReportBlock[] {
  const files = runs.flatMap(({ document: { name, file, companion } }) => [
    [name, file.name, `${file.size}`, file.sha256],
    ...(companion
      ? [[`${name}, second log`, companion.file.name, `${companion.file.size}`, companion.file.sha256]]
      : []),
  ]);
  return [
    text(`Made by ${program} on ${madeAt}.`),
    ...table({ label: "Files, byte for byte as they came", heads: ["Run", "File", "Bytes", "SHA-256"], rows: files }),
  ];
}

const CLI = "npm run --silent cli --";

/** The commands that bring these numbers again. */
export function reproduceSection(input: ReportInput): ReportBlock[] {
  const { runs } = input;
  const reduced = runs
    .filter(({ document }) => document.purpose === "propeller")
    .map(({ document }) => ({ name: document.name, ...reduceCommand(input.parts, document) }));
  return [
    text("Save the project as one file; it holds every log and every decision. With it, on any computer:"),
    { kind: "commands", lines: ["npm start", `${CLI} bundle open "${fileName(input)}"`] },
    text(
      "All screens then show these numbers again, and this report can be made again. A single log is reduced by itself as below. What no option of the command states is named under the commands: there numbers and intervals that rest on it differ.",
    ),
    ...(reduced.length === 0
      ? []
      : [
          heading("Single logs"),
          { kind: "commands", lines: reduced.map(({ words }) => `${CLI} ${words}`) } as const,
          ...list(
            reduced.flatMap(({ name, unstated }) =>
              unstated.length === 0 ? [] : [`${name}: no option states ${joined(unstated)}.`],
            ),
          ),
        ]),
  ];
}

const fileName = ({ project }: ReportInput) => `${project.name.replaceAll(/["/\\:*?<>|$`]/g, "_")}.zip`;

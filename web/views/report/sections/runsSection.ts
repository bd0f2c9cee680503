import { qualitySentence } from "../../../../shared/bench/quality/qualitySentence.ts";
import { describeFluid } from "../../../../shared/fluid/parseFluid.ts";
import type { Run } from "../../../../shared/model/run.ts";
import type { StoredDocument } from "../../../../shared/model/stored.ts";
import { formatUncertain } from "../../../../shared/quantity/format.ts";
import { type Uncertain, uncertain } from "../../../../shared/quantity/uncertain.ts";
import { notesOf } from "../../../app/notes.ts";
import { plainMessage } from "../../../app/plainMessage.ts";
import { MILLIMETRE } from "../../bench/shownUnits.ts";
import { instrumentRows } from "../../instruments/instrumentsModel.ts";
import { heading, list, once, type ReportBlock, table, text } from "../reportBlocks.ts";
import type { ReportInput } from "../reportInput.ts";
import { recipeWords } from "./recipeWords.ts";

const coefficient = (value: Uncertain | null | undefined) => (value ? formatUncertain(value) : "not known");

/** Every run: its coefficients, its file, how it was read, and what its instruments are worth. */
export function runsSection(input: ReportInput): ReportBlock[] {
  const { runs, reductionOf } = input;
  if (runs.length === 0) return [text("No run is in the project.")];
  const measured = runs.filter(({ document }) => document.purpose === "propeller");
  return [
    ...table({
      label: "Coefficients of every run, with 95 % intervals",
      heads: [
        "Run",
        "Variant",
        "Propeller",
        "Fluid",
        "Thrust coefficient K_T",
        "Power coefficient C_P",
        "Static merit FM",
      ],
      rows: measured.map(({ id, document }) => {
        const reduction = reductionOf(id)?.reduction;
        return [
          document.name,
          document.variant || "–",
          propellerText(input, document),
          fluidText(document),
          reduction
            ? coefficient(reduction.thrustCoefficient)
            : (reductionOf(id)?.problem?.message ?? "not worked out"),
          reduction ? coefficient(reduction.powerCoefficient) : "–",
          reduction ? coefficient(reduction.staticMerit) : "–",
        ];
      }),
    }),
    heading("How each log is read"),
    ...runs.flatMap((run) => recipeBlocks(run)),
    ...instrumentBlocks(input),
  ];
}

const fluidText = ({ recipe: { fluid, fluidAssumed } }: Run) =>
  `${describeFluid(fluid)}${fluidAssumed ? ", which nobody stated" : ""}`;

function propellerText({ parts }: ReportInput, { propellerId }: Run): string {
  const propeller = parts.propellers.find(({ id }) => id === propellerId)?.document;
  if (propeller === undefined) return "not stated";
  const { name, diameter, diameterUncertainty } = propeller;
  return `${name}, ${formatUncertain(uncertain(diameter, diameterUncertainty), MILLIMETRE)}`;
}

function recipeBlocks({ document }: StoredDocument<Run>): ReportBlock[] {
  const day = document.day === undefined ? "" : `, ${document.day}`;
  const agreed = document.confirmed ? "" : " Nobody has looked at its columns and agreed yet.";
  return [
    text(`${document.name}${day}, in ${fluidText(document)}.${agreed}`, true),
    ...list([...recipeWords(document), ...(document.note === "" ? [] : [document.note])]),
  ];
}

function instrumentBlocks({ parts, runs }: ReportInput): ReportBlock[] {
  const rows = instrumentRows(parts.instruments, runs);
  if (rows.length === 0) return [];
  return [
    heading("Instruments and their calibrations"),
    ...table({
      label: "Instruments",
      heads: ["Instrument", "Channel", "Calibrated by", "What it is worth", "Used in"],
      rows: rows.map(({ name, channel, method, look, use }) => [name, channel, method, look.sentence, use || "no run"]),
    }),
    ...list(rows.flatMap(({ name, look }) => look.warnings.map(({ message }) => `${name}: ${message}`))),
  ];
}

/** The checks of every run, and what to know of it beside them. */
export function qualitySection({ runs, reductionOf }: ReportInput): ReportBlock[] {
  const told = runs.flatMap(({ id, document: { name } }) => {
    const reduction = reductionOf(id)?.reduction;
    return reduction ? [{ name, reduction }] : [];
  });
  if (told.length === 0) return [text("No run has been reduced.")];
  return told.flatMap(({ name, reduction }) => [
    text(`${name}: ${qualitySentence(reduction.quality)}`, true),
    ...list(
      once([
        ...reduction.quality
          .filter(({ verdict }) => verdict === "flag")
          .map(({ name: check, sentence, mend }) => `${check}: ${sentence} ${mend}`.trim()),
        ...notesOf(reduction).map(plainMessage),
      ]),
    ),
  ]);
}

import { describeFluid } from "../../../../shared/fluid/parseFluid.ts";
import type { Run } from "../../../../shared/model/run.ts";
import { RPM_PER_VOLT } from "../../../../shared/motor/identifySentence.ts";
import { CAUTIONS, WHO_DECIDES } from "../../../app/cautionWords.ts";
import { heading, list, once, type ReportBlock, table, text } from "../reportBlocks.ts";
import type { ReportInput } from "../reportInput.ts";
import { vehicleGrounds } from "./vehicleSection.ts";

const MADE = [
  "± is the half-width of a 95\u202f% interval; a range in brackets is the interval itself. The best estimate stands before it.",
  "Measured coefficients: readings of each plateau with their scatter and autocorrelation, resolution, tare, calibration and diameter, combined to first order (JCGM 100:2008, Guide to the expression of uncertainty in measurement), with Student's t for few readings.",
  "Variants: the spread between mountings where there are several, else the scatter inside the run, which leaves out what re-mounting changes.",
  "Computed answers: to first order from the uncertainty that parts and coefficients state. A number without ± rests on inputs that state none, or is exact.",
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
  const reduced = runs.filter(({ document }) => document.purpose === "propeller");
  return [
    text("Save the project as one file; it holds every log and every decision. With it, on any computer:"),
    { kind: "commands", lines: ["npm start", `${CLI} bundle open "${fileName(input)}"`] },
    text(
      "All screens then show these numbers again, and this report can be made again. A single log is reduced by itself as below; corrections, calibrations and spans set by hand, which are listed with each run, are given by further options (--help).",
    ),
    ...(reduced.length === 0
      ? []
      : [
          heading("Single logs"),
          { kind: "commands", lines: reduced.map(({ document }) => reduceCommand(input, document)) } as const,
        ]),
  ];
}

const fileName = ({ project }: ReportInput) => `${project.name.replaceAll(/["/\\:*?<>|$`]/g, "_")}.zip`;

function reduceCommand({ parts }: ReportInput, { propellerId, recipe, file }: Run): string {
  const propeller = parts.propellers.find(({ id }) => id === propellerId)?.document;
  const diameter =
    propeller === undefined
      ? "DIAMETER"
      : `"${millimetres(propeller.diameter)} mm ± ${millimetres(propeller.diameterUncertainty)} mm"`;
  // What nobody stated is not stated here either: the command takes the same and says so.
  const water = recipe.fluidAssumed ? "" : ` --water "${describeFluid(recipe.fluid).replaceAll("\u202f", " ")}"`;
  const poles = recipe.polePairs === undefined ? "" : ` --pole-pairs ${recipe.polePairs}`;
  return `${CLI} reduce "${file.name}" --diameter ${diameter}${water}${poles}${motorOptions(parts, recipe)}`;
}

/** Motor and controller on the stand: without them a log without torque gives no power coefficient. */
function motorOptions({ motors, controllers }: ReportInput["parts"], { motorId, controllerId }: Run["recipe"]): string {
  const motor = motors.find(({ id }) => id === motorId)?.document;
  const controller = controllers.find(({ id }) => id === controllerId)?.document;
  if (motor === undefined) return "";
  const words = [
    `--kv ${plain(motor.speedConstant / RPM_PER_VOLT.factor)}rpm/V --resistance ${plain(motor.resistance)}ohm --no-load-current ${plain(motor.noLoadCurrent)}A`,
    ...(controller === undefined ? [] : [`--controller-resistance ${plain(controller.resistance)}ohm`]),
  ];
  return ` ${words.join(" ")}`;
}

const plain = (value: number) => Number(value.toPrecision(6));
const millimetres = (metres: number) => plain(1000 * metres);

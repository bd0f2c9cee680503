import { writeFile } from "node:fs/promises";
import { controlTable } from "../../shared/drive/controlTable.ts";
import { controlTableCsv } from "../../shared/drive/controlTableCsv.ts";
import {
  type ControlBlock,
  type ControlEnd,
  type ControlTable,
  ControlTableRequest,
} from "../../shared/model/controlTable.ts";
import type { DriveTrain } from "../../shared/model/driveTrain.ts";
import type { DriveRunning } from "../../shared/model/driveTrainPoint.ts";
import { formatNumber } from "../../shared/quantity/format.ts";
import { parseQuantity } from "../../shared/quantity/parseQuantity.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { checked } from "./checked.ts";
import type { Words } from "./options.ts";

/** Options that mean something beside --control-table only, and such that mean nothing beside it. */
const BELONG = {
  with: ["voltages", "held-voltage"],
  without: ["throttle", "speed", "astern", "wanted-thrust"],
} as const;

/** Refuses options that would change nothing. */
export function requireTableOptions(words: Words): void {
  const isTable = words.has("control-table");
  const idle = BELONG[isTable ? "without" : "with"].find((name) => words.has(name));
  if (idle === undefined) return;
  throw new InputProblem({
    code: "cli.control-table-options",
    where: `--${idle}`,
    found: `--${idle} means nothing ${isTable ? "beside" : "without"} --control-table`,
    needed: isTable ? "a table, which holds every throttle of both directions at rest" : "--control-table FILE.csv",
    mend: isTable ? "Leave it away, or ask for the point without the table" : "Name the file, or leave it away",
  });
}

/** Writes the control table of a drive train to a file, and tells its ends. */
export async function runTable(words: Words, train: DriveTrain, running: DriveRunning): Promise<number> {
  const voltages = voltagesOf(words.text("voltages"));
  const request = {
    train,
    ...(voltages && { voltages }),
    voltageKind: words.has("held-voltage") ? "bus" : "openCircuit",
    ...(running.asternEstimate && { asternEstimate: running.asternEstimate }),
  };
  const table = controlTable(checked(ControlTableRequest, request, () => "voltages"));
  const path = words.text("control-table")!;
  await writeFile(path, controlTableCsv(table)).catch((error: Error) => {
    throw notWritten(path, error);
  });
  process.stdout.write(words.has("json") ? `${JSON.stringify(table, null, 2)}\n` : readable(table, path));
  return 0;
}

function voltagesOf(text: string | undefined): number[] | undefined {
  return text?.split(/[,;]/).map((one) => parseQuantity(one, "voltage", { where: "--voltages" }));
}

function readable({ blocks, grounds, warnings }: ControlTable, path: string): string {
  const rows = blocks.reduce((sum, block) => sum + block.rows.length, 0);
  return [
    `${path}: ${rows} commands at ${blocks.length === 1 ? "one voltage" : `${blocks.length} voltages`}`,
    ...blocks.flatMap(endsOf),
    ...warnings.map(({ message }) => `Note: ${message}`),
    ...grounds.map(({ text }) => `Note: ${text}`),
    "Caution: propeller off, or the vehicle held in deep water, when a command is tried the first time.",
    "",
  ].join("\n");
}

function endsOf({ voltage, ahead, astern }: ControlBlock): string[] {
  const told = (name: string, { thrust, command, endedBy }: ControlEnd) =>
    `${`${formatNumber(voltage)} V ${name}`.padEnd(52)} ${formatNumber(thrust)} N at ${formatNumber(command, 4)} µs, ended by ${endedBy}`;
  return [told("ahead", ahead), ...(astern === null ? [] : [told("astern", astern)])];
}

function notWritten(path: string, { message }: Error): InputProblem {
  return new InputProblem({
    code: "cli.not-written",
    where: "--control-table",
    found: `${path} can not be written: ${message}`,
    needed: "a file in a folder that is there and may be written to",
    mend: "Check the path",
  });
}

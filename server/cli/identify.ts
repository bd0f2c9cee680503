import { basename } from "node:path";
import { electricalPlateaus } from "../../shared/bench/electricalPlateaus.ts";
import type { ElectricalRun } from "../../shared/model/electrical.ts";
import { type MotorIdentification, MotorIdentificationRequest } from "../../shared/model/motorIdentification.ts";
import type { RunPurpose } from "../../shared/model/run.ts";
import { identifyMotor } from "../../shared/motor/identifyMotor.ts";
import { likelyFullCommand, readingsFrom } from "../../shared/motor/identifyReadings.ts";
import { MILLIOHM, RPM_PER_VOLT } from "../../shared/motor/identifySentence.ts";
import { formatNumber, formatPercent, formatUncertain, type ShownUnit } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Uncertain } from "../../shared/quantity/uncertain.ts";
import { readLogFile } from "../intake/readLogFile.ts";
import { LOG_OPTIONS } from "./logOptions.ts";
import type { Options, Usage, Words } from "./options.ts";
import { statedReading } from "./readingOption.ts";
import { recipeOf } from "./statedRecipe.ts";

const { column, unit, factor, read } = LOG_OPTIONS;
const OPTIONS: Options = {
  dry: { value: "LOG", text: "a run without propeller, rotor in air", many: true },
  wet: { value: "LOG", text: "a run without propeller, rotor flooded", many: true },
  "full-command": {
    value: "NUMBER",
    text: "command of full throttle, unit of its column; else 100 for percent, or the highest that occurs (printed)",
  },
  "all-full": { text: "every reading was at full throttle (tables without a command column)" },
  resistance: { value: "QUANTITY", text: "winding resistance, if measured; ± its standard uncertainty" },
  "controller-resistance": { value: "QUANTITY", text: "controller resistance, taken off what is found" },
  "voltage-uncertainty": { value: "FRACTION", text: "relative standard uncertainty of the voltmeter, e.g. 0.3%" },
  "current-uncertainty": { value: "FRACTION", text: "relative standard uncertainty of the ammeter, e.g. 0.6%" },
  "pole-pairs": LOG_OPTIONS["pole-pairs"],
  "count-pole-pairs": {
    value: "ELECTRICAL=SHAFT",
    text: "electrical and tachometer speed of one steady point, in one unit, e.g. 31400=4486",
    many: true,
  },
  column,
  unit,
  factor,
  read,
  json: LOG_OPTIONS.json,
};

export const USAGE: Usage = {
  verb: "identify",
  arguments: "[LOG...]",
  about:
    "Constants of a motor from its logs: speed constant, winding resistance, no-load loss, loss of a flooded rotor and\nthrottle map, with uncertainty. Logs named without option are runs with a propeller; --dry and --wet are runs without.\nA motor without load can run away to high speed: clamp it, keep clear of the shaft, and stay below the maker's limits.\nRun it wet on low voltage only, mains equipment away from the water.",
  options: OPTIONS,
  examples: [
    "identify samples/logs/finish-sanded-1.csv --dry samples/logs/no-load-dry.csv --wet samples/logs/no-load-wet.csv",
    'identify --dry no-load.csv --resistance "0.12ohm ± 0.005ohm" --pole-pairs 7 --json',
  ],
};

export async function run(words: Words): Promise<number> {
  const runs = await runsOf(words);
  const fullCommand = fullOf(words, runs);
  const readings = readingsFrom(runs.map((one) => ({ ...one, fullCommand })));
  const found = identifyMotor(
    MotorIdentificationRequest.parse({
      ...readings,
      shared: [...readings.shared, ...metersOf(words)],
      controllerResistance: words.quantity("controller-resistance", "resistance")?.value ?? 0,
      stated: statedOf(words),
      polePairReadings: polePairReadings(words),
    }),
  );
  const whole = { ...found, fullCommand, runs: runs.map(({ run: one }) => one) };
  process.stdout.write(words.has("json") ? `${JSON.stringify(whole, null, 2)}\n` : readable(found, fullCommand, runs));
  return 0;
}

interface NamedRun {
  readonly name: string;
  readonly purpose: RunPurpose;
  readonly run: ElectricalRun;
}

async function runsOf(words: Words): Promise<NamedRun[]> {
  const logs: readonly (readonly [RunPurpose, string])[] = [
    ...words.all("dry").map((path) => ["noLoadDry", path] as const),
    ...words.all("wet").map((path) => ["noLoadWet", path] as const),
    ...words.rest.map((path) => ["propeller", path] as const),
  ];
  if (logs.length === 0 && !words.has("count-pole-pairs")) throw noLogs();
  const reading = statedReading(words);
  const runs: NamedRun[] = [];
  for (const [purpose, path] of logs) {
    const name = basename(path);
    const table = await readLogFile(path, name, { reading });
    runs.push({ name, purpose, run: electricalPlateaus({ table, recipe: recipeOf(table, words) }) });
  }
  return runs;
}

function fullOf(words: Words, runs: readonly NamedRun[]): number | null | "all" {
  if (words.has("all-full")) return "all";
  const text = words.text("full-command");
  if (text === undefined) return likelyFullCommand(runs.map(({ run: one }) => one));
  return numberOf(text, "--full-command");
}

function metersOf(words: Words) {
  return (["voltage", "current"] as const).flatMap((quantity) => {
    const relative = words.quantity(`${quantity}-uncertainty`, "fraction")?.value;
    return relative === undefined ? [] : [{ quantity, relative }];
  });
}

function statedOf(words: Words) {
  const resistance = words.quantity("resistance", "resistance");
  if (!resistance) return {};
  return { resistance: { value: resistance.value, standardUncertainty: resistance.standardUncertainty ?? 0 } };
}

function polePairReadings(words: Words) {
  return words.pairs("count-pole-pairs").map(([electrical, shaft]) => ({
    electrical: numberOf(electrical, "--count-pole-pairs"),
    shaft: numberOf(shaft, "--count-pole-pairs"),
  }));
}

function numberOf(text: string, where: string): number {
  const value = Number(text.replace(",", "."));
  if (text.trim() !== "" && Number.isFinite(value) && value > 0) return value;
  throw new InputProblem({
    code: "cli.not-a-number",
    where,
    found: `"${text}" is not a number above 0`,
    needed: "a plain number",
    mend: "For example --full-command 1900 or --count-pole-pairs 31400=4486",
  });
}

function noLogs(): InputProblem {
  return new InputProblem({
    code: "cli.no-log",
    where: "identify",
    found: "no log was named",
    needed: "at least one run of the motor",
    mend: "For example: identify loaded.csv --dry no-load.csv",
  });
}

const shown = (symbol: string, size = 1): ShownUnit => ({ symbol, factor: size });

/** The result as a page of text; ± is half the 95 % interval. */
function readable(found: MotorIdentification, fullCommand: number | null | "all", runs: readonly NamedRun[]): string {
  const { constants, wetLoss, flooded, polePairs, throttleMap } = found;
  const rows: [string, Uncertain | null | undefined, ShownUnit?][] = [
    ["Speed constant K_v", constants?.speedConstant, RPM_PER_VOLT],
    ["Torque constant K_t", constants?.torqueConstant, shown("N·m/A")],
    ["Winding resistance R_m", constants?.resistance, MILLIOHM],
    ["No-load current at rest", constants?.noLoadCurrent, shown("A")],
    ["Its growth a 1000 rpm", constants?.noLoadCurrentSlope, shown("A", (60 / (2 * Math.PI)) * 1e-3)],
    ["Flooded: extra power", wetLoss?.power, shown("W")],
    ["Flooded: exponent of torque on speed", wetLoss?.exponent],
    ["Flooded: no-load current at rest", flooded?.noLoadCurrent, shown("A")],
    ["Command at no duty", throttleMap?.commandAtZero],
    ["Command at full duty", throttleMap?.commandAtFull],
    ["Electrical turns a turn of the shaft", polePairs?.ratio],
  ];
  return [
    found.sentence,
    "",
    ...runs.map(
      ({ name, purpose, run: { plateaus } }) => `  ${name}: ${plateaus.length} plateaus, ${PURPOSES[purpose]}`,
    ),
    ...(runs.length > 0 ? [`  ${fullWords(fullCommand)}`, ""] : []),
    ...rows.flatMap(([name, value, unitShown]) =>
      value ? [`${name.padEnd(38)} ${formatUncertain(value, unitShown)}`] : [],
    ),
    ...(throttleMap ? [`${"Farthest from a straight map".padEnd(38)} ${formatPercent(throttleMap.linearity)}`] : []),
    "",
    ...found.warnings.map(({ message }) => `Note: ${message}`),
    "± is half the 95 % interval.",
    "",
  ].join("\n");
}

const PURPOSES: { readonly [P in RunPurpose]: string } = {
  propeller: "with a propeller",
  noLoadDry: "without propeller, dry",
  noLoadWet: "without propeller, flooded",
};

function fullWords(fullCommand: number | null | "all"): string {
  if (fullCommand === "all") return "every reading taken as full throttle";
  if (fullCommand === null) return "no command in the logs: no point counts as full throttle";
  return `full throttle taken to be at ${formatNumber(fullCommand, 4)} (--full-command says otherwise)`;
}

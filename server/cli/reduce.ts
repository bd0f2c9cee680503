import { sweepInWords } from "../../shared/bench/sweepInWords.ts";
import { tareInWords } from "../../shared/bench/tareInWords.ts";
import { ROLE_NAMES } from "../../shared/log/roleUnits.ts";
import type { MonteCarlo } from "../../shared/model/budget.ts";
import type { Plateau, Reduction } from "../../shared/model/reduction.ts";
import { formatNumber, formatUncertain, type ShownUnit } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Uncertain } from "../../shared/quantity/uncertain.ts";
import { advanceLines } from "./advanceLines.ts";
import { aligned } from "./aligned.ts";
import { assumedLine } from "./assumedLine.ts";
import { ELECTRICAL_LOG_OPTIONS, LOG_OPTIONS } from "./logOptions.ts";
import { MONTE_CARLO_OPTIONS, monteCarloLines } from "./monteCarloOption.ts";
import { noteLine } from "./optionHints.ts";
import type { Usage, Words } from "./options.ts";
import { qualityLines } from "./qualityLines.ts";
import { reduceLog } from "./reduceLog.ts";

export const USAGE: Usage = {
  verb: "reduce",
  arguments: "LOG",
  about:
    "Reads a thrust-stand log (any delimited text, or a hand-typed table) and prints its plateaus and coefficients.\nColumn roles and units are guessed from the header and printed; --column and --unit say otherwise.",
  options: { ...LOG_OPTIONS, ...ELECTRICAL_LOG_OPTIONS, ...MONTE_CARLO_OPTIONS },
  examples: [
    'reduce stand.csv --diameter 76mm --water "fresh 18C"',
    'reduce tow.csv --diameter 76mm --advance-speed "1.2 m/s ± 0.02 m/s" --order 2',
    "reduce thrust.csv --electrical-log meter.csv --diameter 76mm",
    'reduce stand.csv --diameter "76mm ± 0.1mm" --water "fresh 18C" --column thrust="Load (gf)" --pole-pairs 7 --json',
  ],
};

export async function run(words: Words): Promise<number> {
  const [log, ...more] = words.rest;
  if (log === undefined || more.length > 0) {
    throw new InputProblem({
      code: "cli.one-log",
      where: "reduce",
      found: log === undefined ? "no log was named" : `${words.rest.length} logs were named`,
      needed: "one",
      mend: "For example: reduce stand.csv --diameter 76mm; to compare several, use compare",
    });
  }
  const reduction = await reduceLog(log, words).catch(offeringSweep);
  process.stdout.write(words.has("json") ? `${JSON.stringify(reduction, null, 2)}\n` : readable(reduction));
  return 0;
}

/** A ramp that was refused: the option that takes it is named. */
function offeringSweep(thrown: unknown): never {
  if (!(thrown instanceof InputProblem) || thrown.problem.code !== "bench.ramp-without-plateaus") throw thrown;
  throw new InputProblem({ ...thrown.problem, mend: `${thrown.problem.mend}. The option --sweep does the first` });
}

const RPM: ShownUnit = { symbol: "rpm", factor: 1 / 60 };
const shown = (symbol: string): ShownUnit => ({ symbol, factor: 1 });

/** The result as a page of text; ± is half the 95 % interval. */
function readable(reduction: Reduction & { readonly monteCarlo?: MonteCarlo }): string {
  const answers: [string, Uncertain | null, ShownUnit?][] = [
    ["Thrust coefficient K_T", reduction.thrustCoefficient],
    ["Power coefficient C_P", reduction.powerCoefficient],
    ["Torque coefficient K_Q", reduction.torqueCoefficient],
    ["Static merit", reduction.staticMerit],
    ["Exponent of thrust on speed (theory: 2)", reduction.exponent],
    ["Thrust at zero speed (theory: 0)", reduction.intercept, shown("N")],
  ];
  return [
    `${reduction.source.fileName}: ${reduction.source.rows} rows, SHA-256 ${reduction.source.sha256.slice(0, 12)}, ${reduction.source.program}`,
    ...reduction.columns.map(
      ({ header, role, unit }) => `  column "${header}" is ${ROLE_NAMES[role]}${unit && ` in ${unit}`}`,
    ),
    ...(reduction.calibrations ?? []).map(
      ({ role, name, sentence }) => `  ${ROLE_NAMES[role]} calibrated by ${name}: ${sentence}`,
    ),
    "",
    ...plateauLines(reduction),
    ...reduction.rejected.map(
      ({ firstLine, lastLine, because }) => `  not taken: lines ${firstLine}-${lastLine}, ${because}`,
    ),
    "",
    ...sweepInWords(reduction),
    tareInWords(reduction),
    "",
    ...answers.map(
      ([name, value, unit]) => `${name.padEnd(42)} ${value ? formatUncertain(value, unit) : "not measured"}`,
    ),
    "",
    ...assumedLine(reduction),
    ...advanceLines(reduction),
    ...budgetLines(reduction),
    ...(reduction.monteCarlo ? monteCarloLines(reduction.monteCarlo) : []),
    "",
    ...qualityLines(reduction.quality),
    "",
    ...reduction.warnings.map(noteLine),
    "± is half the 95 % interval.",
    "",
  ].join("\n");
}

/** Causes that bring less of the variance are left to --json. */
const SMALL_SHARE = 0.01;

/** Where the doubt of the thrust coefficient comes from, and what would halve it. */
function budgetLines({ budget }: Reduction): string[] {
  if (!budget) return [];
  const { rows, halving } = budget.thrustCoefficient;
  const shares = rows
    .filter(({ share }) => share >= SMALL_SHARE)
    .map(({ name, share }) => `${name} ${(100 * share).toFixed(0)} %`);
  return [`Doubt of K_T, share of the variance: ${shares.join(", ")}.`, halving.sentence];
}

/** A column of the table of plateaus; one that no plateau fills is not printed. */
const PLATEAU_COLUMNS: readonly { readonly head: string; readonly cell: (plateau: Plateau) => string }[] = [
  { head: "lines", cell: ({ firstLine, lastLine }) => `${firstLine}-${lastLine}` },
  { head: "held", cell: ({ duration }) => (duration === null ? "" : `${formatNumber(duration, 3)} s`) },
  { head: "rotation rate", cell: ({ rotationRate }) => formatUncertain(rotationRate, RPM) },
  { head: "thrust", cell: ({ thrust }) => formatUncertain(thrust, shown("N")) },
  {
    head: "electrical power",
    cell: ({ electricalPower }) => (electricalPower ? formatUncertain(electricalPower, shown("W")) : ""),
  },
  { head: "", cell: ({ used, leftOutBecause }) => (used ? "" : `left out: ${leftOutBecause}`) },
];

function plateauLines({ plateaus }: Reduction): string[] {
  if (plateaus.length === 0) return [];
  const filled = PLATEAU_COLUMNS.filter(({ cell }) => plateaus.some((plateau) => cell(plateau) !== ""));
  return aligned([
    ["plateau", ...filled.map(({ head }) => head)],
    ...plateaus.map((plateau, index) => [`${index + 1}`, ...filled.map(({ cell }) => cell(plateau))]),
  ]);
}

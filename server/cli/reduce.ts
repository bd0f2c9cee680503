import type { Reduction } from "../../shared/model/reduction.ts";
import { formatNumber, formatUncertain, type ShownUnit } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Uncertain } from "../../shared/quantity/uncertain.ts";
import { LOG_OPTIONS, reduceLog } from "./logOptions.ts";
import { helpText, type Usage, Words } from "./options.ts";

export const USAGE: Usage = {
  verb: "reduce",
  arguments: "LOG",
  about:
    "Reads a thrust-stand log (any delimited text, or a hand-typed table) and prints its plateaus and coefficients.\nColumn roles and units are guessed from the header and printed; --column and --unit say otherwise.",
  options: LOG_OPTIONS,
  examples: [
    'reduce stand.csv --diameter 76mm --water "fresh 18C"',
    'reduce stand.csv --diameter "76mm ± 0.1mm" --water "fresh 18C" --column thrust="Load (gf)" --pole-pairs 7 --json',
  ],
};

export async function run(args: readonly string[]): Promise<number> {
  const words = new Words(USAGE, args);
  if (words.has("help")) {
    process.stdout.write(helpText(USAGE));
    return 0;
  }
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
  const reduction = await reduceLog(log, words);
  process.stdout.write(words.has("json") ? `${JSON.stringify(reduction, null, 2)}\n` : readable(reduction));
  return 0;
}

const RPM: ShownUnit = { symbol: "rpm", factor: 1 / 60 };
const shown = (symbol: string): ShownUnit => ({ symbol, factor: 1 });

/** The result as a page of text; ± is half the 95 % interval. */
function readable(reduction: Reduction): string {
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
    ...reduction.columns.map(({ header, role, unit }) => `  column "${header}" is ${role}${unit && ` in ${unit}`}`),
    "",
    ...plateauLines(reduction),
    "",
    ...answers.map(
      ([name, value, unit]) => `${name.padEnd(42)} ${value ? formatUncertain(value, unit) : "not measured"}`,
    ),
    "",
    ...reduction.warnings.map(({ message }) => `Note: ${message}`),
    "± is half the 95 % interval.",
    "",
  ].join("\n");
}

function plateauLines({ plateaus }: Reduction): string[] {
  return plateaus.map((plateau, index) =>
    [
      `${index + 1}`.padStart(3),
      `lines ${plateau.firstLine}-${plateau.lastLine}`.padEnd(20),
      plateau.duration === null ? "" : `${formatNumber(plateau.duration, 3)} s`.padEnd(8),
      formatUncertain(plateau.rotationRate, RPM).padEnd(20),
      formatUncertain(plateau.thrust, shown("N")).padEnd(20),
      plateau.electricalPower ? formatUncertain(plateau.electricalPower, shown("W")).padEnd(18) : "",
      plateau.used ? "" : `left out: ${plateau.leftOutBecause}`,
    ]
      .filter((cell) => cell !== "")
      .join("  "),
  );
}

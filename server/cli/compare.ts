import { basename, resolve } from "node:path";
import { compareVariants } from "../../shared/compare/compareVariants.ts";
import type { Comparison } from "../../shared/model/comparison.ts";
import type { FinishFit } from "../../shared/model/finishFit.ts";
import { formatNumber } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { BLADE_OPTIONS, finishLines, finishOf } from "./finishLines.ts";
import { LOG_OPTIONS, reduceLog } from "./logOptions.ts";
import type { Usage, Words } from "./options.ts";

export const USAGE: Usage = {
  verb: "compare",
  arguments: "LOG_A LOG_B",
  about:
    "The ratio of the thrust coefficient of LOG_B to that of LOG_A: thrust at equal speed. Further mountings of the same\ntwo variants go in with --again-a and --again-b; then the interval rests on what re-mounting changes.",
  options: {
    ...LOG_OPTIONS,
    "again-a": { value: "LOG", text: "another mounting of the first variant", many: true },
    "again-b": { value: "LOG", text: "another mounting of the second variant", many: true },
    ...BLADE_OPTIONS,
    "claimed-ratio": { value: "NUMBER", text: "exit with 1 unless the whole 95 % interval lies above this" },
  },
  examples: [
    'compare as-printed.csv sanded.csv --diameter 76mm --water "fresh 18C"',
    "compare as-printed.csv sanded.csv --diameter 76mm --blades 3 --pitch-ratio 0.9 --chord 20mm",
    "compare as-printed-1.csv sanded-1.csv --again-a as-printed-2.csv --again-b sanded-2.csv --diameter 76mm --json",
  ],
};

export async function run(words: Words): Promise<number> {
  const [logA, logB, ...more] = words.rest;
  if (logA === undefined || logB === undefined || more.length > 0) {
    throw new InputProblem({
      code: "cli.two-logs",
      where: "compare",
      found: `${words.rest.length} logs were named`,
      needed: "two, the baseline first",
      mend: "Name further mountings with --again-a and --again-b",
    });
  }
  if (resolve(logA) === resolve(logB)) {
    throw new InputProblem({
      code: "cli.same-log",
      where: "compare",
      found: `both sides are ${basename(logA)}`,
      needed: "two logs: a run can not differ from itself",
      mend: "Name the log of the other variant second",
    });
  }
  const [nameA, nameB] = namesOf(logA, logB);
  const baseline = await variant(nameA, [logA, ...words.all("again-a")], words);
  const changed = await variant(nameB, [logB, ...words.all("again-b")], words);
  const comparison = compareVariants({ baseline, variant: changed });
  const finish = finishOf(words, [firstRun(baseline), firstRun(changed)]);
  const result = finish === null ? comparison : { ...comparison, finish };
  process.stdout.write(words.has("json") ? `${JSON.stringify(result, null, 2)}\n` : readable(comparison, finish));
  const claimed = words.quantity("claimed-ratio", "number")?.value;
  return claimed !== undefined && comparison.thrustCoefficientRatio.interval95[0] <= claimed ? 1 : 0;
}

/** What the two are called: the names of the files, with their folders where the names alone are the same. */
function namesOf(logA: string, logB: string): [string, string] {
  return basename(logA) === basename(logB) ? [logA, logB] : [basename(logA), basename(logB)];
}

async function variant(name: string, logs: readonly string[], words: Words) {
  const reductions = [];
  for (const log of logs) reductions.push(await reduceLog(log, words));
  return { name, reductions };
}

/** Sections are told from the first mounting of each. */
const firstRun = ({ name, reductions }: Awaited<ReturnType<typeof variant>>) => ({ name, reduction: reductions[0]! });

function readable(comparison: Comparison, finish: FinishFit | null): string {
  const { sentence, thrustCoefficientRatio, equalShaftPowerRatio, warnings } = comparison;
  const ratio = ({ value, interval95: [low, high] }: { value: number; interval95: readonly [number, number] }) =>
    `${formatNumber(value, 4)} (95 %: ${formatNumber(low, 4)} to ${formatNumber(high, 4)})`;
  return [
    sentence,
    "",
    `Thrust at equal speed, second over first         ${ratio(thrustCoefficientRatio)}`,
    ...(equalShaftPowerRatio
      ? [`Thrust at equal shaft power, second over first   ${ratio(equalShaftPowerRatio)}`]
      : []),
    ...warnings.map(({ message }) => `Note: ${message}`),
    ...(finish === null ? [] : finishLines(finish)),
    "",
  ].join("\n");
}

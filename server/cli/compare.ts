import { basename, resolve } from "node:path";
import { judgedThrustClaim } from "../../shared/compare/claimVerdict.ts";
import { compareVariants } from "../../shared/compare/compareVariants.ts";
import { robustnessOf } from "../../shared/compare/robustness/robustnessOf.ts";
import { spreadChoiceInWords } from "../../shared/compare/spreadsInWords.ts";
import type { Comparison, SpreadChoice } from "../../shared/model/comparison.ts";
import type { FinishFit } from "../../shared/model/finishFit.ts";
import type { Robustness } from "../../shared/model/robustness.ts";
import type { JudgedClaim } from "../../shared/model/thrustClaim.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { CLAIM_OPTION, claimLines, claimOf, exitCode } from "./claimOption.ts";
import { answerLines, robustnessLines, spreadLines, studyLines } from "./comparisonLines.ts";
import { BLADE_OPTIONS, finishLines, finishOf } from "./finishLines.ts";
import { LOG_OPTIONS } from "./logOptions.ts";
import { CONDITION_OPTIONS, conditionsOf, MANIFEST_OPTIONS, manifestStudy } from "./manifestStudy.ts";
import type { Usage, Words } from "./options.ts";
import { reduceLog } from "./reduceLog.ts";

export const USAGE: Usage = {
  verb: "compare",
  arguments: "LOG_A LOG_B | --manifest TABLE",
  about:
    "Ratios of LOG_B to LOG_A: thrust at equal speed, power and throttle, power at equal thrust. Further mountings of the\nsame two variants go in with --again-a and --again-b; then the interval rests on what re-mounting changes. A table of\nruns (--manifest) compares many variants; its columns say what each run was made with.",
  options: {
    ...LOG_OPTIONS,
    "again-a": { value: "LOG", text: "another mounting of the first variant", many: true },
    "again-b": { value: "LOG", text: "another mounting of the second variant", many: true },
    ...CONDITION_OPTIONS,
    ...MANIFEST_OPTIONS,
    ...BLADE_OPTIONS,
    ...CLAIM_OPTION,
  },
  examples: [
    'compare as-printed.csv sanded.csv --diameter 76mm --water "fresh 18C"',
    "compare as-printed.csv sanded.csv --diameter 76mm --blades 3 --pitch-ratio 0.9 --chord 20mm",
    "compare as-printed-1.csv sanded-1.csv --again-a as-printed-2.csv --again-b sanded-2.csv --diameter 76mm --json",
    "compare --manifest runs.csv --all-pairs --robustness",
    "compare --manifest runs.csv --group-by pitchRatio --trend pitchRatio --quantity staticMerit",
  ],
};

export async function run(words: Words, args: readonly string[]): Promise<number> {
  return words.has("manifest") ? compareTable(words, args) : compareLogs(words);
}

async function compareTable(words: Words, args: readonly string[]): Promise<number> {
  if (words.rest.length > 0) {
    throw new InputProblem({
      code: "cli.logs-and-manifest",
      where: "compare",
      found: `--manifest names the runs, and ${words.rest.join(", ")} was named beside it`,
      needed: "one or the other",
      mend: "Add a line to the manifest for it",
    });
  }
  const answer = await manifestStudy({ usage: USAGE, words, args });
  process.stdout.write(
    words.has("json")
      ? `${JSON.stringify(answer, null, 2)}\n`
      : `${studyLines(answer, conditionsOf(words).spreads).join("\n")}\n`,
  );
  return exitCode(answer.claim);
}

async function compareLogs(words: Words): Promise<number> {
  const [logA, logB, ...more] = words.rest;
  if (logA === undefined || logB === undefined || more.length > 0) {
    throw new InputProblem({
      code: "cli.two-logs",
      where: "compare",
      found: words.rest.length === 1 ? "one log was named" : `${words.rest.length} logs were named`,
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
  const pair = { baseline, variant: changed };
  const conditions = conditionsOf(words);
  const comparison = compareVariants({ ...pair, ...conditions });
  const robustness = words.has("robustness") ? robustnessOf(pair, conditions.spreads) : null;
  const stated = claimOf(words);
  const finish = finishOf(words, [firstRun(baseline), firstRun(changed)], stated?.factor);
  const claim = stated === null ? null : judgedThrustClaim([comparison], stated);
  const extra = {
    ...(claim !== null && { claim }),
    ...(finish !== null && { finish }),
    ...(robustness !== null && { robustness }),
  };
  const result = { ...comparison, ...extra };
  process.stdout.write(
    words.has("json") ? `${JSON.stringify(result, null, 2)}\n` : readable(comparison, conditions.spreads, extra),
  );
  return exitCode(claim);
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

interface Extra {
  readonly claim?: JudgedClaim;
  readonly finish?: FinishFit;
  readonly robustness?: Robustness;
}

function readable(comparison: Comparison, spreads: SpreadChoice, { claim, finish, robustness }: Extra): string {
  const { sentence, warnings } = comparison;
  return [
    sentence,
    ...(claim === undefined ? [] : claimLines(claim)),
    ...spreadLines(comparison),
    spreadChoiceInWords(spreads),
    "",
    ...answerLines(comparison),
    ...(robustness === undefined ? [] : ["", ...robustnessLines(robustness)]),
    ...[...warnings, ...(robustness?.warnings ?? [])].map(({ message }) => `Note: ${message}`),
    ...(finish === undefined ? [] : finishLines(finish)),
    "",
  ].join("\n");
}

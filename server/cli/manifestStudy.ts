import { basename, dirname, resolve } from "node:path";
import { compareStudy } from "../../shared/compare/compareStudy.ts";
import { groupNamed } from "../../shared/compare/compareVariants.ts";
import { filteredRuns, groupRuns, type RunGroup } from "../../shared/compare/factors/groupRuns.ts";
import { firstMeasured } from "../../shared/compare/firstMeasured.ts";
import { type ManifestRow, readManifest } from "../../shared/compare/manifest/manifest.ts";
import type { StudiedRun } from "../../shared/compare/studiedRuns.ts";
import { SpreadChoice } from "../../shared/model/comparison.ts";
import { type ComparisonAnswer, ComparisonQuestion, type RunFilter } from "../../shared/model/comparisonRequest.ts";
import { FactorName, NumberFactorName, type RunFacts } from "../../shared/model/factor.ts";
import { RunQuantityName } from "../../shared/model/trend.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { claimOf } from "./claimOption.ts";
import { LOG_OPTIONS } from "./logOptions.ts";
import { textOfFile } from "./namedFile.ts";
import { type Option, type Usage, Words } from "./options.ts";
import { reduceLog } from "./reduceLog.ts";

/** Options of a comparison of many runs. */
export const MANIFEST_OPTIONS = {
  manifest: {
    value: "TABLE",
    text: "runs and what they were made with, one a line: file, variant, finish, pitch ratio, diameter (mm), pack, day ...",
  },
  "group-by": {
    value: "FACTOR",
    text: "make a variant of each value of a factor, or of runs with the same tags (tags), instead of the column variant",
  },
  tag: { value: "TAG", text: "take only runs with this tag", many: true },
  only: { value: "FACTOR=VALUE", text: "take only runs with this value, e.g. finish=sanded", many: true },
  baseline: {
    value: "NAME",
    text: "the variant to compare with; the one measured first where absent (column day, else order of the lines)",
  },
  "all-pairs": { text: "compare every pair, not only with the baseline" },
  trend: { value: "FACTOR", text: "follow the quantity over a number, e.g. pitchRatio, roughness, layerHeight" },
  "trend-order": { value: "NUMBER", text: "1 or 2; chosen by the runs where absent" },
  "log-scale": { text: "take the factor of the trend in logarithms" },
  anova: { value: "FACTORS", text: "analysis of variance over one or two factors, e.g. finish,pitchRatio" },
  quantity: { value: "NAME", text: `of trend and analysis: ${RunQuantityName.options.join(", ")}` },
} as const satisfies Record<string, Option>;

/** Options of every comparison. */
export const CONDITION_OPTIONS = {
  "at-power": {
    value: "QUANTITY",
    text: "electrical power held equal; the middle of what both sides cover where absent",
  },
  "at-thrust": { value: "QUANTITY", text: "thrust held equal, likewise" },
  "at-throttle": { value: "NUMBER", text: "command held equal, in the unit of its column, likewise" },
  spreads: {
    value: "CHOICE",
    text: "of mountings: pooled (one for both variants), separate, or tested (pooled unless a test tells them apart; this where absent)",
  },
  robustness: { text: "ask again without each run, with other fits and with other plateaus" },
} as const satisfies Record<string, Option>;

/** Conditions and the choice of spreads that the words fix. */
export function conditionsOf(words: Words) {
  const power = words.quantity("at-power", "power")?.value;
  const thrust = words.quantity("at-thrust", "force")?.value;
  const throttle = words.quantity("at-throttle", "number")?.value;
  return {
    ...(power !== undefined && { electricalPower: power }),
    ...(thrust !== undefined && { thrust }),
    ...(throttle !== undefined && { throttle }),
    spreads: oneOf(SpreadChoice.options, words.text("spreads") ?? "tested", "--spreads"),
  };
}

/** Options of reading a log that a column of a manifest may carry for its row. */
const ROW_SETTINGS = Object.entries(LOG_OPTIONS as Record<string, Option>)
  .filter(([, { value, many }]) => value !== undefined && !many)
  .map(([name]) => name);

interface ManifestCall {
  readonly usage: Usage;
  readonly words: Words;
  /** What the words were taken from: rows put their own after it. */
  readonly args: readonly string[];
}

/** The comparison that a manifest and the words ask for. */
export async function manifestStudy({ usage, words, args }: ManifestCall): Promise<ComparisonAnswer> {
  const path = words.text("manifest")!;
  const meant = { where: `--manifest ${path}`, needed: "a table of runs" };
  const rows = readManifest(await textOfFile(path, meant), basename(path), ROW_SETTINGS);
  const wanted = filteredRuns(rows.map(factsOf), filterOf(words));
  const { groups, warnings } = groupRuns(wanted, groupingOf(words, rows));
  const question = questionOf(words);
  const baseline = words.text("baseline") ?? firstMeasured(groups.map(idsOf), wanted)?.name ?? "";
  // Before the logs are reduced, which takes its time.
  if (words.has("baseline")) groupNamed(groups, baseline);
  const studied = new Map<string, StudiedRun>();
  for (const { runs } of groups) {
    for (const facts of runs) {
      const row = rows.find(({ file }) => file === facts.id)!;
      studied.set(facts.id, { facts, reduction: await reducedRow(row, { path, usage, args }) });
    }
  }
  const studies = groups.map(({ name, runs }) => ({ name, runs: runs.map(({ id }) => studied.get(id)!) }));
  const answer = compareStudy({ groups: studies, baseline, question });
  return { ...answer, warnings: [...warnings, ...answer.warnings] };
}

const idsOf = ({ name, runs }: RunGroup) => ({ name, ids: runs.map(({ id }) => id) });

const factsOf = ({ file, facts }: ManifestRow): RunFacts => ({ ...facts, id: file, name: file });

/** A row reduced by the words of the call with its own put over them; a problem is told by its line. */
async function reducedRow(
  { file, line, facts, settings }: ManifestRow,
  { path, usage, args }: { readonly path: string; readonly usage: Usage; readonly args: readonly string[] },
) {
  const own = [...settings].map(([name, value]) => (value === "" ? `--${name}` : `--${name}=${value}`));
  const name = facts.propeller ?? `${facts.variant} ${facts.finish ?? ""} ${facts.pitchRatio ?? ""}`;
  try {
    return await reduceLog(resolve(dirname(path), file), new Words(usage, [...args, ...own]), name);
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    throw thrown.at(`${basename(path)}, line ${line}, ${thrown.problem.where}`);
  }
}

function filterOf(words: Words): RunFilter {
  const factors = words
    .pairs("only")
    .map(([factor, text]) => ({ factor: oneOf(FactorName.options, factor, "--only"), text }));
  return { tags: [...words.all("tag")], factors };
}

function groupingOf(words: Words, rows: readonly ManifestRow[]) {
  const by = words.text("group-by");
  if (by !== undefined) return oneOf(["tags", ...FactorName.options], by, "--group-by");
  if (rows.some(({ facts }) => facts.variant !== "")) return "variant";
  throw new InputProblem({
    code: "cli.no-variants",
    where: "--manifest",
    found: "No row names a variant",
    needed: "a column variant, or --group-by",
    mend: "For example --group-by finish",
  });
}

function questionOf(words: Words): ComparisonQuestion {
  const quantity = oneOf(RunQuantityName.options, words.text("quantity") ?? "thrustCoefficient", "--quantity");
  const trend = words.text("trend");
  const order = words.whole("trend-order", 1);
  const anova = words.text("anova");
  const claim = claimOf(words);
  return ComparisonQuestion.parse({
    ...conditionsOf(words),
    pairs: words.has("all-pairs") ? "all" : "baseline",
    robustness: words.has("robustness"),
    ...(claim !== null && { claim }),
    ...(trend !== undefined && {
      trend: {
        factor: oneOf(NumberFactorName.options, trend, "--trend"),
        quantity,
        scale: words.has("log-scale") ? "logarithmic" : "linear",
        ...(order !== undefined && { order: Number(oneOf(["1", "2"], `${order}`, "--trend-order")) }),
      },
    }),
    ...(anova !== undefined && { anova: { factors: factorsIn(anova), quantity } }),
  });
}

function factorsIn(text: string): FactorName[] {
  const names = text.split(",").map((name) => oneOf(FactorName.options, name.trim(), "--anova"));
  if (names.length <= 2) return names;
  throw new InputProblem({
    code: "cli.too-many-factors",
    where: "--anova",
    found: `${names.length} factors were named`,
    needed: "one or two",
    mend: "Ask for two at a time",
  });
}

function oneOf<T extends string>(options: readonly T[], text: string, where: string): T {
  const fold = (word: string) => word.replace(/[\s-]/g, "").toLowerCase();
  const found = options.find((option) => fold(option) === fold(text));
  if (found !== undefined) return found;
  throw new InputProblem({
    code: "cli.not-one-of",
    where,
    found: `"${text}" is not known here`,
    needed: `one of ${options.join(", ")}`,
    mend: "",
  });
}

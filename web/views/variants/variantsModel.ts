import { firstInWords, firstMeasured } from "../../../shared/compare/firstMeasured.ts";
import { ratioInWords } from "../../../shared/compare/ratioInWords.ts";
import { spreadChoiceInWords, spreadsInWords } from "../../../shared/compare/spreadsInWords.ts";
import type { Comparison, SpreadChoice, VariantRatio, VariantSummary } from "../../../shared/model/comparison.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { formatNumber, formatUncertain } from "../../../shared/quantity/format.ts";
import { unitWords } from "../bench/columnsModel.ts";
import { reductionsOf, type VariantRuns } from "./variantGroups.ts";

/** The question of the screen, told of what is compared. */
export function variantsQuestion(names: readonly string[], baseline: string | null): string {
  const others = names.filter((name) => name !== baseline);
  if (baseline === null || others.length === 0) return "How do the variants compare?";
  if (others.length > 1) return `How much does each variant gain over “${baseline}”?`;
  return `How much did “${others[0]}” gain over “${baseline}”?`;
}

/** The answer in a sentence a comparison; or what is needed before there can be one. */
export function variantsAnswer(comparisons: readonly Comparison[], groups: readonly VariantRuns[]): string {
  if (comparisons.length > 0) return answerOf(comparisons);
  const waiting = groups.flatMap(({ members }) => members.filter((member) => member.reduction === null));
  if (waiting.length > 0 && groups.length > 1) return "The runs of the variants are not all reduced yet.";
  if (groups.length === 1 && groups[0]!.members.length === 1)
    return `Only one run has a variant, “${groups[0]!.name}”. Bring in the log of another variant on the Bench screen to compare.`;
  if (groups.length === 1)
    return `All runs belong to one variant, “${groups[0]!.name}”. Give at least one run another variant to compare.`;
  return "No run has a variant yet. Name the variant of each run, for example “as printed” and “sanded”.";
}

/** Two sentences can be read as one answer; of more, the variant furthest from the baseline speaks and the rest are counted. */
function answerOf(comparisons: readonly Comparison[]): string {
  if (comparisons.length <= 2) return comparisons.map((one) => one.sentence).join(" ");
  const distance = ({ thrustCoefficientRatio }: Comparison) => Math.abs(Math.log(thrustCoefficientRatio.value));
  const furthest = comparisons.reduce((a, b) => (distance(b) > distance(a) ? b : a));
  const differ = comparisons.filter((one) => one.thrustCoefficientRatio.adjustedPValue < 0.05).length;
  const { baseline } = furthest;
  return `${differ} of ${comparisons.length} variants differ from ${baseline.name} beyond chance. Furthest from it: ${furthest.sentence}`;
}

export interface Baseline {
  readonly group: VariantRuns;
  /** Why it is this one, a sentence. */
  readonly because: string;
}

/**
 * The group that the others are measured against, of those that have a result: the one chosen, or the one measured first;
 * `entered` are the runs in the order of entry. Null without a result.
 */
export function baselineOf(
  groups: readonly VariantRuns[],
  entered: readonly StoredDocument<Run>[],
  chosen: string | null,
): Baseline | null {
  const known = groups.filter((group) => reductionsOf(group).length > 0);
  const named = known.find((group) => group.name === chosen);
  if (named) return { group: named, because: "Chosen by hand." };
  const first = firstMeasured(
    known.map(({ name, members }) => ({ name, ids: members.map(({ id }) => id) })),
    entered.map(({ id, document: { day } }) => ({ id, day })),
  );
  if (first === null) return null;
  return { group: known.find(({ name }) => name === first.name)!, because: firstInWords(first) };
}

export interface VariantTable {
  readonly columns: readonly { readonly name: string; readonly style: number; readonly isBaseline: boolean }[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
}

/** Everything that was compared, one column a variant, the baseline first. */
export function variantTable(comparisons: readonly Comparison[], groups: readonly VariantRuns[]): VariantTable {
  const first = comparisons[0];
  if (first === undefined) return { columns: [], rows: [] };
  const summaries = [first.baseline, ...comparisons.map(({ variant }) => variant)];
  const styleOf = (name: string) => groups.find((group) => group.name === name)?.style ?? 0;
  const of = (cell: (summary: VariantSummary) => string) => summaries.map(cell);
  const against = (baseline: string, cell: (comparison: Comparison) => string) => [baseline, ...comparisons.map(cell)];
  return {
    columns: summaries.map(({ name }, at) => ({ name, style: styleOf(name), isBaseline: at === 0 })),
    rows: [
      { name: "Mountings", cells: of(({ runs }) => `${runs}`) },
      { name: "Thrust coefficient, mean of the mountings", cells: of((one) => formatUncertain(one.thrustCoefficient)) },
      { name: "Spread from mounting to mounting, standard deviation", cells: of(runToRunText) },
      {
        name: "Ratio of thrust at equal rotation rate",
        cells: against("1", (one) => ratioText(one.thrustCoefficientRatio)),
      },
      {
        name: "Ratio of thrust at equal shaft power",
        cells: against("1", (one) => ratioText(one.equalShaftPowerRatio)),
      },
      { name: "Ratio of static merit", cells: against("1", (one) => ratioText(one.staticMeritRatio)) },
      ...furtherRows(comparisons),
      {
        name: "p: chance of such a thrust ratio if both were equal",
        cells: against("–", (one) => pValueText(one.thrustCoefficientRatio, comparisons.length)),
      },
      {
        name: "The doubt of the thrust ratio rests on",
        cells: against("–", (one) => BASIS_WORDS[one.thrustCoefficientRatio.basis]),
      },
    ],
  };
}

const TOLD_ABOVE: ReadonlySet<string> = new Set(["thrustAtEqualRate", "thrustAtEqualShaftPower", "staticMerit"]);

/** Equal electrical power, equal throttle, power at equal thrust: with the condition they hold at, or why they are not known. */
function furtherRows(comparisons: readonly Comparison[]): VariantTable["rows"] {
  const quantities = comparisons[0]?.answers.filter(({ quantity }) => !TOLD_ABOVE.has(quantity)) ?? [];
  return quantities.map(({ quantity, title }) => ({
    name: `Ratio of ${title}`,
    cells: [
      "1",
      ...comparisons.map(({ answers }) => {
        const answer = answers.find((one) => one.quantity === quantity);
        if (!answer?.ratio) return answer?.why ?? "–";
        const { condition } = answer;
        const at = condition === null ? "" : `, at ${formatNumber(condition.value)}${conditionUnit(condition.unit)}`;
        return `${ratioInWords(answer.ratio)}${at}${condition?.extrapolated ? ", beyond what was measured" : ""}`;
      }),
    ],
  }));
}

/** Behind a number: plain steps of a throttle have no unit. */
const conditionUnit = (unit: string) => (unit === "1" || unit === "" ? "" : `\u202f${unitWords(unit)}`);

/** What to know beside the comparisons, each sentence once however many of them it is about. */
export function distinctWarnings(told: readonly Pick<Comparison, "warnings">[]): Comparison["warnings"] {
  const all = told.flatMap(({ warnings }) => warnings);
  return all.filter((one, at) => all.findIndex(({ message }) => message === one.message) === at);
}

/** What the intervals are and rest on. */
export function basisText(spreads: SpreadChoice): string {
  return `± is the half-width of the 95 % interval. What is repeated is the mounting: samples within a run do not count as repeats. ${spreadChoiceInWords(spreads)}`;
}

/** Which spread from mounting to mounting each thrust ratio rests on, a sentence a comparison that has a choice. */
export function spreadLines(comparisons: readonly Comparison[]): string[] {
  return comparisons.flatMap(({ baseline, variant, thrustCoefficientRatio: { spreads } }) =>
    spreads === null
      ? []
      : [`Spread from mounting to mounting, ${baseline.name} and ${variant.name}: ${spreadsInWords(spreads)}.`],
  );
}

/** What the doubt of a ratio rests on, in words. */
const BASIS_WORDS: { readonly [B in VariantRatio["basis"]]: string } = {
  replicates: "several mountings of both variants",
  pooledReplicates: "several mountings of one variant; the other is taken to vary as much",
  withinRun: "scatter inside single runs only: what re-mounting changes is not in it",
};

export interface ForestRow {
  readonly id: string;
  readonly name: string;
  readonly of: string;
  readonly style: number;
  readonly value: number;
  readonly interval: readonly [number, number];
  readonly text: string;
}

export interface Forest {
  readonly rows: readonly ForestRow[];
  /** Ends of the shared axis; "no change" and the claim lie inside. */
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
}

/** Up to so many pairs every ratio is drawn; of more, those that hang on no condition. */
const PAIRS_IN_FULL = 2;

/** Ratios with their intervals on one shared axis of factors. */
export function forest(
  comparisons: readonly Comparison[],
  groups: readonly VariantRuns[],
  claimed: number | null,
): Forest {
  const severalBaselines = new Set(comparisons.map(({ baseline }) => baseline.name)).size > 1;
  const rows = comparisons.flatMap(({ variant, baseline, answers }) => {
    const name = severalBaselines ? `${variant.name} over ${baseline.name}` : variant.name;
    const style = groups.find((group) => group.name === variant.name)?.style ?? 0;
    const drawn = answers.filter(({ quantity }) => comparisons.length <= PAIRS_IN_FULL || TOLD_ABOVE.has(quantity));
    return drawn.flatMap(({ ratio, title }) => (ratio === null ? [] : [forestRow(name, style, title, ratio)]));
  });
  const ends = rows.flatMap((row) => row.interval);
  const marks = claimed === null ? [1] : [1, claimed];
  const [least, greatest] = [Math.min(...marks, ...ends), Math.max(...marks, ...ends)];
  const margin = 0.06 * (greatest - least) || 0.1;
  const [low, high] = [least - margin, greatest + margin];
  return { rows, low, high, ticks: ticksBetween(low, high) };
}

/** Round steps of 1, 2 or 5 times a power of ten, six at most. */
function ticksBetween(low: number, high: number): number[] {
  const rough = (high - low) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((one) => one * power).find((one) => one >= rough)!;
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) =>
    Number(((first + i) * step).toPrecision(10)),
  );
}

function forestRow(name: string, style: number, of: string, ratio: VariantRatio): ForestRow {
  return {
    id: `${name} ${of}`,
    name,
    of,
    style,
    value: ratio.value,
    interval: ratio.interval95,
    text: ratioText(ratio),
  };
}

function runToRunText({ runToRun }: VariantSummary): string {
  return runToRun === null ? "one mounting" : `${formatNumber(100 * runToRun, 2)}\u202f%`;
}

function ratioText(ratio: VariantRatio | null): string {
  return ratio === null ? "shaft power not known" : ratioInWords(ratio);
}

export interface AssignmentRow {
  readonly id: string;
  readonly name: string;
  readonly variant: string;
  readonly mounting: string;
}

/** All runs with their variant, those without one first, because they wait for one. */
export function assignmentRows(runs: readonly StoredDocument<Run>[]): AssignmentRow[] {
  return runs
    .filter(({ document }) => document.purpose === "propeller")
    .map(({ id, document: { name, variant, mounting } }) => ({ id, name, variant, mounting }))
    .sort((a, b) => `${a.variant}\n${a.name}`.localeCompare(`${b.variant}\n${b.name}`, "en", { numeric: true }));
}

function pValueText({ pValue, adjustedPValue }: VariantRatio, shownTogether: number): string {
  const single = smallNumber(pValue);
  return shownTogether < 2 ? single : `${single}; ${smallNumber(adjustedPValue)} by Holm`;
}

function smallNumber(p: number): string {
  return p < 0.001 ? "under 0.001" : formatNumber(p, 2);
}

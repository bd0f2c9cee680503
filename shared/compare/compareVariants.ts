import type { ComparedQuantityName, Comparison, VariantRatio } from "../model/comparison.ts";
import { holm } from "../numeric/holm.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Answer, answersOf, type Conditions } from "./answers.ts";
import { ratioSentence } from "./comparisonSentence.ts";
import { comparisonWarnings, sameDiameter } from "./comparisonWarnings.ts";
import { inWords } from "./inWords.ts";
import { type VariantPair, variantPairs } from "./variantPairs.ts";
import { type VariantRuns, variantSummary } from "./variantSummary.ts";

/**
 * One variant against another: ratios of thrust at equal rotation rate, equal shaft power, equal electrical power and
 * equal throttle, of the power that equal thrust takes, and of static merit, with intervals, the answer in words, and what
 * to beware of. See variantRatio for the statistics, answersOf for what each rests on.
 *
 * A ratio whose quantity is not known in every run is null, and the answer says why.
 *
 * Throws   InputProblem for a side without runs or a file that counts twice on one side (a repeat would narrow the
 *          interval without a new mounting); OutOfDomain where a coefficient is not positive.
 */
export function compareVariants({ baseline, variant, ...conditions }: VariantPair & Conditions): Comparison {
  return compareAll({ groups: [baseline, variant], baseline: baseline.name, ...conditions })[0]!;
}

/** What is compared, with what, and at which conditions. */
export interface ComparisonOfAll extends Conditions {
  readonly groups: readonly VariantRuns[];
  readonly baseline: string;
  readonly pairs?: "baseline" | "all";
}

/**
 * Every group against the one named `baseline`, in the order given; with `pairs` "all" then every other pair. p-values are
 * adjusted by Holm over all pairs, each quantity for itself, and the sentences claim a difference only if it stands after
 * that.
 *
 * Throws   as compareVariants; InputProblem for fewer than two groups, a name that occurs twice, a baseline that is not
 *          among them, or runs in air beside runs in water.
 */
export function compareAll({
  groups,
  baseline: baselineName,
  pairs: which = "baseline",
  ...conditions
}: ComparisonOfAll): Comparison[] {
  requireGroups(groups);
  requireOneKindOfFluid(groups);
  const baseline = groupNamed(groups, baselineName);
  const pairs = variantPairs(groups, baseline, which);
  const answers = adjustedAnswers(pairs.map((pair) => answersOf(pair, conditions)));
  return pairs.map((pair, i) => comparisonOf(pair, answers[i]!, pairs.length));
}

function comparisonOf(pair: VariantPair, answers: readonly Answer[], pairs: number): Comparison {
  const summaries = { baseline: variantSummary(pair.baseline), variant: variantSummary(pair.variant) };
  const told = { ...summaries, sameDiameter: sameDiameter(pair.baseline, pair.variant), pairs };
  const inWords = answers.map((answer) => {
    const { quantity, ratio, condition, why } = answer;
    return { ...answer, sentence: ratio === null ? why : ratioSentence({ ...told, quantity, ratio, condition }) };
  });
  const of = (wanted: ComparedQuantityName) => inWords.find(({ quantity }) => quantity === wanted)!;
  const thrust = of("thrustAtEqualRate");
  return {
    ...summaries,
    thrustCoefficientRatio: thrust.ratio!,
    equalShaftPowerRatio: of("thrustAtEqualShaftPower").ratio,
    staticMeritRatio: of("staticMerit").ratio,
    answers: inWords,
    sentence: thrust.sentence,
    warnings: comparisonWarnings(pair.baseline, pair.variant, { ratio: thrust.ratio!, answers: inWords }),
  };
}

/** Holm's correction of each quantity over all pairs that have it. */
function adjustedAnswers(ofPairs: readonly (readonly Answer[])[]): Answer[][] {
  const found = ofPairs.map((answers) => answers.map((answer) => ({ ...answer })));
  found[0]!.forEach((_, k) => {
    const [ratios, built] = [
      adjusted(found.map((pair) => pair[k]!.ratio)),
      adjusted(found.map((pair) => pair[k]!.asBuilt)),
    ];
    found.forEach((pair, i) => {
      pair[k] = { ...pair[k]!, ratio: ratios[i]!, asBuilt: built[i]! };
    });
  });
  return found;
}

/** Holm's correction over the ratios that exist. */
function adjusted(found: readonly (VariantRatio | null)[]): (VariantRatio | null)[] {
  const pValues = holm(found.flatMap((ratio) => (ratio === null ? [] : [ratio.pValue])));
  let next = 0;
  return found.map((ratio) => (ratio === null ? ratio : { ...ratio, adjustedPValue: pValues[next++]! }));
}

function requireGroups(groups: readonly VariantRuns[]): void {
  if (groups.length < 2) {
    refuse("compare.one-group", "groups", `There is ${groups.length === 1 ? "one group" : "no group"}`, "two or more");
  }
  const names = new Set<string>();
  for (const { name, reductions } of groups) {
    if (names.has(name)) refuse("compare.name-twice", name, "Two groups have this name", "a name of its own for each");
    names.add(name);
    if (reductions.length === 0) refuse("compare.no-runs", name, "This group has no run", "one run at least");
    const files = new Set<string>();
    for (const { source } of reductions) {
      if (files.has(source.sha256)) {
        refuse("compare.file-twice", name, `${source.fileName} counts twice`, "a new mounting behind every run");
      }
      files.add(source.sha256);
    }
  }
}

/** Greatest over least density from which on one of the fluids is a gas. */
const GAS_AND_LIQUID = 10;

/**
 * At equal rotation rate the Reynolds number in air is some fifteen times smaller than in water, which alone moves a
 * coefficient by more than a finish does; a ratio across both would be a number of the fluids.
 */
function requireOneKindOfFluid(groups: readonly VariantRuns[]): void {
  const runs = groups.flatMap(({ reductions }) => reductions);
  const least = Math.min(...runs.map(({ fluid }) => fluid.density));
  const named = (inAir: boolean) =>
    runs.filter(({ fluid }) => fluid.density < least * GAS_AND_LIQUID === inAir).map(({ source }) => source.fileName);
  const inWater = named(false);
  if (inWater.length === 0) return;
  throw new InputProblem({
    code: "compare.air-and-water",
    where: "fluid",
    found: `Some runs were made in air (${inWords(named(true))}) and some in water (${inWords(inWater)}): a ratio would be that of the fluids and of their Reynolds numbers, not of the variants`,
    needed: "runs in air alone, or in water alone",
    mend: "Take only runs of one fluid; what carrying a coefficient from air to water does, with its doubt, is told on the Theory screen",
  });
}

/**
 * The group to compare with.
 *
 * Throws   InputProblem `compare.no-baseline` where no group has that name.
 */
export function groupNamed<G extends { readonly name: string }>(groups: readonly G[], name: string): G {
  const found = groups.find((group) => group.name === name);
  if (found !== undefined) return found;
  throw new InputProblem({
    code: "compare.no-baseline",
    where: "baseline",
    found: `There is no group named "${name}"`,
    needed: `one of ${groups.map((group) => `"${group.name}"`).join(", ")}`,
    mend: "Name one of the groups as the one to compare with",
  });
}

const MENDS: Record<string, string> = {
  "compare.one-group": "Put runs of another variant in a second group",
  "compare.name-twice": "Rename one of them, or put its runs in the other group",
  "compare.no-runs": "Add a run to it, or take the group away",
  "compare.file-twice": "Remove the copy: it would make the interval narrower without a new measurement",
};

function refuse(code: keyof typeof MENDS, where: string, found: string, needed: string): never {
  throw new InputProblem({ code, where, found, needed, mend: MENDS[code]! });
}

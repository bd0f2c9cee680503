import type { Comparison, VariantRatio } from "../model/comparison.ts";
import type { Reduction } from "../model/reduction.ts";
import { holm } from "../numeric/holm.ts";
import { InputProblem } from "../quantity/problem.ts";
import { comparisonSentence } from "./comparisonSentence.ts";
import { comparisonWarnings, sameDiameter } from "./comparisonWarnings.ts";
import { equalShaftPowerThrustOf, type RunQuantity, staticMeritOf, thrustCoefficientOf } from "./runQuantity.ts";
import { variantRatio } from "./variantRatio.ts";
import { type VariantRuns, variantSummary } from "./variantSummary.ts";

/**
 * One variant against another: ratios of thrust at equal rotation rate, of thrust at equal shaft power and of static
 * merit, with intervals, the answer in words, and what to beware of. See variantRatio for the statistics.
 *
 * The ratios that need shaft power are null unless it is known in every run.
 *
 * Throws   InputProblem for a side without runs or a file that counts twice on one side (a repeat would narrow the
 *          interval without a new mounting); OutOfDomain where a coefficient is not positive.
 */
export function compareVariants({
  baseline,
  variant,
}: {
  readonly baseline: VariantRuns;
  readonly variant: VariantRuns;
}): Comparison {
  return compareAll({ groups: [baseline, variant], baseline: baseline.name })[0]!;
}

/**
 * Every group against the one named `baseline`, in the order given. p-values are adjusted by Holm over all pairs, each
 * quantity for itself, and the sentences claim a difference only if it stands after that.
 *
 * Throws   as compareVariants, and InputProblem for fewer than two groups, a name that occurs twice, or a baseline that
 *          is not among them.
 */
export function compareAll({
  groups,
  baseline: baselineName,
}: {
  readonly groups: readonly VariantRuns[];
  readonly baseline: string;
}): Comparison[] {
  requireGroups(groups);
  const baseline = groups.find((group) => group.name === baselineName);
  if (baseline === undefined) throw noBaseline(groups, baselineName);
  const variants = groups.filter((group) => group !== baseline);
  const thrust = adjusted(ratios(baseline, variants, thrustCoefficientOf));
  const atEqualPower = adjusted(ratiosWithPower(baseline, variants, equalShaftPowerThrustOf));
  const merit = adjusted(ratiosWithPower(baseline, variants, staticMeritOf));
  return variants.map((variant, i) => {
    const summaries = { baseline: variantSummary(baseline), variant: variantSummary(variant) };
    const thrustCoefficientRatio = thrust[i]!;
    return {
      ...summaries,
      thrustCoefficientRatio,
      equalShaftPowerRatio: atEqualPower[i]!,
      staticMeritRatio: merit[i]!,
      answers: [],
      sentence: comparisonSentence({
        ...summaries,
        thrustCoefficientRatio,
        sameDiameter: sameDiameter(baseline, variant),
        pairs: variants.length,
      }),
      warnings: comparisonWarnings(baseline, variant, thrustCoefficientRatio),
    };
  });
}

const knowsPower = ({ reductions }: VariantRuns) => reductions.every((run) => run.powerFit !== null);

function ratios(
  baseline: VariantRuns,
  variants: readonly VariantRuns[],
  quantity: (run: Reduction) => RunQuantity,
): VariantRatio[] {
  const ofBaseline = baseline.reductions.map(quantity);
  return variants.map(({ reductions }) => variantRatio(ofBaseline, reductions.map(quantity)));
}

/** The same where shaft power is known in every run of both sides, else null. */
function ratiosWithPower(
  baseline: VariantRuns,
  variants: readonly VariantRuns[],
  quantity: (run: Reduction) => RunQuantity,
): (VariantRatio | null)[] {
  return variants.map((variant) =>
    knowsPower(baseline) && knowsPower(variant) ? ratios(baseline, [variant], quantity)[0]! : null,
  );
}

/** Holm's correction over the ratios that exist. */
function adjusted<R extends VariantRatio | null>(found: readonly R[]): R[] {
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

function noBaseline(groups: readonly VariantRuns[], name: string): InputProblem {
  return new InputProblem({
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

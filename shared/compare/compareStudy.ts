import type { Comparison } from "../model/comparison.ts";
import type { ComparisonAnswer, ComparisonQuestion } from "../model/comparisonRequest.ts";
import { judgedThrustClaim } from "./claimVerdict.ts";
import { compareAll } from "./compareVariants.ts";
import { otherFactors } from "./factors/confounding.ts";
import { factorTable, type VariantFacts } from "./factors/factorTable.ts";
import { robustnessOf } from "./robustness/robustnessOf.ts";
import type { StudiedRun } from "./studiedRuns.ts";
import { trendOf } from "./trend/trendOf.ts";
import { anovaOf } from "./variance/anovaOf.ts";

/** The runs of one variant with what is known of them. */
export interface StudyGroup {
  readonly name: string;
  readonly runs: readonly StudiedRun[];
}

export interface Study {
  readonly groups: readonly StudyGroup[];
  readonly baseline: string;
  readonly question: ComparisonQuestion;
}

/**
 * Everything that is asked of a set of variants: every answer of every pair, what the variants differ in and what goes
 * with them, what they say of a claim, and, where asked for, trend, analysis of variance and how robust the answers are.
 *
 * Throws   as compareAll, trendOf and anovaOf.
 */
export function compareStudy({ groups, baseline, question }: Study): ComparisonAnswer {
  const { trend, anova, robustness, pairs, claim, ...conditions } = question;
  const variants = groups.map(({ name, runs }) => ({ name, reductions: runs.map(({ reduction }) => reduction) }));
  const all = groups.flatMap(({ name, runs }) => runs.map((run) => ({ ...run, variant: name })));
  const known = groups.map(({ name, runs }) => ({ name, runs: runs.map(({ facts }) => facts) }));
  const comparisons = compareAll({ groups: variants, baseline, pairs, ...conditions }).map((one) =>
    withConfounding(one, known),
  );
  const factors = factorTable(known);
  const sideOf = (name: string) => variants.find((variant) => variant.name === name)!;
  return {
    comparisons,
    claim: claim ? judgedThrustClaim(comparisons, claim) : null,
    factors,
    runs: all.map(({ facts }) => facts),
    trend: trend ? trendOf(all, trend) : null,
    anova: anova ? anovaOf(all, anova) : null,
    robustness: robustness
      ? comparisons.map((one) =>
          robustnessOf({ baseline: sideOf(one.baseline.name), variant: sideOf(one.variant.name) }, question.spreads),
        )
      : [],
    warnings: [],
  };
}

/** A comparison with what goes with the variant in this pair, and what differs inside its sides. */
function withConfounding(comparison: Comparison, groups: readonly VariantFacts[]): Comparison {
  const sides = [comparison.baseline, comparison.variant].map(
    ({ name }) => groups.find((group) => group.name === name)!,
  );
  const { compared, warnings } = factorTable(sides);
  const inside = otherFactors(
    sides.map(({ runs }) => runs),
    compared,
  );
  return { ...comparison, warnings: [...comparison.warnings, ...warnings, ...inside] };
}

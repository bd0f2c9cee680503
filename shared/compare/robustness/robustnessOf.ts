import type { SpreadChoice, VariantRatio } from "../../model/comparison.ts";
import type { Reduction } from "../../model/reduction.ts";
import type { Robustness, RobustnessCheck, RobustnessRow } from "../../model/robustness.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { LEVEL } from "../comparisonSentence.ts";
import { type RunQuantity, thrustCoefficientOf } from "../runQuantity.ts";
import type { VariantPair } from "../variantPairs.ts";
import { variantRatio } from "../variantRatio.ts";
import type { VariantRuns } from "../variantSummary.ts";
import { everyPlateau, fitOver, huberFit, medianOfPlateaus, type Refit, upperHalf, wayUp } from "./refit.ts";
import { robustnessSentence } from "./robustnessSentence.ts";

/**
 * The ratio of thrust at equal rotation rate asked again: without each run in turn, with fits that wild plateaus do not
 * pull, and with other choices of plateaus. A way agrees where its ratio lies inside the 95 % interval of the answer and it
 * does not claim what the answer does not.
 *
 * p-values here are those of the pair alone, so that the ways are compared with the answer under one rule.
 */
export function robustnessOf({ baseline, variant }: VariantPair, spreads: SpreadChoice = "tested"): Robustness {
  const ratioBy = ratioWith(spreads);
  const answer = ratioBy([baseline.reductions, variant.reductions], thrustCoefficientOf)!;
  const rows = [
    rowOf({ check: "asAnswered", title: "as answered", without: null }, answer, answer),
    ...leaveOneOut([baseline, variant], answer, ratioBy),
    ...WAYS.map(({ check, title, refit, why }) => {
      // At speed the coefficient is that of a curve against the advance ratio, which these fits do not know.
      const atSpeed = [...baseline.reductions, ...variant.reductions].some(({ advance }) => advance !== null);
      const found = atSpeed ? null : ratioBy([baseline.reductions, variant.reductions], refit);
      return rowOf({ check, title, without: null }, found, answer, atSpeed ? AT_SPEED : why);
    }),
  ];
  const told = rows.slice(1).filter(({ agrees }) => agrees !== null);
  const result = {
    ...{ baseline: baseline.name, variant: variant.name, rows },
    holds: told.length === 0 ? null : told.every(({ agrees }) => agrees),
  };
  return { ...result, sentence: robustnessSentence(result), warnings: warningsOf(result) };
}

const AT_SPEED = "A run was made at speed through the water.";
const FEW_PLATEAUS = "A run has fewer than three such plateaus that push.";

const WAYS: readonly {
  readonly check: RobustnessCheck;
  readonly title: string;
  readonly refit: Refit;
  readonly why: string;
}[] = [
  {
    check: "huberFit",
    title: "fits that wild plateaus do not pull (Huber)",
    refit: huberFit,
    why: "A run has fewer than three plateaus, or the fit did not settle.",
  },
  {
    check: "medianOfPlateaus",
    title: "medians of the plateaus",
    refit: medianOfPlateaus,
    why: "A run has fewer than three plateaus.",
  },
  {
    check: "upperHalf",
    title: "only the upper half of the rotation rates",
    refit: fitOver(upperHalf),
    why: FEW_PLATEAUS,
  },
  { check: "wayUp", title: "only the way up", refit: fitOver(wayUp), why: FEW_PLATEAUS },
  { check: "allPlateaus", title: "all plateaus, those left out too", refit: fitOver(everyPlateau), why: FEW_PLATEAUS },
];

/** The ratio of the runs of baseline and variant by one way of fitting; null where a run does not carry it. */
type RatioBy = (runs: readonly [readonly Reduction[], readonly Reduction[]], refit: Refit) => VariantRatio | null;

const ratioWith =
  (spreads: SpreadChoice): RatioBy =>
  (runs, refit) => {
    const [baseline, variant] = runs.map((side) => side.map(refit));
    if ([...baseline!, ...variant!].includes(null)) return null;
    return variantRatio(baseline as RunQuantity[], variant as RunQuantity[], spreads);
  };

function leaveOneOut(
  [baseline, variant]: readonly [VariantRuns, VariantRuns],
  answer: VariantRatio,
  ratioBy: RatioBy,
): RobustnessRow[] {
  const without = (left: Reduction) => {
    const kept = ({ reductions }: VariantRuns) => reductions.filter((run) => run !== left);
    const names = {
      check: "leaveOneOut" as const,
      title: `without ${left.source.fileName}`,
      without: left.source.fileName,
    };
    return rowOf(names, ratioBy([kept(baseline), kept(variant)], thrustCoefficientOf), answer);
  };
  return [baseline, variant].flatMap(({ reductions }) => (reductions.length > 1 ? reductions.map(without) : []));
}

/** 1 where the variant is claimed to give more, -1 less, 0 where nothing is claimed. */
const claimOf = ({ value, pValue }: Pick<VariantRatio, "value" | "pValue">) =>
  pValue < LEVEL ? Math.sign(Math.log(value)) : 0;

function rowOf(
  words: Pick<RobustnessRow, "check" | "title" | "without">,
  found: VariantRatio | null,
  answer: VariantRatio,
  why = "",
): RobustnessRow {
  if (found === null) {
    return { ...words, value: null, interval95: null, change: null, claims: null, agrees: null, why };
  }
  const [low, high] = answer.interval95;
  const claim = claimOf(found);
  const inside = found.value >= low && found.value <= high;
  const u = answer.standardUncertainty / answer.value;
  return {
    ...{ ...words, value: found.value, interval95: found.interval95, why: "" },
    change: u > 0 ? Math.log(found.value / answer.value) / u : 0,
    claims: claim > 0 ? "more" : claim < 0 ? "less" : "nothing",
    // Fewer runs may leave less to be claimed; they must not claim something else.
    agrees: inside && (claim === 0 || claim === claimOf(answer)),
  };
}

function warningsOf({ rows, holds, variant, baseline }: Omit<Robustness, "sentence" | "warnings">): Warning[] {
  if (holds !== false) return [];
  const against = rows.filter(({ agrees }) => agrees === false).map(({ title }) => title);
  return [
    warning({
      code: "compare.not-robust",
      where: `${variant} over ${baseline}`,
      found: `The answer changes with: ${against.join("; ")}`,
      needed: "an answer that does not hang on one run or one choice",
      mend: "Look at the runs named, and repeat the mounting that stands apart",
    }),
  ];
}

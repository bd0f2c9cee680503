import { FACTOR_WORDS } from "../../shared/compare/factors/factorWords.data.ts";
import { spreadChoiceInWords, spreadsInWords } from "../../shared/compare/spreadsInWords.ts";
import type { Anova } from "../../shared/model/anova.ts";
import type { ComparedQuantity, Comparison, SpreadChoice } from "../../shared/model/comparison.ts";
import type { ComparisonAnswer } from "../../shared/model/comparisonRequest.ts";
import type { FactorTable } from "../../shared/model/factor.ts";
import type { Robustness } from "../../shared/model/robustness.ts";
import type { Trend } from "../../shared/model/trend.ts";
import { formatNumber, formatPercent, formatUncertain } from "../../shared/quantity/format.ts";
import { aligned } from "./aligned.ts";
import { claimLines } from "./claimOption.ts";

type Ratio = Pick<NonNullable<ComparedQuantity["ratio"]>, "value" | "interval95">;

const ratioText = ({ value, interval95: [low, high] }: Ratio) =>
  `${formatNumber(value, 4)} (95 %: ${formatNumber(low, 4)} to ${formatNumber(high, 4)})`;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Every ratio of a comparison, one a line, and what can not be told. */
export function answerLines({ answers }: Pick<Comparison, "answers">): string[] {
  const told = answers.filter(({ ratio }) => ratio !== null);
  const rows = told.map(({ title, ratio, condition }) => [
    `${capital(title)}${condition === null ? "" : ` of ${formatNumber(condition.value)}${condition.unit && ` ${condition.unit}`}`}`,
    ratioText(ratio!),
    `p ${pText(ratio!.adjustedPValue)}${ratio!.adjustedPValue > ratio!.pValue ? " by Holm" : ""}`,
  ]);
  const built = told.filter(({ asBuilt }) => asBuilt !== null);
  const asBuilt = built.map(({ title, asBuilt: one }) => [
    `${capital(title)}, with the diameters as they are`,
    ratioText(one!),
    "",
  ]);
  return rows.length === 0 ? [] : aligned([...rows, ...asBuilt]);
}

/** Which spread the doubt rests on, where both variants were mounted more than once. */
export function spreadLines({
  thrustCoefficientRatio: { spreads },
}: Pick<Comparison, "thrustCoefficientRatio">): string[] {
  return spreads === null ? [] : [`Spread from mounting to mounting: ${spreadsInWords(spreads)}.`];
}

const pText = (p: number) => (p < 0.001 ? "under 0.001" : formatNumber(p, 2));

/** The whole answer as text; `spreads` is the choice that was asked for. */
export function studyLines(answer: ComparisonAnswer, spreads: SpreadChoice): string[] {
  const { comparisons, claim, factors, trend, anova, robustness, warnings } = answer;
  const all = [
    ...warnings,
    ...[...comparisons, ...robustness].flatMap((one) => one.warnings),
    ...(trend?.warnings ?? []),
    ...(anova?.warnings ?? []),
  ];
  const notes = [...new Set(all.map(({ message }) => message))];
  return [
    factors.sentence,
    ...factorLines(factors),
    spreadChoiceInWords(spreads),
    ...comparisons.flatMap((one) => ["", one.sentence, ...spreadLines(one), ...answerLines(one)]),
    ...(claim === null ? [] : ["", ...claimLines(claim)]),
    ...(trend === null ? [] : ["", ...trendLines(trend)]),
    ...(anova === null ? [] : ["", ...anovaLines(anova)]),
    ...(robustness.length === 0 ? [] : ["", ...robustness.flatMap(robustnessLines)]),
    ...(notes.length === 0 ? [] : ["", ...notes.map((message) => `Note: ${message}`)]),
  ];
}

/** The factors that are not the same in all runs. */
function factorLines({ rows }: FactorTable): string[] {
  const differing = rows.filter(({ role }) => role !== "constant");
  if (differing.length === 0) return [];
  return aligned(
    differing.map(({ title, values }) => [
      `  ${title}`,
      ...values.map(({ variant, values: own }) => `${variant}: ${own.map(({ text }) => text).join(", ")}`),
    ]),
  );
}

function trendLines({ sentence, order, orderBecause, scatter, lackOfFit, optimum }: Trend): string[] {
  const why = {
    stated: "as asked",
    criterion: "by the corrected information criterion",
    fewValues: "too few runs for more",
  };
  return [
    sentence,
    `Order ${order} (${why[orderBecause]}); runs lie ${formatPercent(scatter)} about the curve${lackOfFit === null ? "" : `; lack of fit p ${pText(lackOfFit.pValue)}`}.`,
    ...(optimum === null ? [] : [`Vertex by first order: ${formatUncertain(optimum.at)} (SI).`]),
  ];
}

function anovaLines({ sentence, rows, cells, quantityTitle, factors, design }: Anova): string[] {
  const number = (value: number | null) => (value === null ? "" : formatNumber(value, 4));
  const designs = { balanced: "balanced", unbalanced: "unbalanced", emptyCells: "with empty cells" };
  return [
    sentence,
    `Analysis of variance of ln ${quantityTitle} over ${factors.map((factor) => FACTOR_WORDS[factor].title).join(" and ")}, ${designs[design]}, type II sums of squares`,
    ...aligned([
      ["  source", "df", "sum of squares", "mean square", "F", "p"],
      ...rows.map(({ source, degreesOfFreedom, sumOfSquares, meanSquare, F, pValue }) => [
        `  ${source}`,
        `${degreesOfFreedom}`,
        number(sumOfSquares),
        number(meanSquare),
        number(F),
        pValue === null ? "" : pText(pValue),
      ]),
    ]),
    ...aligned(
      cells.map(({ levels, runs, mean }) => [
        `  ${levels.map(({ level }) => level).join(", ")}`,
        `${runs} run${runs === 1 ? "" : "s"}`,
        mean === null ? "not run" : formatUncertain(mean),
      ]),
    ),
  ];
}

export function robustnessLines({ sentence, rows }: Robustness): string[] {
  return [
    sentence,
    ...aligned(
      rows.map(({ title, value, interval95, why }) => [
        `  ${title}`,
        value === null ? why : ratioText({ value, interval95: interval95! }),
      ]),
    ),
  ];
}

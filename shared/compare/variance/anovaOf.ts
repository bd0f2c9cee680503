import type { Anova, AnovaRequest, AnovaRow } from "../../model/anova.ts";
import type { FactorName } from "../../model/factor.ts";
import { type AnalysisOfVariance, analysisOfVariance, type TestedRow } from "../../numeric/analysisOfVariance.ts";
import { holm } from "../../numeric/holm.ts";
import { moments } from "../../numeric/moments.ts";
import { twoSidedPValue } from "../../numeric/studentT.ts";
import { InputProblem, OutOfDomain } from "../../quantity/problem.ts";
import { coverageFactor } from "../../quantity/uncertain.ts";
import { FACTOR_WORDS } from "../factors/factorWords.data.ts";
import { distinctLevels, type Level, levelsOf } from "../factors/levels.ts";
import { type GroupedRun, quantityOfRuns, RUN_QUANTITIES } from "../studiedRuns.ts";
import { anovaSentence } from "./anovaSentence.ts";
import { anovaWarnings } from "./anovaWarnings.ts";

/**
 * Analysis of variance of a quantity's logarithms over one or two factors, the run as the unit of replication: type II sums
 * of squares, cell means, and the effect of each level. See analysisOfVariance for the statistics.
 *
 * Causes that all runs share cancel in every line but the level of the means; causes that some share are not in it.
 *
 * Throws   InputProblem `compare.anova-design` where the runs do not carry such an analysis,
 *          `compare.quantity-not-known`.
 */
export function anovaOf(all: readonly GroupedRun[], request: AnovaRequest): Anova {
  const { factors, quantity } = request;
  const runs = all.filter(({ facts }) => factors.every((factor) => levelsOf([facts], factor)[0] !== null));
  requireDesign(runs, factors);
  const { quantities, title } = quantityOfRuns(runs, request);
  const facts = runs.map((run) => run.facts);
  const axes = factors.map((factor) => axisOf(factor, levelsOf(facts, factor)));
  const logs = quantities.map(({ value }) => Math.log(value));
  const analysis = analysed(logs, axes);
  const cells = cellsOf(axes, logs, analysis);
  const anova = {
    ...{ factors, quantity, quantityTitle: title, quantityUnit: RUN_QUANTITIES[quantity].unit },
    design: designOf(cells),
    sumsOfSquares: "II" as const,
    withInteraction: analysis.interaction !== null,
    rows: rowsOf(factors, analysis),
    spread: Math.sqrt(analysis.residual.meanSquare),
    spreadDegreesOfFreedom: analysis.residual.degreesOfFreedom,
    cells,
    effects: effectsOf(axes, analysis),
  };
  return { ...anova, sentence: anovaSentence(anova), warnings: anovaWarnings({ all, runs, anova }) };
}

/** A factor with its levels and the level of every run. */
interface Axis {
  readonly factor: FactorName;
  readonly levels: readonly Level[];
  readonly index: readonly number[];
}

function axisOf(factor: FactorName, found: readonly (Level | null)[]): Axis {
  const levels = distinctLevels(found);
  return { factor, levels, index: found.map((level) => levels.indexOf(level!)) };
}

function requireDesign(runs: readonly GroupedRun[], factors: readonly FactorName[]): void {
  if (new Set(factors).size < factors.length)
    refuse(factors, "One factor was named twice", "Name two different factors");
  for (const factor of factors) {
    const levels = distinctLevels(
      levelsOf(
        runs.map(({ facts }) => facts),
        factor,
      ),
    );
    if (levels.length >= 2) continue;
    const { title } = FACTOR_WORDS[factor];
    const found = runs.length === 0 ? `No run states the ${title}` : `All runs that state it have one ${title}`;
    refuse(factors, found, `State the ${title} of runs that differ in it, or choose another factor`);
  }
}

function refuse(factors: readonly FactorName[], found: string, mend: string): never {
  throw new InputProblem({
    code: "compare.anova-design",
    where: factors.map((factor) => FACTOR_WORDS[factor].title).join(" and "),
    found,
    needed: "runs at two levels or more of each factor, and more runs than it takes to tell the levels apart",
    mend,
  });
}

function analysed(logs: readonly number[], axes: readonly Axis[]): AnalysisOfVariance {
  try {
    return analysisOfVariance(
      logs,
      axes.map(({ index }) => index),
    );
  } catch (thrown) {
    if (!(thrown instanceof OutOfDomain)) throw thrown;
    const { found, needed } = thrown.problem;
    return refuse(
      axes.map(({ factor }) => factor),
      `The runs show ${found}`,
      `What is needed is ${needed}: repeat a mounting, or run a missing combination`,
    );
  }
}

function rowsOf(
  factors: readonly FactorName[],
  { factors: tested, interaction, residual, total }: AnalysisOfVariance,
): AnovaRow[] {
  const titles = factors.map((factor) => FACTOR_WORDS[factor].title);
  const line = (source: string, kind: AnovaRow["kind"], row: TestedRow): AnovaRow => ({ source, kind, ...row });
  const untested = { F: null, pValue: null };
  return [
    ...tested.map((row, i) => line(titles[i]!, "factor", row)),
    ...(interaction === null ? [] : [line(titles.join(" × "), "interaction", interaction)]),
    { source: "residual, from mounting to mounting", kind: "residual", ...residual, ...untested },
    { source: "total", kind: "total", ...total, meanSquare: null, ...untested },
  ];
}

/** Every combination of levels with its geometric mean; one spread serves all cells. */
function cellsOf(axes: readonly Axis[], logs: readonly number[], { residual }: AnalysisOfVariance): Anova["cells"] {
  const [first, second] = axes as [Axis, Axis | undefined];
  const combinations = first.levels.flatMap((_, a) =>
    second ? second.levels.map((__, b) => [a, b] as const) : [[a, 0] as const],
  );
  return combinations.map(([a, b]) => {
    const own = logs.filter((_, i) => first.index[i] === a && (second === undefined || second.index[i] === b));
    const levels = [
      { factor: first.factor, level: first.levels[a]!.text },
      ...(second ? [{ factor: second.factor, level: second.levels[b]!.text }] : []),
    ];
    if (own.length === 0) return { levels, runs: 0, mean: null };
    const u = Math.sqrt(residual.meanSquare / own.length);
    return { levels, runs: own.length, mean: ofLogarithm(moments(own).mean, u, residual.degreesOfFreedom) };
  });
}

function ofLogarithm(logarithm: number, u: number, degreesOfFreedom: number) {
  const half = coverageFactor(degreesOfFreedom) * u;
  const value = Math.exp(logarithm);
  const interval95 = [Math.exp(logarithm - half), Math.exp(logarithm + half)] as const;
  return { value, standardUncertainty: value * u, interval95 };
}

function designOf(cells: Anova["cells"]): Anova["design"] {
  const counts = new Set(cells.map(({ runs }) => runs));
  if (counts.has(0)) return "emptyCells";
  return counts.size === 1 ? "balanced" : "unbalanced";
}

function effectsOf(axes: readonly Axis[], { effects, residual }: AnalysisOfVariance): Anova["effects"] {
  const { degreesOfFreedom } = residual;
  const found = axes.flatMap(({ factor, levels }, f) =>
    effects[f]!.map(({ value, standardError }, k) => ({
      ...{ factor, level: levels[k + 1]!.text, against: levels[0]!.text },
      ratio: ofLogarithm(value, standardError, degreesOfFreedom),
      pValue: twoSidedPValue(value / standardError, degreesOfFreedom),
    })),
  );
  const adjusted = holm(found.map(({ pValue }) => pValue));
  return found.map(({ pValue: _, ...effect }, i) => ({ ...effect, adjustedPValue: adjusted[i]! }));
}

import type { Trend, TrendRequest } from "../../model/trend.ts";
import { moments } from "../../numeric/moments.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { LEVEL } from "../comparisonSentence.ts";
import { otherFactors } from "../factors/confounding.ts";
import { factorTable } from "../factors/factorTable.ts";
import { FACTOR_WORDS } from "../factors/factorWords.data.ts";
import { distinctLevels, levelsOf, numberOf } from "../factors/levels.ts";
import { inWords } from "../inWords.ts";
import type { RunQuantity } from "../runQuantity.ts";
import { occurrences } from "../sideStatistics.ts";
import { type GroupedRun, quantityOfRuns, RUN_QUANTITIES } from "../studiedRuns.ts";
import { optimumOf } from "./optimum.ts";
import { type TrendFit, type TrendRun, trendFit } from "./trendFit.ts";
import { trendSentence } from "./trendSentence.ts";

const UNITS: { readonly [F in TrendRequest["factor"]]: string } = {
  pitchRatio: "1",
  bladeCount: "1",
  temperature: "K",
  ...{ diameter: "m", layerHeight: "m", roughness: "m", immersion: "m" },
};

/** Points of the band. */
const BAND = 41;

/**
 * A quantity of runs over a continuous factor: curve with its 95 % band, and the optimum or the plain answer that there is
 * none inside the range. See trendFit for the statistics.
 *
 * Throws   InputProblem `compare.trend-few-values` for fewer than two values or three runs, `compare.trend-order` where
 *          the stated order asks for more, `compare.trend-scale` for a logarithmic scale of a value not above 0,
 *          `compare.quantity-not-known`.
 */
export function trendOf(all: readonly GroupedRun[], request: TrendRequest): Trend {
  const runs = all.filter(({ facts }) => numberOf(facts, request.factor) !== undefined);
  const values = runs.map(({ facts }) => numberOf(facts, request.factor)!);
  requireRuns(values, request);
  const { quantities, title } = quantityOfRuns(runs, request);
  const axis = axisOf(values, request.scale);
  const doubts = ownAndShared(quantities);
  const facts = runs.map((run) => run.facts);
  const levels = levelsOf(facts, request.factor);
  const numbers = distinctLevels(levels);
  requireOrder(numbers.length, runs.length, request);
  const points: TrendRun[] = quantities.map((one, i) => ({
    x: axis.toScale(values[i]!),
    y: Math.log(one.value),
    own: doubts.own[i]!,
    level: numbers.indexOf(levels[i]!),
  }));
  const found = trendFit(points, request.order as 1 | 2 | undefined);
  const trend = {
    ...namesOf(request, title),
    points: runs.map(({ facts: { name }, variant }, i) => ({
      ...{ run: name, variant, x: values[i]!, value: quantities[i]!.value },
      standardUncertainty: quantities[i]!.value * doubts.own[i]!,
      residual: Math.expm1(points[i]!.y - found.fit.at(points[i]!.x)),
    })),
    ...{ order: found.order, orderBecause: found.orderBecause, criteria: found.criteria },
    ...{ lackOfFit: found.lackOfFit, slopePValue: found.slopePValue, degreesOfFreedom: found.degreesOfFreedom },
    scatter: scatterOf(points, found),
    band: bandOf(found, points, axis.toFactor),
    change: changeOf(found, points),
    sharedUncertainty: doubts.shared,
    optimum: optimumOf({ found, ...axis, range: [Math.min(...values), Math.max(...values)] }),
  };
  return { ...trend, sentence: trendSentence(trend), warnings: warningsOf(all, runs, trend) };
}

function namesOf({ factor, quantity, scale }: TrendRequest, quantityTitle: string) {
  const { title } = FACTOR_WORDS[factor];
  const ofFactor = { factor, factorTitle: title, factorUnit: UNITS[factor] };
  return { ...ofFactor, quantity, quantityTitle, quantityUnit: RUN_QUANTITIES[quantity].unit, scale };
}

/** The scale of the curve: the factor or its logarithm, the mean taken off so that powers of it stay apart. */
function axisOf(values: readonly number[], scale: TrendRequest["scale"]) {
  const isLog = scale === "logarithmic";
  const plain = (value: number) => (isLog ? Math.log(value) : value);
  const middle = moments(values.map(plain)).mean;
  const toFactor = (x: number) => (isLog ? Math.exp(x + middle) : x + middle);
  return {
    toScale: (value: number) => plain(value) - middle,
    toFactor,
    factorPer: (x: number) => (isLog ? toFactor(x) : 1),
  };
}

/** Relative doubt that is a run's own, and the root sum of squares of causes that every run shares. */
function ownAndShared(quantities: readonly RunQuantity[]) {
  const counts = occurrences(quantities);
  const isShared = (key: string) => counts.get(key) === quantities.length;
  const own = quantities.map(({ independent, common }) =>
    Math.hypot(independent, ...[...common].map(([key, effect]) => (isShared(key) ? 0 : effect))),
  );
  const shared = [...counts.keys()]
    .filter(isShared)
    .map((key) => moments(quantities.map(({ common }) => common.get(key)!)).mean);
  return { own, shared: Math.hypot(...shared) };
}

/** Relative standard deviation of the runs about the curve. */
function scatterOf(runs: readonly TrendRun[], { fit }: TrendFit): number {
  const squares = runs.reduce((sum, { x, y }) => sum + (y - fit.at(x)) ** 2, 0);
  return Math.sqrt(squares / fit.degreesOfFreedom);
}

/** From the lowest to the highest end of the curves that may be the true one. */
function bandOf({ fit, candidates }: TrendFit, runs: readonly TrendRun[], toFactor: (x: number) => number) {
  const x = runs.map((run) => run.x);
  const [low, high] = [Math.min(...x), Math.max(...x)];
  return Array.from({ length: BAND }, (_, i) => {
    const at = low + ((high - low) * i) / (BAND - 1);
    const ends = (sign: 1 | -1) => candidates.map((one) => one.fit.at(at) + sign * one.half(at));
    const interval95 = [Math.exp(Math.min(...ends(-1))), Math.exp(Math.max(...ends(1)))] as const;
    return { x: toFactor(at), value: Math.exp(fit.at(at)), interval95 };
  });
}

/** Factor of the curve from its one end to the other, with the outermost ends of the curves that may be the true one. */
function changeOf({ fit, candidates }: TrendFit, runs: readonly TrendRun[]): Trend["change"] {
  const x = runs.map((run) => run.x);
  const [low, high] = [Math.min(...x), Math.max(...x)];
  const ends = (sign: 1 | -1) =>
    candidates.map((one) => one.fit.at(high) - one.fit.at(low) + sign * one.halfOfChange(low, high));
  const interval95 = [Math.exp(Math.min(...ends(-1))), Math.exp(Math.max(...ends(1)))] as const;
  return { value: Math.exp(fit.at(high) - fit.at(low)), interval95 };
}

function warningsOf(
  all: readonly GroupedRun[],
  runs: readonly GroupedRun[],
  { factor, factorTitle, lackOfFit }: Pick<Trend, "factor" | "factorTitle" | "lackOfFit">,
): Warning[] {
  const levels = levelsOf(
    runs.map(({ facts }) => facts),
    factor,
  );
  const variants = distinctLevels(levels).map((level) => ({
    name: level.text,
    runs: runs.filter((_, i) => levels[i] === level).map(({ facts }) => facts),
  }));
  const without = all.filter((run) => !runs.includes(run)).map(({ facts }) => facts.name);
  return [
    ...(without.length === 0 ? [] : [leftOut(without, factorTitle)]),
    ...(lackOfFit !== null && lackOfFit.pValue < LEVEL ? [lacking(factorTitle, lackOfFit.pValue)] : []),
    ...otherFactors(
      variants.map((variant) => variant.runs),
      [factor],
    ),
    ...factorTable(variants).warnings,
  ];
}

function leftOut(names: readonly string[], title: string): Warning {
  return warning({
    code: "compare.run-left-out",
    where: inWords(names),
    found: `The ${title} is not stated, so ${names.length === 1 ? "this run is" : "these runs are"} not in the trend`,
    needed: "",
    mend: `State the ${title}`,
  });
}

function lacking(title: string, pValue: number): Warning {
  return warning({
    code: "compare.lack-of-fit",
    where: title,
    found: `Runs of equal ${title} lie further from the curve than their own spread explains (chance makes it so in ${formatNumber(100 * pValue, 2)} of 100 cases)`,
    needed: "a curve that passes through the means",
    mend: "The band rests on the means then. The propellers differ in more than this factor, or the curve needs another shape",
  });
}

function requireRuns(values: readonly number[], { factor, scale }: TrendRequest): void {
  const { title } = FACTOR_WORDS[factor];
  const different = new Set(values).size;
  if (different < 2 || values.length < 3) {
    throw new InputProblem({
      code: "compare.trend-few-values",
      where: title,
      found: `${values.length} run${values.length === 1 ? " states" : "s state"} the ${title}, with ${different} different value${different === 1 ? "" : "s"}`,
      needed: "three runs with two values at least",
      mend: `State the ${title} of more propellers, or run more of them`,
    });
  }
  if (scale === "logarithmic" && values.some((value) => !(value > 0))) {
    throw new InputProblem({
      code: "compare.trend-scale",
      where: title,
      found: `One ${title} is not above 0`,
      needed: "values above 0 for a logarithmic scale",
      mend: "Choose the linear scale",
    });
  }
}

function requireOrder(values: number, runs: number, { factor, order }: TrendRequest): void {
  const needed = order ?? 1;
  if (values > needed && runs > needed + 1) return;
  throw new InputProblem({
    code: "compare.trend-order",
    where: FACTOR_WORDS[factor].title,
    found: `A curve of order ${needed} was asked for, over ${values} different values and ${runs} runs`,
    needed: `${needed + 1} values and ${needed + 2} runs`,
    mend: needed === 2 ? "Ask for order 1" : "Run another value",
  });
}

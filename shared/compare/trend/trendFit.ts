import type { Trend } from "../../model/trend.ts";
import { fUpperTail } from "../../numeric/fDistribution.ts";
import { correctedInformationCriterion } from "../../numeric/informationCriterion.ts";
import { moments } from "../../numeric/moments.ts";
import { type PolynomialFit, polynomialFit } from "../../numeric/polynomialFit.ts";
import { coverageFactor } from "../../quantity/uncertain.ts";
import { LEVEL } from "../comparisonSentence.ts";

export interface TrendRun {
  /** Factor in the scale of the curve, its mean taken off. */
  readonly x: number;
  /** Logarithm of the quantity. */
  readonly y: number;
  /** Relative standard uncertainty that the run does not share with all others. */
  readonly own: number;
  /** Runs of one number have one value of the factor. */
  readonly level: number;
}

/** A curve through runs with the scatter that its doubt rests on. */
export interface TrendFit {
  readonly order: 1 | 2;
  readonly orderBecause: Trend["orderBecause"];
  readonly criteria: Trend["criteria"];
  readonly fit: PolynomialFit;
  /** Doubt each run was weighed with. */
  readonly uncertainties: readonly number[];
  /** Factor on the covariance of the fit. */
  readonly scale: number;
  readonly degreesOfFreedom: number;
  readonly lackOfFit: Trend["lackOfFit"];
  readonly slopePValue: number;
  /** Each curve that may be the true one: the one chosen first. */
  readonly candidates: readonly TrendCurve[];
}

/** A curve that may be the true one. */
export interface TrendCurve {
  readonly fit: PolynomialFit;
  /** Half the width of the 95 % interval about it. */
  readonly half: (x: number) => number;
  /** The same of its change from one place to another. */
  readonly halfOfChange: (from: number, to: number) => number;
}

/**
 * Polynomial of order 1 or 2 of the logarithms over the factor, each run weighed by what is its own in its doubt and by the
 * spread of runs of equal factor beyond that. Where no order is stated the corrected information criterion decides.
 *
 * The doubt of the curve rests on the scatter of the runs about it (not less than their own doubt explains); where means of
 * equal factor lie further from the curve than re-mounting explains (lack of fit), on these means, since mountings of one
 * propeller are then no independent witnesses of the curve. Where a line was chosen by the criterion, the band also takes in
 * that of the curve with a bend.
 *
 * Source   weighted least squares; lack of fit Draper & Smith, Applied Regression Analysis (3rd ed. 1998), 2.1; order
 *          Hurvich & Tsai, Biometrika 76 (1989) 297.
 * Range    two values of the factor and three runs at least; for order 2 three values and four runs.
 */
export function trendFit(runs: readonly TrendRun[], statedOrder: 1 | 2 | undefined): TrendFit {
  const uncertainties = weighingUncertainties(runs);
  const fits = new Map<number, PolynomialFit>();
  // Criterion, curve and test ask for the same few.
  const fitOf = (order: number): PolynomialFit => {
    const fit = fits.get(order) ?? polynomialFit(dataOf(runs, uncertainties, order));
    fits.set(order, fit);
    return fit;
  };
  const criteria = criteriaOf(runs, fitOf);
  const { order, orderBecause } = chosenOrder(criteria, statedOrder);
  const fit = fitOf(order);
  const { scale, degreesOfFreedom, lack } = scatterOf(runs, uncertainties, fit);
  // That the bend did not earn its coefficient does not say that there is none: a band of the line alone would hold the
  // true curve far less often than it claims.
  const withBend = orderBecause === "criterion" && order === 1 ? [fitOf(2)] : [];
  return {
    ...{ order, orderBecause, criteria, fit, uncertainties, scale, degreesOfFreedom },
    lackOfFit: lack?.test ?? null,
    candidates: [fit, ...withBend].map((one) => curveOf(one, scatterOf(runs, uncertainties, one))),
    // Of the fullest curve that was tried: had the order been picked first, chance would look like a trend too often.
    slopePValue: curvePValue(runs, uncertainties, [fitOf(0), orderBecause === "criterion" ? fitOf(2) : fit]),
  };
}

function curveOf(
  fit: PolynomialFit,
  { scale, degreesOfFreedom }: { scale: number; degreesOfFreedom: number },
): TrendCurve {
  const factor = coverageFactor(degreesOfFreedom) * Math.sqrt(scale);
  return {
    fit,
    half: (x) => factor * fit.standardErrorAt(x),
    halfOfChange: (from, to) => factor * standardErrorOfChange(fit, from, to),
  };
}

/** Of p(to) - p(from), whose constants cancel: u² = d' V d with d_k = to^k - from^k. */
function standardErrorOfChange({ covariance }: PolynomialFit, from: number, to: number): number {
  const d = covariance.map((_, k) => to ** k - from ** k);
  const products = covariance.flatMap((row, i) => row.map((of, j) => d[i]! * of * d[j]!));
  // Rounding may leave next to nothing below 0.
  return Math.sqrt(
    Math.max(
      0,
      products.reduce((sum, one) => sum + one, 0),
    ),
  );
}

/** Variance factor that the doubt of a curve rests on, with its degrees of freedom, and the test for lack of fit. */
function scatterOf(runs: readonly TrendRun[], uncertainties: readonly number[], fit: PolynomialFit) {
  const lack = lackOfFit(runs, uncertainties, fit);
  const { chiSquared, degreesOfFreedom } = lack && lack.test.pValue < LEVEL ? lack.means : fit;
  const least = moments(runs.map(({ own }) => own ** 2)).mean / moments(uncertainties.map((u) => u ** 2)).mean;
  return { scale: Math.max(chiSquared / degreesOfFreedom, least), degreesOfFreedom, lack };
}

/** Chance of a curve so far from level where the factor does nothing. */
function curvePValue(
  runs: readonly TrendRun[],
  uncertainties: readonly number[],
  [level, curve]: readonly [PolynomialFit, PolynomialFit],
): number {
  const { scale, degreesOfFreedom } = scatterOf(runs, uncertainties, curve);
  const explained = Math.max(0, level.chiSquared - curve.chiSquared) / curve.order;
  if (scale === 0) return explained === 0 ? 1 : 0;
  return fUpperTail(explained / scale, [curve.order, degreesOfFreedom]);
}

function dataOf(runs: readonly TrendRun[], uncertaintyY: readonly number[], order: number) {
  return { x: runs.map(({ x }) => x), y: runs.map(({ y }) => y), uncertaintyY, order };
}

const levelsIn = (runs: readonly TrendRun[]) => [...new Set(runs.map(({ level }) => level))];

/** Own doubt and the spread between runs of equal factor that it does not explain; ones where neither is there. */
function weighingUncertainties(runs: readonly TrendRun[]): number[] {
  const groups = levelsIn(runs).map((level) => moments(runs.filter((run) => run.level === level).map(({ y }) => y)));
  const degrees = groups.reduce((sum, { count }) => sum + count - 1, 0);
  const pure = groups.reduce((sum, { count, variance }) => sum + (count - 1) * variance, 0);
  const own = moments(runs.map((run) => run.own ** 2)).mean;
  const between = degrees > 0 ? Math.max(0, pure / degrees - own) : 0;
  const uncertainties = runs.map((run) => Math.sqrt(run.own ** 2 + between));
  return uncertainties.every((u) => u > 0) ? uncertainties : runs.map(() => 1);
}

function criteriaOf(runs: readonly TrendRun[], fitOf: (order: number) => PolynomialFit): Trend["criteria"] {
  const values = levelsIn(runs).length;
  return [0, 1, 2].flatMap((order) => {
    const coefficients = order + 1;
    // The criterion counts the variance as one more unknown, and needs a point more than that.
    if (values < coefficients || runs.length <= coefficients + 2) return [];
    const { chiSquared } = fitOf(order);
    const correctedCriterion = correctedInformationCriterion({ chiSquared, points: runs.length, coefficients });
    return [{ order, correctedCriterion }];
  });
}

function chosenOrder(criteria: Trend["criteria"], stated: 1 | 2 | undefined): Pick<TrendFit, "order" | "orderBecause"> {
  if (stated !== undefined) return { order: stated, orderBecause: "stated" };
  const of = (order: number) => criteria.find((one) => one.order === order)?.correctedCriterion;
  const [line, bend] = [of(1), of(2)];
  if (line === undefined || bend === undefined) return { order: 1, orderBecause: "fewValues" };
  return { order: bend < line ? 2 : 1, orderBecause: "criterion" };
}

/** Means of equal factor against the curve; null without repeats, or where the curve passes through all means. */
function lackOfFit(runs: readonly TrendRun[], uncertainties: readonly number[], { chiSquared, order }: PolynomialFit) {
  const levels = levelsIn(runs);
  const below = runs.length - levels.length;
  const above = levels.length - order - 1;
  if (below === 0 || above <= 0) return null;
  const pure = levels.reduce((sum, level) => {
    const own = runs.flatMap((run, i) => (run.level === level ? [{ y: run.y, w: uncertainties[i]! ** -2 }] : []));
    const mean = own.reduce((total, { y, w }) => total + w * y, 0) / own.reduce((total, { w }) => total + w, 0);
    return sum + own.reduce((total, { y, w }) => total + w * (y - mean) ** 2, 0);
  }, 0);
  if (!(pure > 0)) return null;
  const means = { chiSquared: Math.max(0, chiSquared - pure), degreesOfFreedom: above };
  const F = means.chiSquared / above / (pure / below);
  return { means, test: { F, degreesOfFreedom: [above, below] as const, pValue: fUpperTail(F, [above, below]) } };
}

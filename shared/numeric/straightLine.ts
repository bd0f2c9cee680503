import { OutOfDomain } from "../quantity/problem.ts";
import { type CheckedLineData, checkedLineData, type LineData } from "./lineData.ts";

export interface StraightLine {
  /** a in y = a + b x, unit of y. */
  readonly intercept: number;
  /** b, unit of y over unit of x. */
  readonly slope: number;
  readonly interceptStandardError: number;
  readonly slopeStandardError: number;
  /** Covariance of intercept and slope. */
  readonly covariance: number;
  /** Weighted sum of squared residuals; without uncertainties in the squared unit of y. */
  readonly chiSquared: number;
  /** Points less two. */
  readonly degreesOfFreedom: number;
  /** False if the slope still moved after the last step; only doubt in x needs steps. */
  readonly converged: boolean;
}

const MAXIMUM_STEPS = 200;
const RELATIVE_TOLERANCE = 1e-14;

/**
 * Straight line y = a + b x. Standard errors come from the given uncertainties; where none are given, from the scatter.
 * With doubt in x it is York's line, least in Σ (y - a - b x)² / (u_y² + b² u_x²).
 *
 * Everything is reckoned from the weighted mean of the points: sums of raw squares lose the digits that the NIST
 * Norris set asks for.
 *
 * Source   York, Evensen, López Martínez & De Basabe Delgado, American Journal of Physics 72 (2004) 367, eqs 13.
 * Assumes  independent points and uncertainties.
 * Range    three points or more (two if uncertainties are given), not all at one x.
 * Error    NIST StRD Norris to 11 digits; Pearson's data with York's weights to 9.
 * Throws   OutOfDomain for other input.
 */
export function straightLine(data: LineData): StraightLine {
  const checked = checkedLineData(data, data.uncertaintyX || data.uncertaintyY ? 2 : 3);
  const { slope, converged } = yorkSlope(checked);
  const { weights, meanX, meanY, adjusted } = stateAt(checked, slope);
  const { x, y, weighted } = checked;

  const intercept = meanY - slope * meanX;
  const degreesOfFreedom = x.length - 2;
  const chiSquared = total(x.map((xi, i) => weights[i]! * (y[i]! - meanY - slope * (xi - meanX)) ** 2));
  const adjustedMean = weightedMean(adjusted, weights);
  const slopeVariance = 1 / total(adjusted.map((dx, i) => weights[i]! * (dx - adjustedMean) ** 2));
  // Mean of the adjusted points, where slope and level are not correlated.
  const lever = meanX + adjustedMean;
  const scale = weighted ? 1 : chiSquared / degreesOfFreedom;
  return {
    intercept,
    slope,
    interceptStandardError: Math.sqrt(scale * (1 / total(weights) + lever ** 2 * slopeVariance)),
    slopeStandardError: Math.sqrt(scale * slopeVariance),
    covariance: -scale * lever * slopeVariance,
    chiSquared,
    degreesOfFreedom,
    converged,
  };
}

function yorkSlope(checked: CheckedLineData): { slope: number; converged: boolean } {
  let slope = slopeFrom(checked, unweightedState(checked));
  const exact = checked.ux.every((u) => u === 0);
  for (let step = 0; step < (exact ? 1 : MAXIMUM_STEPS); step++) {
    const previous = slope;
    slope = slopeFrom(checked, stateAt(checked, previous));
    if (Math.abs(slope - previous) <= RELATIVE_TOLERANCE * Math.abs(slope)) return { slope, converged: true };
  }
  return { slope, converged: exact };
}

interface YorkState {
  readonly weights: readonly number[];
  readonly meanX: number;
  readonly meanY: number;
  /** York's β: adjusted x from the mean x. */
  readonly adjusted: readonly number[];
}

function stateAt({ x, y, ux, uy }: CheckedLineData, b: number): YorkState {
  const weights = x.map((_, i) => 1 / (uy[i]! ** 2 + (b * ux[i]!) ** 2));
  const meanX = weightedMean(x, weights);
  const meanY = weightedMean(y, weights);
  const adjusted = x.map((xi, i) => weights[i]! * (uy[i]! ** 2 * (xi - meanX) + b * ux[i]! ** 2 * (y[i]! - meanY)));
  return { weights, meanX, meanY, adjusted };
}

function unweightedState({ x, y }: CheckedLineData): YorkState {
  const weights = x.map(() => 1);
  const meanX = weightedMean(x, weights);
  return { weights, meanX, meanY: weightedMean(y, weights), adjusted: x.map((xi) => xi - meanX) };
}

function slopeFrom({ x, y }: CheckedLineData, { weights, meanX, meanY, adjusted }: YorkState): number {
  const below = total(x.map((xi, i) => weights[i]! * adjusted[i]! * (xi - meanX)));
  if (below === 0) {
    throw new OutOfDomain({
      code: "numeric.line-data",
      found: "points that all lie at one x",
      needed: "points at two x or more",
      mend: "",
    });
  }
  return total(y.map((yi, i) => weights[i]! * adjusted[i]! * (yi - meanY))) / below;
}

function weightedMean(values: readonly number[], weights: readonly number[]): number {
  return total(values.map((value, i) => value * weights[i]!)) / total(weights);
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

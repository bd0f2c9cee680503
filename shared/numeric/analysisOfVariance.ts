import { Matrix, QrDecomposition } from "ml-matrix";
import { OutOfDomain } from "../quantity/problem.ts";
import { fUpperTail } from "./fDistribution.ts";
import { moments } from "./moments.ts";

/** One line of a table of variance. */
export interface VarianceRow {
  readonly degreesOfFreedom: number;
  readonly sumOfSquares: number;
}

/** A line that is tested against the residual. */
export interface TestedRow extends VarianceRow {
  readonly meanSquare: number;
  readonly F: number;
  readonly pValue: number;
}

export interface AnalysisOfVariance {
  /** In the order of the factors given. */
  readonly factors: readonly TestedRow[];
  /** Null for one factor, without repeats, or where empty cells leave it no degree of freedom. */
  readonly interaction: TestedRow | null;
  readonly residual: VarianceRow & { readonly meanSquare: number };
  readonly total: VarianceRow;
  /** Difference of each level from the first of its factor, the other factor allowed for, by the model without interaction. */
  readonly effects: readonly (readonly { readonly value: number; readonly standardError: number }[])[];
}

/**
 * Analysis of variance of `values` by one or two factors, each given as the level (from 0, none left out) of every value.
 * Sums of squares of type II: each factor after the other, the interaction after both, all tested against the residual of
 * the fullest model, so that unequal numbers in the cells do no harm. In a balanced design all types agree.
 *
 * Source   Searle, Linear Models for Unbalanced Data (1987), ch. 4; type II as Langsrud, Statistics and Computing 13
 *          (2003) 163. Checked against R 4.2.2 `aov`, NIST StRD and model comparison in numpy.
 * Range    levels that hang together: from any level to any other over values that share one. Where no cell holds two
 *          values, the interaction serves as residual.
 * Throws   OutOfDomain `numeric.anova` for other input, no degree of freedom left, or values without residual.
 */
export function analysisOfVariance(
  values: readonly number[],
  factors: readonly (readonly number[])[],
): AnalysisOfVariance {
  const { mean } = moments(values);
  const centred = values.map((value) => value - mean);
  const levels = factors.map(levelCount);
  const design = designOf(factors, levels);
  const additive = leastSquares(design, centred);
  const additiveDegrees = values.length - design.columns;
  const scale = centred.reduce((sum, value) => sum + value * value, 0);
  const residual = residualOf(centred, factors, {
    sumOfSquares: additive.sumOfSquares,
    degreesOfFreedom: additiveDegrees,
  });
  // Differences of rounding only would give an F out of nothing.
  if (!(residual.sumOfSquares > ROUNDING * scale)) refuse("values that do not differ inside the cells", "some spread");
  const tested = (sumOfSquares: number, degreesOfFreedom: number) =>
    testedRow({ sumOfSquares, degreesOfFreedom }, residual);
  const interactionDegrees = additiveDegrees - residual.degreesOfFreedom;
  return {
    factors: factors.map((_, f) => tested(withoutFactor(centred, factors, f) - additive.sumOfSquares, levels[f]! - 1)),
    interaction:
      interactionDegrees > 0 ? tested(additive.sumOfSquares - residual.sumOfSquares, interactionDegrees) : null,
    residual,
    total: { degreesOfFreedom: values.length - 1, sumOfSquares: scale },
    effects: effectsOf(additive, levels, Math.sqrt(residual.meanSquare)),
  };
}

/** Inside the cells where one of them holds two values, else what the model without interaction leaves. */
function residualOf(
  centred: readonly number[],
  factors: readonly (readonly number[])[],
  additive: VarianceRow,
): AnalysisOfVariance["residual"] {
  const [first, second] = factors;
  const cells = centred.map((_, i) => `${first![i]} ${second?.[i] ?? ""}`);
  const count = new Set(cells).size;
  const row =
    second !== undefined && count < centred.length
      ? { sumOfSquares: withinGroups(centred, cells), degreesOfFreedom: centred.length - count }
      : additive;
  return { ...row, meanSquare: row.sumOfSquares / requireDegrees(row.degreesOfFreedom) };
}

/** Part of the total sum of squares below which a residual is rounding. */
const ROUNDING = 1e-20;

/** Sum of squares that is left when one factor is not in the model. */
function withoutFactor(centred: readonly number[], factors: readonly (readonly number[])[], factor: number): number {
  const all = centred.map(() => 0);
  return withinGroups(centred, factors[1 - factor] ?? all);
}

function testedRow(
  { degreesOfFreedom, sumOfSquares }: VarianceRow,
  residual: { meanSquare: number; degreesOfFreedom: number },
) {
  const kept = Math.max(0, sumOfSquares);
  const meanSquare = kept / degreesOfFreedom;
  const F = meanSquare / residual.meanSquare;
  const pValue = fUpperTail(F, [degreesOfFreedom, residual.degreesOfFreedom]);
  return { degreesOfFreedom, sumOfSquares: kept, meanSquare, F, pValue };
}

/** Sum of squared distances from the mean of each group. */
function withinGroups(values: readonly number[], groups: readonly (number | string)[]): number {
  let sum = 0;
  for (const group of new Set(groups)) {
    const { count, variance } = moments(values.filter((_, i) => groups[i] === group));
    sum += variance * (count - 1);
  }
  return sum;
}

/** One column of ones, and one for each level of a factor but its first. */
function designOf(factors: readonly (readonly number[])[], levels: readonly number[]): Matrix {
  const rows = factors[0]!.map((_, i) => [
    1,
    ...factors.flatMap((factor, f) =>
      Array.from({ length: levels[f]! - 1 }, (_, level) => Number(factor[i] === level + 1)),
    ),
  ]);
  return new Matrix(rows);
}

interface Solved {
  readonly coefficients: readonly number[];
  readonly sumOfSquares: number;
  /** Square roots of the diagonal of (XᵀX)⁻¹. */
  readonly unscaledErrors: readonly number[];
}

function leastSquares(design: Matrix, values: readonly number[]): Solved {
  if (design.rows < design.columns) requireDegrees(design.rows - design.columns);
  const qr = new QrDecomposition(design);
  const R = qr.upperTriangularMatrix;
  const least = Math.min(...R.diagonal().map(Math.abs));
  if (!(least > 1e-9)) refuse("levels that never meet", "runs that tie the levels of the two factors together");
  const y = Matrix.columnVector([...values]);
  const solution = qr.solve(y);
  const residuals = Matrix.sub(y, design.mmul(solution)).to1DArray();
  const spread = qr.solve(Matrix.eye(design.rows));
  return {
    coefficients: solution.to1DArray(),
    sumOfSquares: residuals.reduce((sum, r) => sum + r * r, 0),
    unscaledErrors: Array.from({ length: design.columns }, (_, k) => Math.hypot(...spread.getRow(k))),
  };
}

function effectsOf({ coefficients, unscaledErrors }: Solved, levels: readonly number[], spread: number) {
  let next = 1;
  return levels.map((count) =>
    Array.from({ length: count - 1 }, () => {
      const k = next++;
      return { value: coefficients[k]!, standardError: unscaledErrors[k]! * spread };
    }),
  );
}

function levelCount(factor: readonly number[]): number {
  const count = Math.max(...factor) + 1;
  if (count < 2 || new Set(factor).size !== count)
    refuse(`${new Set(factor).size} level`, "two levels or more, from 0");
  return count;
}

function requireDegrees(degreesOfFreedom: number): number {
  if (degreesOfFreedom > 0) return degreesOfFreedom;
  return refuse("as many levels as values, so that nothing is left to judge them by", "more values than levels");
}

function refuse(found: string, needed: string): never {
  throw new OutOfDomain({ code: "numeric.anova", found, needed, mend: "" });
}

import { inverse, Matrix, solve } from "ml-matrix";
import { OutOfDomain } from "../quantity/problem.ts";

export interface LeastSquaresProblem {
  /** Where the search starts. */
  readonly start: readonly number[];
  /** Typical size of each unknown, greater than 0: derivatives and convergence are measured by it. */
  readonly scales: readonly number[];
  /** Distances from the model in standard uncertainties; as many at every call. */
  readonly residuals: (unknowns: readonly number[]) => readonly number[];
}

export interface LeastSquaresFit {
  readonly solution: readonly number[];
  /** Inverse of JᵀJ: covariance of the unknowns where the residuals are in true standard uncertainties. */
  readonly covariance: readonly (readonly number[])[];
  readonly residuals: readonly number[];
  readonly chiSquared: number;
  /** Condition of JᵀJ in scaled unknowns: 1 is best; beyond some 1e12 the unknowns can not be told apart. */
  readonly condition: number;
  readonly converged: boolean;
  readonly steps: number;
}

const MAXIMUM_STEPS = 200;
/** Change of every unknown, in units of its scale, that ends the search. */
const TOLERANCE = 1e-11;
/** Step of the central differences in units of the scale: truncation (h²) and rounding (1e-16/h) balance near it. */
const DERIVATIVE_STEP = 1e-5;
const STIFFEST = 1e12;

/**
 * Least sum of squared residuals by Levenberg and Marquardt, with central differences.
 *
 *   (JᵀJ + λ diag JᵀJ) Δx = −Jᵀ r
 *
 * Source   Marquardt, Journal of the Society for Industrial and Applied Mathematics 11 (1963) 431.
 * Range    as many residuals as unknowns or more; a start in the valley of the least sum.
 * Error    NIST StRD Misra1a to 8 digits.
 * Throws   OutOfDomain where the residuals are not finite at the start, or leave an unknown without any influence.
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  const { scales, residuals } = problem;
  let x = [...problem.start];
  let r = residuals(x);
  let chiSquared = sumOfSquares(r);
  if (!Number.isFinite(chiSquared)) refuse("residuals that are not finite at the start", "a start inside the model");
  let damping = 1e-3;
  let converged = false;
  let steps = 0;
  while (!converged && steps < MAXIMUM_STEPS) {
    steps++;
    const { normal, gradient } = normalEquations(problem, x, r);
    const damped = normal.clone();
    for (let i = 0; i < x.length; i++) damped.set(i, i, normal.get(i, i) * (1 + damping));
    const change = solve(damped, gradient).to1DArray();
    const next = x.map((value, i) => value - change[i]! * scales[i]!);
    const nextResiduals = residuals(next);
    const nextChiSquared = sumOfSquares(nextResiduals);
    const small = change.every((one) => Math.abs(one) <= TOLERANCE);
    if (nextChiSquared <= chiSquared) {
      x = next;
      r = nextResiduals;
      chiSquared = nextChiSquared;
      damping = Math.max(damping / 10, 1e-12);
      converged = small;
    } else if (small || damping > 1e12) {
      // No smaller sum within rounding: this is the bottom.
      converged = true;
    } else damping *= 10;
  }
  const { normal } = normalEquations(problem, x, r);
  return { solution: x, residuals: r, chiSquared, converged, steps, ...covarianceOf(normal, scales) };
}

/** JᵀJ and Jᵀr with the unknowns counted in units of their scales. */
function normalEquations({ scales, residuals }: LeastSquaresProblem, x: readonly number[], r: readonly number[]) {
  const columns = x.map((value, i) => {
    const h = DERIVATIVE_STEP * scales[i]!;
    const above = residuals(x.map((other, j) => (j === i ? value + h : other)));
    const below = residuals(x.map((other, j) => (j === i ? value - h : other)));
    return above.map((one, k) => (one - below[k]!) / (2 * DERIVATIVE_STEP));
  });
  const J = new Matrix(columns).transpose();
  const normal = J.transpose().mmul(J);
  for (let i = 0; i < x.length; i++) {
    if (!(normal.get(i, i) > 0))
      refuse(`an unknown (number ${i}) on which no residual depends`, "one that the data tell");
  }
  return { normal, gradient: J.transpose().mmul(Matrix.columnVector([...r])) };
}

function covarianceOf(normal: Matrix, scales: readonly number[]) {
  const d = normal.diagonal().map(Math.sqrt);
  // With ones on the diagonal the condition tells how alike the unknowns act, whatever their sizes.
  const alike = new Matrix(normal.to2DArray().map((row, i) => row.map((one, j) => one / (d[i]! * d[j]!))));
  const inverted = inverse(alike, true);
  const condition = alike.norm() * inverted.norm();
  if (!(condition < STIFFEST)) refuse("unknowns that the data can not tell apart", "points that differ more");
  const covariance = inverted
    .to2DArray()
    .map((row, i) => row.map((one, j) => (one * scales[i]! * scales[j]!) / (d[i]! * d[j]!)));
  return { covariance, condition };
}

function sumOfSquares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

function refuse(found: string, needed: string): never {
  throw new OutOfDomain({ code: "numeric.least-squares", found, needed, mend: "" });
}

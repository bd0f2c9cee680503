import { autoregressiveRegression } from "../../numeric/autoregressiveRegression.ts";
import { leastSquares } from "../../numeric/leastSquares.ts";

export interface CorrelatedProblem {
  readonly measured: readonly number[];
  /** Whether a reading comes one step after the one before it; all false for a table, whose points are independent. */
  readonly follows: readonly boolean[];
  /** What the unknowns say that the readings are. */
  readonly model: (unknowns: readonly number[]) => readonly number[];
  readonly start: readonly number[];
  /** Typical size of each unknown, greater than 0. */
  readonly scales: readonly number[];
}

export interface CorrelatedFit {
  readonly solution: readonly number[];
  readonly standardErrors: readonly number[];
  /** Of the standard errors, from the independent readings that the samples are worth. */
  readonly degreesOfFreedom: number;
  /** Measured less model. */
  readonly residuals: readonly number[];
  readonly residualStandardDeviation: number;
  readonly autocorrelation: number;
  readonly effectiveSamples: number;
  readonly converged: boolean;
}

const MAXIMUM_STEPS = 30;
/** Change of an unknown, in units of its scale, that ends the search. */
const TOLERANCE = 1e-8;
/** Step of the central differences, in units of the scale. */
const DERIVATIVE_STEP = 1e-5;

/**
 * Unknowns of a model whose readings' errors hang together from sample to sample: plain least squares first, then the
 * model taken as straight at the solution and fitted with a first-order autoregression of the errors, again and again.
 * The larger of the two standard errors that the regression gives is used: one trusts the autoregression, one does not.
 *
 * Source   `numeric/autoregressiveRegression.ts`, `numeric/leastSquares.ts`.
 * Range    more readings than unknowns; a start in the valley of the least sum.
 * Throws   OutOfDomain where readings can not tell the unknowns.
 */
export function correlatedRegression(problem: CorrelatedProblem): CorrelatedFit {
  const { measured, follows, model, scales } = problem;
  const first = leastSquares({
    ...{ start: problem.start, scales },
    residuals: (unknowns) => model(unknowns).map((value, i) => measured[i]! - value),
  });
  let x: readonly number[] = first.solution;
  let converged = false;
  let fit = straightened(problem, x);
  for (let step = 0; !converged && step < MAXIMUM_STEPS; step++) {
    const next = fit.coefficients.map((change, k) => x[k]! + change * scales[k]!);
    converged = next.every((value, k) => Math.abs(value - x[k]!) <= TOLERANCE * scales[k]!);
    x = next;
    if (!converged) fit = straightened(problem, x);
  }
  const residuals = model(x).map((value, i) => measured[i]! - value);
  const { autocorrelation: rho } = fit;
  const count = measured.length;
  const squares = residuals.reduce((sum, r) => sum + r * r, 0);
  return {
    solution: x,
    standardErrors: fit.standardErrors.map((u, k) => Math.max(u, robust(fit, k, follows)) * scales[k]!),
    degreesOfFreedom: fit.degreesOfFreedom,
    residuals,
    residualStandardDeviation: Math.sqrt(squares / (count - x.length)),
    autocorrelation: rho,
    effectiveSamples: rho > 0 ? Math.max(1, (count * (1 - rho)) / (1 + rho)) : count,
    converged: converged && fit.converged,
  };
}

/** A table has no order, so that only a log has errors that hang together. */
function robust(fit: ReturnType<typeof straightened>, k: number, follows: readonly boolean[]): number {
  return follows.some(Boolean) ? fit.robustStandardErrors[k]! : 0;
}

/** The regression of what the model leaves on its derivatives, unknowns counted in their scales. */
function straightened({ measured, follows, model, scales }: CorrelatedProblem, x: readonly number[]) {
  const at = model(x);
  const columns = x.map((value, k) => {
    const h = DERIVATIVE_STEP * scales[k]!;
    const above = model(x.map((other, j) => (j === k ? value + h : other)));
    const below = model(x.map((other, j) => (j === k ? value - h : other)));
    return above.map((one, i) => (one - below[i]!) / (2 * DERIVATIVE_STEP));
  });
  return autoregressiveRegression({ y: measured.map((value, i) => value - at[i]!), columns, follows });
}

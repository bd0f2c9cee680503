import { Matrix, solve } from "ml-matrix";
import { OutOfDomain } from "../quantity/problem.ts";

export interface BoxedProblem {
  readonly start: readonly number[];
  /** Least value of each unknown. */ readonly low: readonly number[];
  /** Greatest value of each unknown. */ readonly high: readonly number[];
  /** Distances from the model in standard uncertainties; not finite where the model has no answer. */
  readonly residuals: (unknowns: readonly number[]) => readonly number[];
}

export interface BoxedFit {
  readonly solution: readonly number[];
  /** ∂residual/∂unknown at the solution, a row for each residual. */
  readonly jacobian: readonly (readonly number[])[];
  readonly chiSquared: number;
  /** Bound at which an unknown is held because the sum would fall beyond it. */
  readonly heldAt: readonly ("low" | "high" | null)[];
  readonly converged: boolean;
  readonly steps: number;
}

const MAXIMUM_STEPS = 60;
/** Change of every unknown, as a part of its range, that ends the search. */
const TOLERANCE = 1e-9;
/** Step of the differences as a part of the range. */
const DERIVATIVE_STEP = 1e-5;

/**
 * Least sum of squared residuals of unknowns that have bounds: Levenberg and Marquardt's damped steps over the unknowns that
 * are free, each step cut at the bounds. An unknown is held where it stands at a bound and the sum falls beyond.
 *
 * Source   Marquardt, Journal of the Society for Industrial and Applied Mathematics 11 (1963) 431; projection on bounds as
 *          in Kelley, Iterative Methods for Optimization (1999), ch. 5.
 * Range    low < high; at least as many residuals as unknowns; one valley inside the box.
 * Throws   OutOfDomain `numeric.least-squares` where the residuals are not finite at the start.
 */
export function boxedLeastSquares(problem: BoxedProblem): BoxedFit {
  const { low, high, residuals } = problem;
  const ranges = low.map((bound, i) => high[i]! - bound);
  let x = problem.start.map((value, i) => Math.min(high[i]!, Math.max(low[i]!, value)));
  let r = residuals(x);
  let chiSquared = sumOfSquares(r);
  if (!Number.isFinite(chiSquared)) throw noStart();
  let damping = 1e-4;
  for (let steps = 0; ; steps++) {
    const J = jacobianAt(problem, x, r);
    const gradient = J.transpose()
      .mmul(Matrix.columnVector([...r]))
      .to1DArray();
    const heldAt = x.map((value, i) => heldSide(value, low[i]!, high[i]!, gradient[i]!));
    const free = x.map((_, i) => i).filter((i) => heldAt[i] === null);
    const finished = (converged: boolean) => ({
      solution: x,
      jacobian: J.to2DArray(),
      chiSquared,
      heldAt,
      converged,
      steps,
    });
    if (free.length === 0) return finished(true);
    if (steps === MAXIMUM_STEPS) return finished(false);
    for (;;) {
      const change = dampedStep(J, gradient, free, damping);
      const next = x.map((value, i) => Math.min(high[i]!, Math.max(low[i]!, value - change[i]!)));
      const nextResiduals = residuals(next);
      const nextChiSquared = sumOfSquares(nextResiduals);
      const small = next.every((value, i) => Math.abs(value - x[i]!) <= TOLERANCE * ranges[i]!);
      if (nextChiSquared <= chiSquared) {
        [x, r, chiSquared] = [next, nextResiduals, nextChiSquared];
        damping = Math.max(damping / 10, 1e-12);
        if (small) return finished(true);
        break;
      }
      // No smaller sum within rounding: this is the bottom.
      if (small) return finished(true);
      damping *= 10;
      if (damping > 1e15) return finished(false);
    }
  }
}

function heldSide(value: number, low: number, high: number, gradient: number): "low" | "high" | null {
  if (value <= low && gradient > 0) return "low";
  return value >= high && gradient < 0 ? "high" : null;
}

/** Central differences, one-sided at a bound or where the model has no answer on one side. */
function jacobianAt({ low, high, residuals }: BoxedProblem, x: readonly number[], r: readonly number[]): Matrix {
  const columns = x.map((value, i) => {
    const step = DERIVATIVE_STEP * (high[i]! - low[i]!);
    const at = (moved: number) => residuals(x.map((other, j) => (j === i ? moved : other)));
    const sides = [Math.min(high[i]!, value + step), Math.max(low[i]!, value - step)] as const;
    const [above, below] = sides.map((side) => (side === value ? r : at(side))) as [
      readonly number[],
      readonly number[],
    ];
    const usable = (side: readonly number[]) => side.every(Number.isFinite);
    const [up, upAt] = usable(above) ? [above, sides[0]] : [r, value];
    const [down, downAt] = usable(below) ? [below, sides[1]] : [r, value];
    return up.map((one, k) => (upAt === downAt ? 0 : (one - down[k]!) / (upAt - downAt)));
  });
  return new Matrix(columns).transpose();
}

function dampedStep(J: Matrix, gradient: readonly number[], free: readonly number[], damping: number): number[] {
  const part = J.subMatrixColumn([...free]);
  const normal = part.transpose().mmul(part);
  for (let i = 0; i < free.length; i++) normal.set(i, i, normal.get(i, i) * (1 + damping) || 1);
  const change = solve(normal, Matrix.columnVector(free.map((i) => gradient[i]!)), true).to1DArray();
  return gradient.map((_, i) => change[free.indexOf(i)] ?? 0);
}

function sumOfSquares(values: readonly number[]): number {
  const sum = values.reduce((total, value) => total + value * value, 0);
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY;
}

function noStart(): OutOfDomain {
  return new OutOfDomain({
    code: "numeric.least-squares",
    found: "residuals that are not finite at the start",
    needed: "a start inside the model",
    mend: "",
  });
}

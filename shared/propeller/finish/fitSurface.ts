import { CholeskyDecomposition, inverse, Matrix, solve } from "ml-matrix";
import { boxedLeastSquares } from "../../numeric/boxedLeastSquares.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { laminarFloor } from "../section/laminarFloor.ts";
import type { BladeAnswer, BladeResponse } from "./bladeResponse.ts";

/** Lift of a section over that of a clean one, as far as a surface can change it; common practice, no source. */
export const LIFT_FACTOR_BOUNDS = [0.2, 1.3] as const;
/** Drag of a section over that of a smooth one, as far as anything still like a blade has. Common practice, no source. */
const GREATEST_DRAG_FACTOR = 12;

/** 95 % point of chi squared with one degree of freedom: a bound that costs more is one the measurement wants broken. */
const BOUND_REFUSED = 3.841;

export interface SurfaceToFit {
  readonly response: BladeResponse;
  /** K_T and K_Q of each point in turn. */ readonly measured: readonly number[];
  /** Their covariance. */ readonly covariance: readonly (readonly number[])[];
  /** Covariance of their differences from blade elements, which may be off themselves. */
  readonly differences: readonly (readonly number[])[];
  /** Where to start; a clean smooth section if absent. */ readonly start?: SurfaceUnknowns;
}

export interface SurfaceUnknowns {
  readonly liftFactor: number;
  readonly dragFactor: number;
}

export type BrokenBound = "liftTooLow" | "liftTooHigh" | "dragTooLow" | "dragTooHigh";

export interface FittedSurface extends SurfaceUnknowns {
  readonly state: "fitted";
  /** ∂(liftFactor, dragFactor)/∂measured. */ readonly sensitivities: readonly (readonly number[])[];
  readonly answer: BladeAnswer;
  readonly chiSquared: number;
  readonly degreesOfFreedom: number;
  readonly heldAt: BrokenBound | null;
  /** Drag factor of two laminar sides: none is below. */ readonly leastDragFactor: number;
  /** The unknowns as if that bound were none, in a straight line from where it holds: what intervals start from. */
  readonly unheld: SurfaceUnknowns;
  readonly converged: boolean;
  readonly steps: number;
}

export type SurfaceFit =
  | FittedSurface
  | (SurfaceUnknowns & {
      readonly state: "outOfReach";
      readonly bound: BrokenBound;
      readonly answer: BladeAnswer;
      readonly chiSquared: number;
    })
  | { readonly state: "failed"; readonly reason: string };

/**
 * Lift factor and drag factor of a blade's sections from measured thrust and torque coefficients: the surface with which
 * blade elements make what was measured. One point tells both exactly; more are fitted by weighted least squares.
 *
 *   K_T(k_L, k_D) = K_T measured,   K_Q(k_L, k_D) = K_Q measured      the drag factor on that of the smooth section
 *
 * Source   generalised least squares with the covariance of the measurement, JCGM 102:2011; solver `boxedLeastSquares`.
 * Assumes  lift and drag change by one factor each along the blade; geometry, density and diameter are right.
 * Range    lift factor 0.2 to 1.3, drag not below that of two laminar sides. Where the measurement lies outside, the
 *          nearest surface inside is given, and which bound is in the way.
 * Throws   InputProblem `propeller.correlated-beyond` for a covariance that no errors have.
 */
export function fitSurface({ response, measured, covariance, differences, start }: SurfaceToFit): SurfaceFit {
  const at = (liftFactor: number, dragFactor: number) => response({ roughness: 0, liftFactor, dragFactor });
  const clean = at(1, 1);
  if (clean === null) return { state: "failed", reason: "Blade elements find no solution for a clean, smooth blade" };
  const lower = lowerFactor(covariance);
  const distances = (answer: BladeAnswer | null, factor: Matrix) => {
    if (answer === null) return measured.map(() => Number.NaN);
    const off = coefficientsOf(answer).map((one, i) => one - measured[i]!);
    return solve(factor, Matrix.columnVector(off)).to1DArray();
  };
  const leastDrag = laminarFloor(clean.reynolds) / clean.sectionDrag;
  const fit = boxedLeastSquares({
    start: [start?.liftFactor ?? 1, start?.dragFactor ?? 1],
    low: [LIFT_FACTOR_BOUNDS[0], leastDrag],
    high: [LIFT_FACTOR_BOUNDS[1], GREATEST_DRAG_FACTOR],
    residuals: ([lift, drag]) => distances(at(lift!, drag!), lower),
  });
  const [liftFactor, dragFactor] = fit.solution as [number, number];
  const answer = at(liftFactor, dragFactor);
  if (answer === null || !fit.converged) {
    return { state: "failed", reason: `No solution was found in ${fit.steps} steps` };
  }
  const degreesOfFreedom = measured.length - 2;
  const heldAt = brokenBound(fit.heldAt);
  const found = { liftFactor, dragFactor, answer, chiSquared: fit.chiSquared };
  // Of an exact fit nothing is left over; what a bound leaves over, beyond what blade elements may be off, it costs.
  const left = distances(answer, lowerFactor(differences)).reduce((sum, one) => sum + one * one, 0);
  if (heldAt !== null && left - degreesOfFreedom > BOUND_REFUSED) {
    return { state: "outOfReach", bound: heldAt, ...found };
  }
  const sensitivities = sensitivitiesOf(fit.jacobian, lower);
  return {
    state: "fitted",
    ...found,
    sensitivities,
    degreesOfFreedom,
    heldAt,
    leastDragFactor: leastDrag,
    unheld: heldAt === "dragTooLow" ? beyondBound(found, sensitivities, measured) : { liftFactor, dragFactor },
    converged: fit.converged,
    steps: fit.steps,
  };
}

const coefficientsOf = ({ points }: BladeAnswer) =>
  points.flatMap(({ thrustCoefficient, torqueCoefficient }) => [thrustCoefficient, torqueCoefficient]);

/** L of V = L Lᵀ. */
function lowerFactor(covariance: readonly (readonly number[])[]): Matrix {
  const decomposed = new CholeskyDecomposition(new Matrix(covariance.map((row) => [...row])));
  if (decomposed.isPositiveDefinite()) return decomposed.lowerTriangularMatrix;
  throw new InputProblem({
    code: "propeller.correlated-beyond",
    where: "measured",
    found: "The stated correlation and common parts together are more than the errors can share",
    needed: "a correlation and common parts that leave each number some error of its own",
    mend: "Lower the correlation or the common uncertainties",
  });
}

/** δp = (JᵀJ)⁻¹ Jᵀ L⁻¹ δK, both unknowns free: a bound that happens to hold one takes nothing from its doubt. */
function sensitivitiesOf(jacobian: readonly (readonly number[])[], lower: Matrix): number[][] {
  const J = new Matrix(jacobian.map((row) => [...row]));
  const C = inverse(J.transpose().mmul(J), true);
  return C.mmul(J.transpose()).mmul(inverse(lower)).to2DArray();
}

/** k + S (K measured - K of the bound). */
function beyondBound(
  { liftFactor, dragFactor, answer }: SurfaceUnknowns & { readonly answer: BladeAnswer },
  sensitivities: readonly (readonly number[])[],
  measured: readonly number[],
): SurfaceUnknowns {
  const computed = coefficientsOf(answer);
  const step = sensitivities.map((row) => row.reduce((sum, one, i) => sum + one * (measured[i]! - computed[i]!), 0));
  return { liftFactor: liftFactor + step[0]!, dragFactor: dragFactor + step[1]! };
}

function brokenBound([lift, drag]: readonly ("low" | "high" | null)[]): BrokenBound | null {
  if (lift === "low") return "liftTooLow";
  if (lift === "high") return "liftTooHigh";
  if (drag === "low") return "dragTooLow";
  return drag === "high" ? "dragTooHigh" : null;
}

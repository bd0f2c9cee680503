import { OutOfDomain } from "../quantity/problem.ts";
import { checkedLineData, type LineData } from "./lineData.ts";

export interface LineThroughOrigin {
  /** b in y = b x, unit of y over unit of x. */
  readonly slope: number;
  /** Standard error of the slope that the points' own scatter shows; null for a single point. */
  readonly standardErrorFromScatter: number | null;
  /** Standard error that the given uncertainties promise; null where none were given. */
  readonly standardErrorFromUncertainty: number | null;
  /** sqrt(chiSquared / degreesOfFreedom); null for a single point. In standard uncertainties (1 is expected) where
   * uncertainties were given, else in the unit of y. */
  readonly residualStandardDeviation: number | null;
  /** Weighted sum of squared residuals; without uncertainties in the squared unit of y. */
  readonly chiSquared: number;
  /** Points less one. */
  readonly degreesOfFreedom: number;
  /** y - b x in standard uncertainties; without uncertainties in residual standard deviations. */
  readonly residuals: readonly number[];
  /** False if the slope still moved after the last step; only doubt in x needs steps. */
  readonly converged: boolean;
}

const MAXIMUM_STEPS = 100;
/** Relative change of the slope that ends the iteration: a few units in the last place of a double. */
const RELATIVE_TOLERANCE = 1e-14;

/**
 * Weighted line through the origin, y = b x, with doubt in y and, if given, in x (independent of each other).
 *
 *   least  Σ (y - b x)² / (u_y² + b² u_x²);   u(b) = 1 / sqrt(Σ X² / (u_y² + b² u_x²)),   X the adjusted x
 *
 * Source   weighted least squares; doubt in both as York, Evensen, López Martínez & De Basabe Delgado,
 *          American Journal of Physics 72 (2004) 367, with the intercept held at zero.
 * Assumes  independent points; uncertainties that are true standard uncertainties.
 * Range    one point or more, not all at x = 0. Every point needs a doubt in x or y if any has one.
 * Error    NIST StRD NoInt1 and NoInt2 to 12 digits.
 * Throws   OutOfDomain for other input.
 */
export function lineThroughOrigin(data: LineData): LineThroughOrigin {
  const { x, y, ux, uy, weighted } = checkedLineData(data, 1);
  if (!x.some((value) => value !== 0)) {
    throw new OutOfDomain({ found: "points that all lie at x = 0", needed: "a point away from 0", mend: "" });
  }
  const weightsAt = (b: number) => x.map((_, i) => 1 / (uy[i]! ** 2 + (b * ux[i]!) ** 2));
  // Doubt in x alone leaves the weights undefined until a slope is known: the first slope is the unweighted one.
  const start = slopeOf(x, y, x, uy.some((u) => u === 0) ? x.map(() => 1) : weightsAt(0));
  const { slope, weights, adjusted, converged } = iterate({ x, y, ux }, weightsAt, start);

  const information = sumOf(x, (_, i) => weights[i]! * adjusted[i]! ** 2);
  const distances = x.map((xi, i) => (y[i]! - slope * xi) * Math.sqrt(weights[i]!));
  const chiSquared = sumOf(distances, (distance) => distance * distance);
  const degreesOfFreedom = x.length - 1;
  const residualStandardDeviation = degreesOfFreedom > 0 ? Math.sqrt(chiSquared / degreesOfFreedom) : null;
  return {
    slope,
    standardErrorFromScatter:
      residualStandardDeviation === null ? null : residualStandardDeviation / Math.sqrt(information),
    standardErrorFromUncertainty: weighted ? 1 / Math.sqrt(information) : null,
    residualStandardDeviation,
    chiSquared,
    degreesOfFreedom,
    residuals: weighted ? distances : distances.map((distance) => distance / (residualStandardDeviation || 1)),
    converged,
  };
}

interface Points {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly ux: readonly number[];
}

function iterate({ x, y, ux }: Points, weightsAt: (b: number) => number[], start: number) {
  let slope = start;
  let weights = weightsAt(slope);
  let adjusted = x;
  const exact = ux.every((u) => u === 0);
  for (let step = 0; step < (exact ? 1 : MAXIMUM_STEPS); step++) {
    const b = slope;
    weights = weightsAt(b);
    adjusted = x.map((xi, i) => xi + weights[i]! * b * ux[i]! ** 2 * (y[i]! - b * xi));
    slope = slopeOf(x, y, adjusted, weights);
    if (Math.abs(slope - b) <= RELATIVE_TOLERANCE * Math.abs(slope))
      return { slope, weights, adjusted, converged: true };
  }
  return { slope, weights, adjusted, converged: exact };
}

/** Zero of Σ W X (y - b x), the condition for a least sum with the weights held. */
function slopeOf(x: readonly number[], y: readonly number[], X: readonly number[], W: readonly number[]): number {
  return sumOf(x, (_, i) => W[i]! * X[i]! * y[i]!) / sumOf(x, (xi, i) => W[i]! * X[i]! * xi);
}

function sumOf(values: readonly number[], term: (value: number, index: number) => number): number {
  return values.reduce((sum, value, index) => sum + term(value, index), 0);
}

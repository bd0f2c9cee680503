import { straightLine } from "../numeric/straightLine.ts";
import { twoSidedPValue } from "../numeric/studentT.ts";
import type { CalibrationLine } from "./calibrationLine.ts";

/** How far the points bend away from a straight line. */
export interface Nonlinearity {
  /** Coefficient c of the square of what was applied, reading = a + b x + c x². */
  readonly quadratic: number;
  readonly standardUncertainty: number;
  /** Greatest distance of the parabola from the line at the points, as part of the span of the readings. */
  readonly partOfSpan: number;
  readonly pValue: number;
}

/**
 * Test of a quadratic term. Its least-squares coefficient is that of the part of x² which no straight line explains
 * (Frisch & Waugh), so that it needs no further fit:
 *
 *   q = x² less its own line on x;   c = Σ q e / Σ q²;   s² = (Σ e² - c² Σ q²) / (n - 3);   t = c sqrt(Σ q²) / s
 *
 * Null with fewer than four points or three loads. Source   Frisch & Waugh, Econometrica 1 (1933) 387.
 */
export function nonlinearityOf({ points, residuals, span, meanApplied, range }: CalibrationLine): Nonlinearity | null {
  const loads = new Set(points.map(({ applied }) => applied)).size;
  const dof = points.length - 3;
  if (dof < 1 || loads < 3) return null;
  // Scaled to the range: squares of raw grams would lose digits.
  const half = (range[1] - range[0]) / 2;
  const x = points.map(({ applied }) => (applied - meanApplied) / half);
  const squares = x.map((xi) => xi * xi);
  const line = straightLine({ x, y: squares });
  const q = squares.map((square, i) => square - line.intercept - line.slope * x[i]!);
  const qq = q.reduce((sum, qi) => sum + qi * qi, 0);
  const c = q.reduce((sum, qi, i) => sum + qi * residuals[i]!, 0) / qq;
  const left = residuals.reduce((sum, e, i) => sum + (e - c * q[i]!) ** 2, 0);
  const u = Math.sqrt(left / dof / qq);
  return {
    quadratic: c / half ** 2,
    standardUncertainty: u / half ** 2,
    partOfSpan: Math.max(...q.map((qi) => Math.abs(c * qi))) / span,
    pValue: u > 0 ? twoSidedPValue(c / u, dof) : c === 0 ? 1 : 0,
  };
}

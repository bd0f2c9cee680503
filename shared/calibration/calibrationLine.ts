import type { CalibrationPoint } from "../model/instrument.ts";
import { straightLine } from "../numeric/straightLine.ts";
import { InputProblem } from "../quantity/problem.ts";

/** reading = intercept + slope × applied, in the units the points were typed in. */
export interface CalibrationLine {
  readonly points: readonly CalibrationPoint[];
  readonly intercept: number;
  readonly slope: number;
  readonly interceptStandardError: number;
  readonly slopeStandardError: number;
  /** Covariance of intercept and slope. */
  readonly covariance: number;
  /** Of the readings about the line, unit of the reading. */
  readonly residualStandardDeviation: number;
  /** Points less two. */
  readonly degreesOfFreedom: number;
  /** Reading less line, in the order of the points. */
  readonly residuals: readonly number[];
  /** Mean of what was applied: there level and slope are independent of each other. */
  readonly meanApplied: number;
  /** Standard error of the line at `meanApplied`, unit of the reading. */
  readonly levelStandardError: number;
  /** Least and greatest applied. */
  readonly range: readonly [number, number];
  /** Size of the reading over that range. */
  readonly span: number;
}

/** Residuals below this part of the span are the rounding of the arithmetic, not of the instrument. */
const NO_RESIDUAL = 1e-12;

/**
 * Straight line through calibration points by least squares: what was applied is taken as known, the reading scatters.
 *
 *   b = Σ (x - x̄)(y - ȳ) / Σ (x - x̄)²,   a = ȳ - b x̄,   u²(y at x) = s²/n + (x - x̄)² u²(b)
 *
 * Source   JCGM 100:2008 (GUM), H.3.
 * Assumes  readings that scatter alike and independently; what all applied values share is added by the caller.
 * Range    three points or more at two loads or more.
 * Throws   InputProblem `calibration.too-few-points`, `calibration.one-load` or `calibration.no-response`.
 */
export function calibrationLine(points: readonly CalibrationPoint[]): CalibrationLine {
  const x = points.map(({ applied }) => applied);
  const y = points.map(({ reading }) => reading);
  requireLine(x, y);
  const line = straightLine({ x, y });
  const range = [Math.min(...x), Math.max(...x)] as const;
  const span = Math.abs(line.slope) * (range[1] - range[0]);
  const top = span + Math.max(...y.map(Math.abs));
  const residuals = x.map((xi, i) => settled(y[i]! - line.intercept - line.slope * xi, top));
  const s = Math.sqrt(residuals.reduce((sum, e) => sum + e * e, 0) / line.degreesOfFreedom);
  const meanApplied = x.reduce((sum, xi) => sum + xi, 0) / x.length;
  return {
    ...line,
    points,
    residualStandardDeviation: s,
    residuals,
    meanApplied,
    range,
    span,
    levelStandardError: s / Math.sqrt(x.length),
  };
}

/** The line at `applied`, with its standard uncertainty, unit of the reading. Source JCGM 100:2008, H.3.4. */
export function readingAt(line: CalibrationLine, applied: number): { value: number; standardUncertainty: number } {
  const away = applied - line.meanApplied;
  return {
    value: line.intercept + line.slope * applied,
    standardUncertainty: Math.hypot(line.levelStandardError, away * line.slopeStandardError),
  };
}

function settled(residual: number, top: number): number {
  return Math.abs(residual) <= NO_RESIDUAL * top ? 0 : residual;
}

function requireLine(x: readonly number[], y: readonly number[]): void {
  if (x.length < 3) {
    throw new InputProblem({
      code: "calibration.too-few-points",
      where: "calibration table",
      found: `the table has ${x.length} points`,
      needed: "three or more; ten, half of them on the way back, show friction and curvature as well",
      mend: "Add points",
    });
  }
  if (new Set(x).size < 2) {
    throw new InputProblem({
      code: "calibration.one-load",
      where: "calibration table",
      found: `all ${x.length} points were taken at ${x[0]}`,
      needed: "two different values or more, the greatest beyond what the runs reach",
      mend: "Add points at other values",
    });
  }
  if (new Set(y).size < 2) {
    throw new InputProblem({
      code: "calibration.no-response",
      where: "calibration table",
      found: `the reading is ${y[0]} at every point`,
      needed: "readings that follow what was applied",
      mend: "Check that the columns are the right way round and the instrument was on",
    });
  }
}

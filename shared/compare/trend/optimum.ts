import type { Optimum } from "../../model/trend.ts";
import { fiellerInterval } from "../../numeric/fieller.ts";
import { coverageFactor, uncertain } from "../../quantity/uncertain.ts";
import type { TrendFit } from "./trendFit.ts";

interface VertexOf {
  readonly found: TrendFit;
  /** From the scale of the curve back to the factor, SI. */
  readonly toFactor: (x: number) => number;
  /** Derivative of that. */
  readonly factorPer: (x: number) => number;
  readonly range: readonly [number, number];
}

/**
 * Vertex of a curve of second order, x* = -c₁/(2 c₂), by first order (delta method) and by Fieller's method for the ratio
 * of two correlated coefficients. The first is symmetric and always there; the second tells when the curvature is so
 * doubtful that no bounded interval holds the optimum in 95 of 100 cases.
 *
 * Source   delta method JCGM 100:2008, 5.2.2; Fieller, J. R. Stat. Soc. B 16 (1954) 175.
 */
export function optimumOf({ found, toFactor, factorPer, range }: VertexOf): Optimum | null {
  const { fit, order, scale, degreesOfFreedom } = found;
  if (order !== 2) return null;
  const [, c1, c2] = fit.coefficients as [number, number, number];
  if (c2 === 0) return null;
  const V = (i: number, j: number) => scale * fit.covariance[i]![j]!;
  const x = -c1 / (2 * c2);
  const variance = (V(1, 1) + 4 * x * V(1, 2) + 4 * x * x * V(2, 2)) / (4 * c2 * c2);
  const ends = fiellerInterval({
    ...{ numerator: -c1, denominator: 2 * c2 },
    ...{ varianceNumerator: V(1, 1), varianceDenominator: 4 * V(2, 2), covariance: -2 * V(1, 2) },
    coverageFactor: coverageFactor(degreesOfFreedom),
  });
  const at = toFactor(x);
  const value = Math.exp(fit.at(x));
  return {
    kind: c2 < 0 ? "maximum" : "minimum",
    at: uncertain(at, Math.sqrt(Math.max(0, variance)) * factorPer(x), degreesOfFreedom),
    fieller95: ends && [toFactor(ends[0]), toFactor(ends[1])],
    value: uncertain(value, value * fit.standardErrorAt(x) * Math.sqrt(scale), degreesOfFreedom),
    inside: at >= range[0] && at <= range[1],
  };
}

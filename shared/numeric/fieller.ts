import { finite, nonNegative } from "../quantity/domain.ts";

export interface RatioOfMeans {
  readonly numerator: number;
  readonly denominator: number;
  /** Variance of the numerator, its unit squared. */
  readonly varianceNumerator: number;
  readonly varianceDenominator: number;
  /** Student or normal quantile of the wanted coverage, e.g. `coverageFactor(dof)`. */
  readonly coverageFactor: number;
}

/**
 * Interval for numerator / denominator, both measured, independent of each other.
 * Null where the denominator can not be told from zero: the set is then no interval.
 *
 *   g = t² V_b / b²,   limits = [r ∓ (t/b) sqrt(V_a + r² V_b - g V_a)] / (1 - g)
 *
 * Source   Fieller, Journal of the Royal Statistical Society B 16 (1954) 175.
 * Throws   OutOfDomain for numbers that are not finite or variances below 0.
 */
export function fiellerInterval(ratio: RatioOfMeans): [number, number] | null {
  const a = finite(ratio.numerator, "numerator", "");
  const b = finite(ratio.denominator, "denominator", "");
  const Va = nonNegative(ratio.varianceNumerator, "variance of the numerator", "");
  const Vb = nonNegative(ratio.varianceDenominator, "variance of the denominator", "");
  const t = nonNegative(ratio.coverageFactor, "coverage factor", "");
  const g = (t * t * Vb) / (b * b);
  if (!(g < 1)) return null;
  const r = a / b;
  const half = (t / Math.abs(b)) * Math.sqrt(Va * (1 - g) + r * r * Vb);
  return [(r - half) / (1 - g), (r + half) / (1 - g)];
}

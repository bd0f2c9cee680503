import { finite, nonNegative } from "../quantity/domain.ts";

export interface RatioOfMeans {
  readonly numerator: number;
  readonly denominator: number;
  /** Variance of the numerator, its unit squared. */
  readonly varianceNumerator: number;
  readonly varianceDenominator: number;
  /** Of numerator and denominator; 0 where they are independent. */
  readonly covariance?: number;
  /** Student or normal quantile of the wanted coverage, e.g. `coverageFactor(dof)`. */
  readonly coverageFactor: number;
}

/**
 * Interval for numerator / denominator, both measured.
 * Null where the denominator can not be told from zero: the set is then no interval.
 *
 *   g = t² V_b / b²,   limits = [r - g C/V_b ∓ (t/b) sqrt(V_a - 2 r C + r² V_b - g (V_a - C²/V_b))] / (1 - g)
 *
 * Source   Fieller, Journal of the Royal Statistical Society B 16 (1954) 175.
 * Throws   OutOfDomain for numbers that are not finite or variances below 0.
 */
export function fiellerInterval(ratio: RatioOfMeans): [number, number] | null {
  const a = finite(ratio.numerator, "numerator", "");
  const b = finite(ratio.denominator, "denominator", "");
  const Va = nonNegative(ratio.varianceNumerator, "variance of the numerator", "");
  const Vb = nonNegative(ratio.varianceDenominator, "variance of the denominator", "");
  const C = finite(ratio.covariance ?? 0, "covariance", "");
  const t = nonNegative(ratio.coverageFactor, "coverage factor", "");
  const g = (t * t * Vb) / (b * b);
  if (!(g < 1)) return null;
  const r = a / b;
  const [explained, shift] = C === 0 ? [0, 0] : [(C * C) / Vb, (g * C) / Vb];
  const half = (t / Math.abs(b)) * Math.sqrt(Math.max(0, Va - 2 * r * C + r * r * Vb - g * (Va - explained)));
  return [(r - shift - half) / (1 - g), (r - shift + half) / (1 - g)];
}

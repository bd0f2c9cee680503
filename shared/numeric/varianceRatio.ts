import { positive } from "../quantity/domain.ts";
import { fUpperTail } from "./fDistribution.ts";

/** An estimate of a variance from normal numbers. */
export interface VarianceEstimate {
  /** Unit squared; 0 where the numbers do not differ. */
  readonly variance: number;
  readonly degreesOfFreedom: number;
}

/**
 * Chance that two estimates of one variance differ at least as much as these, either way round.
 *
 *   F = s_a²/s_b²,   p = 2 min(P(F' ≥ F), P(F' ≤ F))
 *
 * Source   F test for equality of two variances, NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.9.
 * Assumes  normal numbers: unlike Brown and Forsythe's test it tells something of two against two.
 * Range    two variances of 0 are alike, p = 1; 0 against anything else is not, p = 0.
 * Throws   OutOfDomain for degrees of freedom not greater than 0.
 *
 * @example varianceRatioPValue({ variance: 4, degreesOfFreedom: 2 }, { variance: 1, degreesOfFreedom: 2 }) // 0.4
 */
export function varianceRatioPValue(a: VarianceEstimate, b: VarianceEstimate): number {
  const [above, below] = [a, b].map(({ degreesOfFreedom }) => positive(degreesOfFreedom, "degrees of freedom", ""));
  if (a.variance === b.variance && a.variance === 0) return 1;
  if (a.variance === 0 || b.variance === 0) return 0;
  const greater = fUpperTail(a.variance / b.variance, [above!, below!]);
  const smaller = fUpperTail(b.variance / a.variance, [below!, above!]);
  return Math.min(1, 2 * Math.min(greater, smaller));
}

import { gammaln } from "simple-statistics";
import { finite, positive, within } from "../quantity/domain.ts";
import { incompleteBeta } from "./incompleteBeta.ts";
import { normalProbability } from "./normalProbability.ts";

/** Terms of the series are Poisson weights; so many standard deviations from their mean the rest is below 1e-15. */
const WIDE = 9;
/** Beyond this the series holds too many terms and the answer is 0 or 1 for every test anyone makes. */
const GREATEST_NONCENTRALITY = 500;

/**
 * Chance of a noncentral t variable at most as great as `t`: `degreesOfFreedom` ν and noncentrality δ, which is the true
 * difference in standard errors.
 *
 *   P = Φ(-δ) + ½ Σ_j [p_j I_x(j + ½, ν/2) + q_j I_x(j + 1, ν/2)],   x = t²/(t² + ν),  λ = δ²/2,
 *   p_j = e^-λ λ^j/j!,   q_j = δ e^-λ λ^j/(√2 Γ(j + 3/2));   for t < 0: 1 - P(-t; -δ)
 *
 * Source   Lenth, Applied Statistics 38 (1989) 185 (algorithm AS 243), after Guenther (1978).
 * Error    1e-9 absolute, checked against R 4.2.2 `pt(t, df, ncp)`.
 * Throws   OutOfDomain for numbers that are not finite, ν not greater than 0, |δ| over 500.
 */
export function noncentralT(t: number, degreesOfFreedom: number, noncentrality: number): number {
  finite(t, "t", "");
  positive(degreesOfFreedom, "degrees of freedom", "");
  const delta = within(noncentrality, -GREATEST_NONCENTRALITY, GREATEST_NONCENTRALITY, "noncentrality", "");
  if (t < 0) return 1 - fromZero(-t, degreesOfFreedom, -delta);
  return fromZero(t, degreesOfFreedom, delta);
}

/** For t from 0 up. */
function fromZero(t: number, nu: number, delta: number): number {
  const x = (t * t) / (t * t + nu);
  const lambda = (delta * delta) / 2;
  const reach = WIDE * Math.sqrt(lambda) + 40;
  let sum = 0;
  for (let j = Math.max(0, Math.floor(lambda - reach)); j <= lambda + reach; j++) {
    const p = poissonWeight(lambda, j, j + 1);
    const q = (delta / Math.SQRT2) * poissonWeight(lambda, j, j + 1.5);
    sum += p * incompleteBeta(x, j + 0.5, nu / 2) + q * incompleteBeta(x, j + 1, nu / 2);
  }
  return Math.min(1, Math.max(0, normalProbability(-delta) + sum / 2));
}

/** e^-λ λ^power / Γ(gammaOf). */
function poissonWeight(lambda: number, power: number, gammaOf: number): number {
  const logarithm = power === 0 ? 0 : power * Math.log(lambda);
  return Math.exp(logarithm - lambda - gammaln(gammaOf));
}

import chiSquareCdf from "@stdlib/stats-base-dists-chisquare-cdf";
import { nonNegative, positive } from "../quantity/domain.ts";

/**
 * Chance of a chi-square variable of `dof` degrees of freedom at least as great as `x`.
 *
 * Source   checked against R 4.2.2, `pchisq(x, df, lower.tail = FALSE)`.
 * Error    1e-15 absolute: chances below that come out as 0.
 * Throws   OutOfDomain for x below 0 or dof not greater than 0.
 */
export function chiSquareUpperTail(x: number, dof: number): number {
  return 1 - chiSquareCdf(nonNegative(x, "chi-square", ""), positive(dof, "degrees of freedom", ""));
}

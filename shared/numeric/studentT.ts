import chiSquareCdf from "@stdlib/stats-base-dists-chisquare-cdf";
import studentCdf from "@stdlib/stats-base-dists-t-cdf";
import { finite } from "../quantity/domain.ts";
import { OutOfDomain } from "../quantity/problem.ts";

/** Beyond this many degrees of freedom Student's distribution is the normal one to 1e-9; the library fails at infinity. */
const AS_GOOD_AS_NORMAL = 1e9;

/**
 * Chance of a Student variable at least as far from 0 as `t`, either side, for `dof` degrees of freedom (infinite:
 * normal distribution).
 *
 * Source   checked against R 4.2.2, `2 * pt(-abs(t), df)`.
 * Throws   OutOfDomain for t that is not finite or dof not greater than 0.
 */
export function twoSidedPValue(t: number, dof: number): number {
  const distance = Math.abs(finite(t, "t", ""));
  if (!(dof > 0)) {
    throw new OutOfDomain({ found: `${dof} degrees of freedom`, needed: "more than 0", mend: "" });
  }
  // The square of a normal variable is chi-square with one degree of freedom.
  if (dof > AS_GOOD_AS_NORMAL) return 1 - chiSquareCdf(distance * distance, 1);
  return 2 * studentCdf(-distance, dof);
}

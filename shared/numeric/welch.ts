import { OutOfDomain } from "../quantity/problem.ts";
import { moments } from "./moments.ts";
import { twoSidedPValue } from "./studentT.ts";
import { effectiveDegreesOfFreedom } from "./welchSatterthwaite.ts";

export interface WelchTest {
  /** Mean of the first less mean of the second. */
  readonly difference: number;
  readonly standardError: number;
  readonly degreesOfFreedom: number;
  readonly t: number;
  /** Two-sided, of the hypothesis that the means are equal. */
  readonly pValue: number;
}

/**
 * Difference of two means whose variances need not be equal.
 *
 * Source   Welch, Biometrika 34 (1947) 28; checked against R 4.2.2 `t.test`.
 * Assumes  independent, roughly normal numbers.
 * Range    two or more in each, some spread in one of them.
 * Throws   OutOfDomain `numeric.too-few` or `numeric.no-spread`.
 */
export function welch(a: readonly number[], b: readonly number[]): WelchTest {
  const [first, second] = [moments(a), moments(b)];
  if (first.count < 2 || second.count < 2) {
    refuse("numeric.too-few", `${first.count} and ${second.count} numbers`, "at least 2 in each group");
  }
  const parts = [first, second].map(({ standardDeviation, count }) => ({
    standardUncertainty: standardDeviation / Math.sqrt(count),
    degreesOfFreedom: count - 1,
  }));
  const standardError = Math.hypot(...parts.map((part) => part.standardUncertainty));
  if (standardError === 0) refuse("numeric.no-spread", "no spread in either group", "numbers that differ");
  const difference = first.mean - second.mean;
  const t = difference / standardError;
  const degreesOfFreedom = effectiveDegreesOfFreedom(parts);
  return { difference, standardError, degreesOfFreedom, t, pValue: twoSidedPValue(t, degreesOfFreedom) };
}

function refuse(code: string, found: string, needed: string): never {
  throw new OutOfDomain({ code, found, needed, mend: "" });
}

import { OutOfDomain } from "../quantity/problem.ts";
import { median } from "./median.ts";
import { moments } from "./moments.ts";
import { twoSidedPValue } from "./studentT.ts";

export interface SpreadTest {
  /** Variance of the first over variance of the second. */
  readonly varianceRatio: number;
  /** F with 1 and n - 2 degrees of freedom. */
  readonly statistic: number;
  readonly degreesOfFreedom: number;
  /** Chance of so great a difference in spread where there is none. */
  readonly pValue: number;
}

/**
 * Have two series the same spread? Robust against tails that are longer than normal.
 *
 * z = |x - median of its series|, then the analysis of variance of z: F = t² of the pooled Student test of both groups.
 *
 * Source   Brown & Forsythe, Journal of the American Statistical Association 69 (1974) 364; checked against SciPy
 *          1.17.1, `scipy.stats.levene(a, b, center="median")`.
 * Assumes  independent readings: correlated ones make the chance too small.
 * Range    three readings or more in each, spread in the second.
 * Throws   OutOfDomain `numeric.too-few` or `numeric.no-spread`.
 */
export function brownForsythe(a: ArrayLike<number>, b: ArrayLike<number>): SpreadTest {
  if (a.length < 3 || b.length < 3) {
    refuse("numeric.too-few", `${a.length} and ${b.length} readings`, "at least 3 in each series");
  }
  const [first, second] = [deviations(a), deviations(b)];
  const [za, zb] = [moments(first), moments(second)];
  const degreesOfFreedom = a.length + b.length - 2;
  const pooled = ((za.count - 1) * za.variance + (zb.count - 1) * zb.variance) / degreesOfFreedom;
  const below = moments(Float64Array.from(b)).variance;
  if (!(pooled > 0) || !(below > 0)) refuse("numeric.no-spread", "no spread", "readings that differ");
  const t = (za.mean - zb.mean) / Math.sqrt(pooled * (1 / za.count + 1 / zb.count));
  return {
    varianceRatio: moments(Float64Array.from(a)).variance / below,
    statistic: t * t,
    degreesOfFreedom,
    pValue: twoSidedPValue(t, degreesOfFreedom),
  };
}

function deviations(values: ArrayLike<number>): Float64Array {
  const own = Float64Array.from(values);
  const middle = median(own.slice());
  return own.map((value) => Math.abs(value - middle));
}

function refuse(code: string, found: string, needed: string): never {
  throw new OutOfDomain({ code, found, needed, mend: "" });
}

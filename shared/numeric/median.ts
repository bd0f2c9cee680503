import { median as medianOfNumbers, medianAbsoluteDeviation as unscaledDeviation } from "simple-statistics";
import { OutOfDomain } from "../quantity/problem.ts";

/** 1 / Φ⁻¹(3/4): makes the median absolute deviation of normal numbers their standard deviation; R 4.2.2 `1/qnorm(.75)`. */
export const NORMAL_SCALE = 1.482602218505602;

/** Middle value; the mean of the two middle ones of an even count. NaN marks a missing cell and is skipped. */
export function median(values: ArrayLike<number>): number {
  return medianOfNumbers(present(values));
}

/**
 * Median distance from the median, scaled by 1.4826 so that it estimates the standard deviation of normal numbers
 * while up to half of them may be wild. NaN is skipped.
 *
 * Source   Hampel, Journal of the American Statistical Association 69 (1974) 383.
 */
export function medianAbsoluteDeviation(values: ArrayLike<number>): number {
  return NORMAL_SCALE * unscaledDeviation(present(values));
}

function present(values: ArrayLike<number>): number[] {
  // A loop: `Array.from` and `filter` take ten times as long, and medians are taken of thousands of stretches.
  const numbers: number[] = [];
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) numbers.push(values[i]!);
  if (numbers.length > 0) return numbers;
  throw new OutOfDomain({
    code: "numeric.no-numbers",
    found: "no number",
    needed: "at least one",
    mend: "",
  });
}

import type { Uncertain } from "../../shared/quantity/uncertain.ts";

/** Whether an interval holds the truth. */
export const covers = ([low, high]: readonly [number, number], truth: number) => low <= truth && truth <= high;

/** Part of the cases that hit. */
export const share = (hits: readonly boolean[]) => hits.filter(Boolean).length / hits.length;

/** Mean and standard deviation of the errors in units of their stated standard uncertainties: 0 and 1 where these are right. */
export function normalisedErrors(cases: readonly { readonly found: Uncertain; readonly truth: number }[]) {
  const errors = cases.map(({ found, truth }) => (found.value - truth) / found.standardUncertainty);
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  const deviation = Math.sqrt(errors.reduce((sum, error) => sum + (error - mean) ** 2, 0) / errors.length);
  return { mean, deviation };
}

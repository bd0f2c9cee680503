import quantile from "@stdlib/stats-base-dists-t-quantile";
import { positive } from "../quantity/domain.ts";
import { noncentralT } from "./noncentralT.ts";
import { bracketedRoot } from "./rootFinding.ts";

/** A two-sided t test that is planned. */
export interface PlannedTest {
  /** twoSample: two groups with one spread; paired: differences inside pairs, of which the standard deviation is given. */
  readonly design: "twoSample" | "paired";
  readonly standardDeviation: number;
  /** Chance of claiming a difference where there is none. */
  readonly level: number;
}

/** Noncentralities beyond this are seen for certain, and the series need not be summed. */
const CERTAIN = 60;

/**
 * Chance that a two-sided t test finds a true `difference`, with `size` members of each group, or pairs; `size` need not
 * be whole. A claim in the wrong direction counts too, as in the strict form.
 *
 *   δ = difference/(s √(2/n)), ν = 2 (n - 1);   paired: δ = difference √n/s, ν = n - 1
 *
 * Source   noncentral t distribution; checked against R 4.2.2 `power.t.test(strict = TRUE)`.
 * Throws   OutOfDomain for a size not above 1 or numbers not greater than 0.
 */
export function tTestPower(test: PlannedTest, { difference, size }: { difference: number; size: number }): number {
  positive(size - 1, "members less one", "");
  const { design, standardDeviation, level } = test;
  const twoSample = design === "twoSample";
  const nu = (twoSample ? 2 : 1) * (size - 1);
  const standardError = positive(standardDeviation, "standard deviation", "") * Math.sqrt((twoSample ? 2 : 1) / size);
  const delta = positive(difference, "difference", "") / standardError;
  const t = quantile(1 - level / 2, nu);
  if (delta > CERTAIN + 2 * t) return 1;
  return 1 - noncentralT(t, nu, delta) + noncentralT(-t, nu, delta);
}

/** Sizes between which one is looked for: below two there is no spread, above a thousand nobody runs. */
const SIZES = [2, 1000] as const;

/** Size of each group, or number of pairs, not whole, that sees `difference` with chance `power`; null outside 2 to 1000. */
export function tTestSize(test: PlannedTest, { difference, power }: { difference: number; power: number }) {
  const lacking = (size: number) => tTestPower(test, { difference, size }) - power;
  const [least, most] = SIZES;
  if (lacking(least) > 0) return { size: least, exact: null };
  if (lacking(most) < 0) return { size: null, exact: null };
  const { root } = bracketedRoot(lacking, least, most);
  return { size: Math.ceil(root - 1e-9), exact: root };
}

/** Difference that groups of `size` see with chance `power`. */
export function smallestDifference(test: PlannedTest, { size, power }: { size: number; power: number }): number {
  const scale = test.standardDeviation;
  const lacking = (difference: number) => tTestPower(test, { difference, size }) - power;
  let high = scale;
  while (lacking(high) < 0) high *= 2;
  return bracketedRoot(lacking, scale * 1e-6, high).root;
}

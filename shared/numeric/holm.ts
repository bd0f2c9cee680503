import { within } from "../quantity/domain.ts";

/**
 * p-values of several comparisons shown together, adjusted so that the chance of any false alarm among them stays at
 * the level they are read against; in the order given.
 *
 * Source   Holm, Scandinavian Journal of Statistics 6 (1979) 65; checked against R 4.2.2 `p.adjust`.
 * Throws   OutOfDomain for a p-value outside 0 to 1.
 */
export function holm(pValues: readonly number[]): number[] {
  const ascending = pValues.map((p, index) => ({ p: within(p, 0, 1, "p-value", ""), index })).sort((a, b) => a.p - b.p);
  const adjusted = new Array<number>(pValues.length);
  let greatest = 0;
  ascending.forEach(({ p, index }, rank) => {
    greatest = Math.max(greatest, Math.min(1, p * (pValues.length - rank)));
    adjusted[index] = greatest;
  });
  return adjusted;
}

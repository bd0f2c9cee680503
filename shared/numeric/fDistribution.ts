import { nonNegative, positive } from "../quantity/domain.ts";
import { chiSquareUpperTail } from "./chiSquare.ts";
import { incompleteBeta } from "./incompleteBeta.ts";

/** Beyond this many degrees of freedom below, F is chi-square over its degrees of freedom to six digits. */
const AS_GOOD_AS_KNOWN = 1e7;

/**
 * Chance of a ratio of two estimates of one variance at least as great as `F`, with `above` and `below` degrees of
 * freedom.
 *
 *   P(F' ≥ F) = I_x(ν₂/2, ν₁/2),   x = ν₂/(ν₂ + ν₁ F)
 *
 * Source   DLMF 8.17; checked against R 4.2.2 `qf` and NIST StRD.
 * Throws   OutOfDomain for F below 0 or degrees of freedom not greater than 0.
 */
export function fUpperTail(F: number, [above, below]: readonly [number, number]): number {
  nonNegative(F, "F", "");
  positive(above, "degrees of freedom", "");
  positive(below, "degrees of freedom", "");
  if (below > AS_GOOD_AS_KNOWN) return chiSquareUpperTail(F * above, above);
  return incompleteBeta(below / (below + above * F), below / 2, above / 2);
}

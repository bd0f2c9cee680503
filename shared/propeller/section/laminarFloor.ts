import { positive } from "../../quantity/domain.ts";

/**
 * Friction of two sides of a flat plate in laminar flow, on the chord: nothing shaped like a blade has less drag.
 *
 *   C_D = 2 · 1.328/√Re
 *
 * Source   Blasius (1908); e.g. Schlichting, Boundary-Layer Theory, ch. VII.
 * Throws   OutOfDomain for a Reynolds number that is not greater than 0.
 *
 * @example laminarFloor(1e4) // 0.02656
 */
export function laminarFloor(reynolds: number): number {
  return 2.656 / Math.sqrt(positive(reynolds, "Reynolds number", ""));
}

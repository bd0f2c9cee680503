import { firstZero } from "../firstZero.ts";
import { type AdvancePolynomial, coefficientAt } from "./pitchPlane.ts";

/**
 * Advance ratio at which the thrust of a series propeller ends: the first zero of K_T(J) above 0.
 *
 * Error    1e-12 of the ratio.
 * Returns  null where there is no thrust at bollard or it does not end, which happens far outside the range of the
 *          series only.
 */
export function zeroThrustRatio(thrust: AdvancePolynomial): number | null {
  return firstZero((J) => coefficientAt(thrust, J));
}

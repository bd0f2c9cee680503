import { firstZero } from "./firstZero.ts";

/** Speed, m/s, below which a propeller is taken to stand in the water. */
export const REST_SPEED = 1e-9;

const STEP = 0.02;

/**
 * Advance ratio at which a coefficient is what a duty asks.
 *
 *   K(J) = c J^m
 *
 * With the diameter known n = V/(J D), so that thrust (K_T, m = 2) or shaft power (K_Q, m = 3) becomes this condition;
 * with the rotation rate known D = V/(n J), and m is 4 or 5.
 *
 * Source   definitions of J, K_T and K_Q: ITTC Symbols and Terminology List (2021); root by Brent's method.
 * Range    a coefficient that falls with J from a positive value at rest.
 * Error    1e-12 of the ratio (Brent), however slow the propeller moves.
 * Returns  null where no advance ratio does it.
 */
export function advanceRatioOfDuty(K: (J: number) => number, c: number, m: number): number | null {
  // Where K stayed as at rest; it falls, so the root is not far above. Steps of that size keep small roots exact.
  const level = (K(0) / c) ** (1 / m);
  if (!(level > 0 && Number.isFinite(level))) return null;
  return firstZero((J) => K(J) - c * J ** m, Math.min(STEP, level));
}

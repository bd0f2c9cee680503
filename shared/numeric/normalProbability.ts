import { twoSidedPValue } from "./studentT.ts";

/**
 * Chance of a standard normal variable at most as great as `z`.
 *
 * @example normalProbability(1.6448536269514722) // 0.95
 */
export function normalProbability(z: number): number {
  const tail = twoSidedPValue(z, Number.POSITIVE_INFINITY) / 2;
  return z < 0 ? tail : 1 - tail;
}

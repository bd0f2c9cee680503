import { formatNumber } from "./format.ts";

/** What is nearer to 0 or 1 is not told closer: no measurement allows it. */
const EDGE = 0.001;

/**
 * A probability in per cent as a person says it, never 0 or 100 %.
 *
 * @example certaintyInWords(0.97) // "97.0 %"
 */
export function certaintyInWords(probability: number): string {
  if (probability > 1 - EDGE) return "over 99.9\u202f%";
  if (probability < EDGE) return "under 0.1\u202f%";
  return `${formatNumber(100 * probability)}\u202f%`;
}

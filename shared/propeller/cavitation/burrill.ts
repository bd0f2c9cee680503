import type { BurrillVerdict } from "../../model/cavitation.ts";
import { positive } from "../../quantity/domain.ts";
import { type BurrillLine, CHART_END, FORMULA_RANGE, LINE_TOLERANCE } from "./burrill.data.ts";

/**
 * Loading on a limit line.
 *
 *   τ_c = a (σ - s)^b
 *
 * Source, error see `burrill.data.ts`.
 * Range    cavitation number 0.1 to 1 for the formula, on to 2 where the chart ends.
 * Returns  null off the chart: a margin there would be invented.
 */
export function burrillLoading({ a, s, b }: BurrillLine, sigma: number): number | null {
  return sigma >= FORMULA_RANGE[0] && sigma <= CHART_END ? a * (sigma - s) ** b : null;
}

/**
 * Cavitation number at which a loading reaches the line: σ = s + (τ_c/a)^(1/b), but not less than 0.1 where the chart
 * begins. Both numbers are ratios, 1.
 *
 * Source   `burrillLoading` solved for σ; lines as in `burrill.data.ts`.
 * Returns  null where it would lie beyond the end of the chart.
 * Throws   OutOfDomain unless the loading is greater than 0.
 */
export function burrillCavitationNumber({ a, s, b }: BurrillLine, loading: number): number | null {
  const sigma = Math.max(FORMULA_RANGE[0], s + (positive(loading, "loading", "") / a) ** (1 / b));
  return sigma <= CHART_END ? sigma : null;
}

/** Where a loading at a cavitation number stands to a line. */
export function burrillState(line: BurrillLine, loading: number, sigma: number): BurrillVerdict["state"] {
  const limit = burrillLoading(line, sigma);
  if (limit !== null && Math.abs(loading / limit - 1) <= LINE_TOLERANCE) return "near";
  const needed = burrillCavitationNumber(line, loading);
  if (needed !== null) return sigma >= needed ? "below" : "above";
  return sigma > CHART_END ? "unjudged" : "above";
}

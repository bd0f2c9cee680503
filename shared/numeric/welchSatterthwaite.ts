import { nonNegative } from "../quantity/domain.ts";
import { OutOfDomain } from "../quantity/problem.ts";

export interface UncertaintyPart {
  /** Contribution to the combined standard uncertainty, all in one unit. */
  readonly standardUncertainty: number;
  /** Infinite for a part that is known well, such as a maker's limit taken at its word. */
  readonly degreesOfFreedom: number;
}

/**
 * Degrees of freedom of a combined standard uncertainty u_c = sqrt(Σ u_i²).
 *
 *   ν_eff = u_c⁴ / Σ (u_i⁴ / ν_i)
 *
 * Source   Welch-Satterthwaite formula, JCGM 100:2008 (GUM), eq. G.2b.
 * Assumes  independent parts.
 * Range    any parts; not rounded down. Infinite where no part has finite degrees of freedom, and for no doubt at all.
 * Throws   OutOfDomain for a negative uncertainty or degrees of freedom not greater than 0.
 */
export function effectiveDegreesOfFreedom(parts: readonly UncertaintyPart[]): number {
  const largest = Math.max(
    0,
    ...parts.map((part) => nonNegative(part.standardUncertainty, "standard uncertainty", "")),
  );
  if (largest === 0) return Infinity;
  let squares = 0;
  let below = 0;
  for (const { standardUncertainty, degreesOfFreedom } of parts) {
    if (!(degreesOfFreedom > 0)) {
      throw new OutOfDomain({ found: `${degreesOfFreedom} degrees of freedom`, needed: "more than 0", mend: "" });
    }
    // Relative to the largest, so that the fourth power of a small uncertainty does not vanish.
    const square = (standardUncertainty / largest) ** 2;
    squares += square;
    below += (square * square) / degreesOfFreedom;
  }
  return below === 0 ? Infinity : (squares * squares) / below;
}

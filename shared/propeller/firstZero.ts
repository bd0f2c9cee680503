import { bracketedRoot } from "../numeric/rootFinding.ts";

/** Steps of the search in advance ratio; the curves of propellers are smooth on this scale. */
const STEP = 0.02;
/** No propeller is followed further. */
const GREATEST = 4;

/**
 * Advance ratio at which a coefficient, or a coefficient less what a duty asks, first falls to zero.
 *
 * Error    1e-12 of the ratio (Brent).
 * Returns  null where it is not positive at rest, or does not fall to zero up to J = 4.
 */
export function firstZero(excess: (J: number) => number, step = STEP): number | null {
  if (!(excess(0) > 0)) return null;
  for (let J = step; J < GREATEST; J += step) {
    if (excess(J) > 0) continue;
    const { root, converged } = bracketedRoot(excess, J - step, J);
    return converged ? root : null;
  }
  return null;
}

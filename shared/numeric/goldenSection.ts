import { finiteAt } from "./finiteAt.ts";

export interface Maximum {
  readonly at: number;
  readonly value: number;
  /** False if the steps ran out before the bracket was narrow enough. */
  readonly converged: boolean;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Greatest value of `f` between `low` and `high` by golden-section search.
 *
 * Source   Kiefer, Sequential minimax search for a maximum, Proceedings of the American Mathematical Society 4 (1953)
 *          502.
 * Assumes  one maximum between the ends; where there are more, one of them is found.
 * Error    the place to `tolerance`, but not closer than the root of the rounding unit allows; the value much better.
 * Throws   OutOfDomain where `f` gives no finite number.
 *
 * @example goldenMaximum((x) => x * (1 - x), 0, 1).at // 0.5
 */
export function goldenMaximum(
  f: (x: number) => number,
  low: number,
  high: number,
  { tolerance = 1e-8 * (high - low), maximumSteps = 100 } = {},
): Maximum {
  let [a, b] = [low, high];
  let [x, y] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [fx, fy] = [finiteAt(f, x), finiteAt(f, y)];
  let steps = 0;
  for (; b - a > tolerance && steps < maximumSteps; steps++) {
    if (fx >= fy) {
      [b, y, fy] = [y, x, fx];
      x = b - GOLDEN * (b - a);
      fx = finiteAt(f, x);
    } else {
      [a, x, fx] = [x, y, fy];
      y = a + GOLDEN * (b - a);
      fy = finiteAt(f, y);
    }
  }
  const converged = b - a <= tolerance;
  return fx >= fy ? { at: x, value: fx, converged } : { at: y, value: fy, converged };
}

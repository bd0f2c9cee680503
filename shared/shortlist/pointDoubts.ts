import type { DutyPoint, PointQuantity } from "../model/shortlistResult.ts";
import { POINT_QUANTITIES } from "../model/shortlistResult.ts";
import type { Candidate } from "./candidate.ts";
import { pointsNow, pointsOf } from "./details.ts";
import type { DoubtfulInput } from "./inputs.ts";

type Effects = ReadonlyMap<DoubtfulInput, number>;

/**
 * What a combination does in each state that is asked for, with the standard uncertainty of each number.
 *
 *   u² = Σ e_i² + 2 Σ r_ij e_i e_j,   e_i = (f(x_i + u_i) − f(x_i − u_i))/2
 *
 * Source   JCGM 100:2008, 5.1.3 note 2 and 5.2.2.
 * Assumes  doubts small enough for first order. Where a state can not be run on one side, the step to the other is taken.
 * Error    none is told of a number that no doubtful part touches, or where nothing is doubtful.
 */
export function doubtfulPoints(candidate: Candidate): DutyPoint[] {
  const points = pointsOf(candidate);
  const { inputs, correlations } = candidate.doubts();
  if (inputs.length === 0) return points;
  const { number } = candidate;
  candidate.take(number);
  candidate.ownCurves();
  const pushed = inputs.map(({ input, standardUncertainty }) => {
    const value = candidate.valueOf(input);
    const at = (changed: number) => {
      candidate.setValue(input, Math.max(0, changed));
      candidate.judgeAgain();
      return pointsNow(candidate);
    };
    const ends = [at(value - standardUncertainty), at(value + standardUncertainty)] as const;
    candidate.setValue(input, value);
    return { input, ends };
  });
  candidate.take(number);
  return points.map((point) => ({ ...point, standardUncertainties: uncertaintiesOf(point) }));

  function uncertaintiesOf(point: DutyPoint): Partial<Record<PointQuantity, number>> {
    const known = POINT_QUANTITIES.flatMap((quantity) => {
      const effects = new Map(pushed.map(({ input, ends }) => [input, effectOn(point, quantity, ends)]));
      const u = combined(effects);
      return u > 0 ? [[quantity, u] as const] : [];
    });
    return Object.fromEntries(known);
  }

  function combined(effects: Effects): number {
    let sum = 0;
    for (const effect of effects.values()) sum += effect ** 2;
    for (const { of, and, coefficient } of correlations) {
      if (of !== and) sum += 2 * coefficient * (effects.get(of) ?? 0) * (effects.get(and) ?? 0);
    }
    // Correlations that can not hold together would leave less than nothing.
    return Math.sqrt(Math.max(0, sum));
  }
}

/** Effect of one standard uncertainty on a quantity of a point; 0 where it is not known. */
function effectOn(point: DutyPoint, quantity: PointQuantity, ends: readonly [DutyPoint[], DutyPoint[]]): number {
  const best = point[quantity];
  const [low, high] = ends.map((points) => points.find(({ duty }) => duty === point.duty)?.[quantity] ?? null);
  if (best === null) return 0;
  if (low != null && high != null) return (high - low) / 2;
  if (high != null) return high - best;
  return low != null ? best - low : 0;
}

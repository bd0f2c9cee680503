import type { PolarPoint } from "../../model/sectionPolar.ts";
import { REVERSED_LIFT } from "./sectionModel.data.ts";
import { viternaDrag, viternaLift, viternaOf } from "./viterna.ts";

export interface Coefficients {
  readonly lift: number;
  readonly drag: number;
}

/**
 * A measured polar carried on over the full circle: between its points straight, beyond its ends as a stalled plate
 * (Viterna & Corrigan, with the end of the polar as stall point), and in flow from behind as the mirror image of that from
 * ahead with 0.7 of its lift.
 *
 * Source   beyond the ends: Viterna & Corrigan, NASA CP-2230 (1982); from behind: as in `sectionModel.data.ts`.
 * Range    a polar that `checkedPolar` has passed: it begins below 0 and ends above.
 */
export function fullCircle(points: readonly PolarPoint[], aspectRatio: number): (angle: number) => Coefficients {
  const [first, last] = [points[0]!, points.at(-1)!];
  const back = viternaOf(last, aspectRatio);
  const face = viternaOf({ angle: -first.angle, lift: -first.lift, drag: first.drag }, aspectRatio);
  const at = (angle: number): Coefficients => {
    if (angle >= first.angle && angle <= last.angle) return between(points, angle);
    if (Math.abs(angle) > Math.PI / 2) {
      const ahead = at((angle > 0 ? Math.PI : -Math.PI) - angle);
      return { lift: -REVERSED_LIFT * ahead.lift, drag: ahead.drag };
    }
    if (angle > 0) return { lift: viternaLift(back, angle), drag: viternaDrag(back, angle) };
    return { lift: -viternaLift(face, -angle), drag: viternaDrag(face, -angle) };
  };
  return at;
}

function between(points: readonly PolarPoint[], angle: number): Coefficients {
  const above = Math.max(
    1,
    points.findIndex((point) => point.angle >= angle),
  );
  const [low, high] = [points[above - 1]!, points[above]!];
  const part = (angle - low.angle) / (high.angle - low.angle);
  return { lift: low.lift + part * (high.lift - low.lift), drag: low.drag + part * (high.drag - low.drag) };
}

import type { Reduction } from "../../../../shared/model/reduction.ts";

/** Advance ratio of a plateau, by its place in the list; 0 at bollard, null where a run at speed does not know it. */
export function advanceRatioOf({ advance }: Reduction, index: number): number | null {
  if (advance === null) return 0;
  const point = advance.points.find(({ plateau }) => plateau === index + 1);
  if (point === undefined) return null;
  return point.isAtRest ? 0 : point.advanceRatio.value;
}

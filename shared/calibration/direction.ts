import type { CalibrationPoint } from "../model/instrument.ts";

export type Direction = "loading" | "unloading";

/**
 * Which way each point was reached: more than the point before it, or less. The first point and one that repeats the
 * load before it belong to the way they were on. Size counts, so that weights written negative load as well.
 */
export function directionsOf(points: readonly CalibrationPoint[]): Direction[] {
  let now: Direction = "loading";
  return points.map(({ applied }, i) => {
    const step = i === 0 ? 0 : Math.abs(applied) - Math.abs(points[i - 1]!.applied);
    if (step !== 0) now = step > 0 ? "loading" : "unloading";
    return now;
  });
}

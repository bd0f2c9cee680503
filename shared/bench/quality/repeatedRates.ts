import type { MeasuredPlateau } from "../measuredPlateau.ts";

/** Rotation rates closer than this part count as the same step, visited again. */
const SAME_RATE = 0.03;

/** Each plateau whose rotation rate was held before, with the first one that held it. */
export function repeatedRates(plateaus: readonly MeasuredPlateau[]): (readonly [MeasuredPlateau, MeasuredPlateau])[] {
  return plateaus.flatMap((later, i) => {
    const earlier = plateaus
      .slice(0, i)
      .find(({ rotationRate }) => Math.abs(rotationRate.mean / later.rotationRate.mean - 1) < SAME_RATE);
    return earlier ? [[earlier, later] as const] : [];
  });
}

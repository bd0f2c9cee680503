import { moments } from "../../numeric/moments.ts";
import type { Blocks } from "../blocks.ts";
import { type Channel, samplesOf } from "../channels.ts";
import { type Level, levelsOf } from "../levels.ts";
import { isRamp } from "../ramp.ts";
import type { RowSpan } from "../rest.ts";
import { settledFrom } from "../settling.ts";

/** Part of the range of the speed within which two stretches are one level. */
const SAME_SPEED_PART = 0.02;
/** The same, m/s: no more than noise about rest, and less than 0.01 of an advance ratio on most small thrusters. */
const SAME_SPEED = 0.02;

/**
 * Levels of the command or rotation rate, cut where the speed through the water changes: a carriage that goes to its next
 * speed under a constant throttle starts another plateau. Without a speed column, as they are.
 */
export function cutBySpeed(levels: readonly Level[], blocks: Blocks, speed: Channel | undefined): readonly Level[] {
  const { advanceSpeed } = blocks;
  if (!advanceSpeed || !speed) return levels;
  const resolution = Math.max(speed.resolution, SAME_SPEED);
  const bySpeed = levelsOf(advanceSpeed, blocks, { sameLevelPart: SAME_SPEED_PART, resolution });
  return levels.flatMap((level) => {
    const inside = bySpeed.map(({ first }) => first).filter((cut) => cut > level.first && cut < level.end);
    const edges = [level.first, ...inside, level.end];
    return edges.slice(1).map((end, i) => ({ first: edges[i]!, end, mean: level.mean }));
  });
}

/** First row from which the speed stays settled; null where it still moves when half of the span is over. */
export function speedSettledRow(speed: Channel | undefined, { from, to }: RowSpan): number | null {
  if (!speed) return from;
  const settled = settledFrom(samplesOf(speed, from, to), { tolerance: Math.max(speed.resolution, SAME_SPEED / 2) });
  return settled === null ? null : from + settled;
}

/** Whether the speed through the water climbs or falls all along a level. */
export function speedRamps(levels: readonly Level[], index: number, { advanceSpeed }: Blocks, from: number): boolean {
  if (!advanceSpeed) return false;
  const middle = (from + levels[index]!.end) >> 1;
  const change = moments(advanceSpeed, middle, levels[index]!.end).mean - moments(advanceSpeed, from, middle).mean;
  // From half to half a ramp changes by half of what it changes by from end to end.
  if (middle <= from || 2 * Math.abs(change) < SAME_SPEED) return false;
  const bySpeed = levels.map(({ first, end }) => ({ first, end, mean: moments(advanceSpeed, first, end).mean }));
  return isRamp(bySpeed, index, advanceSpeed, from);
}

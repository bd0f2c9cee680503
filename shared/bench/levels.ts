import { changePoints } from "../numeric/changePoint.ts";
import { medianAbsoluteDeviation } from "../numeric/median.ts";
import { moments } from "../numeric/moments.ts";
import type { Blocks } from "./blocks.ts";
import { rangeOf } from "./rest.ts";

/** A run of blocks on one level of the signal that was searched. */
export interface Level {
  readonly first: number;
  readonly end: number;
  readonly mean: number;
}

export interface LevelOptions {
  /** Part of the signal's range that a level may wander; smaller steps are not told apart. */
  readonly sameLevelPart: number;
  /** Step of the reading, unit of the signal: flicker between two neighbouring readings is not a change of level. */
  readonly resolution: number;
}

/** Fewest blocks in a level. */
const SHORTEST = 3;
/** Part of the step of the reading within which means are one level: a command may well be stepped by its last digit. */
const SAME_READING_PART = 0.9;
/** How many times the cost of a change in independent noise one change must pay: readings on a stand hang together. */
const CAUTION = 4;

/**
 * Levels of `signal`, one value a block, never across a restart of the log; neighbours whose means are alike are one.
 *
 * Source   change points as `changePoints`, with the noise from the steps between neighbours; the price of a change is
 *          four times that of independent noise, since readings on a stand hang together: common practice, no source.
 */
export function levelsOf(signal: Float64Array, blocks: Blocks, { sameLevelPart, resolution }: LevelOptions): Level[] {
  const same = Math.max(sameLevelPart * rangeOf(signal), SAME_READING_PART * resolution);
  return blocks.segments.flatMap(([first, end]) => {
    const part = signal.subarray(first, end);
    if (part.length < 2 * SHORTEST) return [{ first, end, mean: moments(part).mean }];
    const noise = Math.max(stepNoise(part), same / 3);
    const penalty = CAUTION * noise * noise * Math.log(part.length);
    const cuts = penalty > 0 ? changePoints(part, { minimumLength: SHORTEST, penalty }) : [];
    const edges = [0, ...cuts, part.length];
    const levels = cuts.concat(part.length).map((to, i) => level(signal, first + edges[i]!, first + to));
    return joined(levels, signal, same);
  });
}

function level(signal: Float64Array, first: number, end: number): Level {
  return { first, end, mean: moments(signal, first, end).mean };
}

/** Noise from block to block; jumps between levels are too few to raise a median. */
function stepNoise(values: Float64Array): number {
  const steps = values.subarray(1).map((value, i) => value - values[i]!);
  return medianAbsoluteDeviation(steps) / Math.SQRT2;
}

/** Neighbours closer than `same` are one level. */
function joined(levels: readonly Level[], signal: Float64Array, same: number): Level[] {
  const result: Level[] = [];
  for (const next of levels) {
    const last = result.at(-1);
    if (last && Math.abs(last.mean - next.mean) <= same)
      result[result.length - 1] = level(signal, last.first, next.end);
    else result.push(next);
  }
  return result;
}

import { moments } from "../numeric/moments.ts";
import type { Level } from "./levels.ts";
import { rangeOf } from "./rest.ts";

/**
 * Whether a level climbs or falls all along like a piece of a ramp: its own change is of the size of the steps to its
 * neighbours. A plateau that sags a little under a tiring battery changes far less than the step to the next one.
 */
export function isRamp(levels: readonly Level[], index: number, signal: Float64Array, from: number): boolean {
  return climbsAlone(levels, index, signal, from) || climbsWithNeighbours(levels, index, signal);
}

function climbsAlone(levels: readonly Level[], index: number, signal: Float64Array, from: number): boolean {
  const { first, end, mean } = levels[index]!;
  const change = Math.abs(changeAlong(signal, from, end));
  const longEnough = (other: Level) => other.end - other.first >= COMPARABLE * (end - first);
  // The slivers in which the signal passes from one plateau to the next say nothing of the step.
  const steps = [levels.slice(0, index).findLast(longEnough), levels.slice(index + 1).find(longEnough)]
    .filter((neighbour) => neighbour !== undefined)
    .map((neighbour) => Math.abs(neighbour.mean - mean));
  const step = steps.length > 0 ? Math.min(...steps) : rangeOf(signal);
  return change > RAMP_PART * step && change > LEAST_RAMP * rangeOf(signal);
}

/** Part of its length that a neighbour must have to be a level and no passage. */
const COMPARABLE = 0.25;
/** Part of the step to the nearest neighbour that a plateau may change by. */
const RAMP_PART = 0.4;
/** Changes smaller than this part of the signal's range are never a ramp. */
const LEAST_RAMP = 0.005;

/** Change of the least-squares line from the first to the last block. */
function changeAlong(signal: Float64Array, from: number, to: number): number {
  const count = to - from;
  if (count < 3) return 0;
  const { mean } = moments(signal, from, to);
  const middle = (count - 1) / 2;
  let above = 0;
  let below = 0;
  for (let i = 0; i < count; i++) {
    above += (i - middle) * (signal[from + i]! - mean);
    below += (i - middle) ** 2;
  }
  return (above / below) * (count - 1);
}

/** Neighbours that are looked at on each side, fewest levels in a chain, and how much longer than the level they may be. */
const CHAIN = { reach: 5, fewest: 4, longest: 4 };
/**
 * Part of what a true staircase leaves about a straight line that a chain must leave to be one. A ramp leaves -1 of it;
 * steps with a time constant of a twentieth of their length leave 0.5, and of a tenth 0.1.
 */
const STAIRCASE_PART = 0;

/**
 * A search for levels cuts a ramp into a staircase of short levels, and noise makes some of them look flat. Their chain
 * gives them away: a straight line lies as close to a ramp as the levels do, or closer; about a true staircase of
 * steps δ it leaves δ²/12 more than they.
 */
function climbsWithNeighbours(levels: readonly Level[], index: number, signal: Float64Array): boolean {
  return [1, -1].some((direction) => {
    const chain = chainAround(levels, index, direction);
    if (chain.length < CHAIN.fewest) return false;
    const [from, to] = [chain[0]!.first, chain.at(-1)!.end];
    const steps = chain.slice(1).map((level, i) => (level.mean - chain[i]!.mean) ** 2);
    const staircase = steps.reduce((sum, square) => sum + square, 0) / steps.length / 12;
    const aboutLevels = chain.reduce((sum, { first, end }) => sum + squaresAboutMean(signal, first, end), 0);
    const aboutLine = squaresAboutMean(signal, from, to) - squaresAlong(signal, from, to);
    return (aboutLine - aboutLevels) / (to - from) < STAIRCASE_PART * staircase;
  });
}

/** The level with its neighbours as far as they go on in one direction and are of comparable length. */
function chainAround(levels: readonly Level[], index: number, direction: number): Level[] {
  const longest = CHAIN.longest * (levels[index]!.end - levels[index]!.first);
  const goesOn = (from: number, to: number) => {
    const [a, b] = [levels[Math.min(from, to)], levels[Math.max(from, to)]];
    const next = levels[to];
    return a && b && next && next.end - next.first <= longest && direction * (b.mean - a.mean) > 0;
  };
  let first = index;
  while (index - first < CHAIN.reach && goesOn(first, first - 1)) first--;
  let last = index;
  while (last - index < CHAIN.reach && goesOn(last, last + 1)) last++;
  return levels.slice(first, last + 1);
}

function squaresAboutMean(signal: Float64Array, from: number, to: number): number {
  const { variance, count } = moments(signal, from, to);
  return variance * (count - 1);
}

/** Part of the sum of squares about the mean that the least-squares line takes up. */
function squaresAlong(signal: Float64Array, from: number, to: number): number {
  const count = to - from;
  const change = changeAlong(signal, from, to);
  const slope = change / (count - 1);
  return (slope * slope * count * (count * count - 1)) / 12;
}

import { median, medianAbsoluteDeviation } from "../numeric/median.ts";
import { everyNth } from "./settling.ts";

/** Scaled median absolute deviations from the median beyond which a reading is a glitch. Normal noise gets there twice in a billion readings, so that a long clean log has none. */
const GLITCH_DEVIATIONS = 6;
/** The deviation of few readings is itself uncertain: the limit is wider by this over the root of their number. */
const FEW_READINGS = 3.5;
/** Where more than this part of the readings lies outside, they may be how the channel behaves. */
const MOST_GLITCHES = 0.05;
/** They are glitches all the same up to this part, where they come singly and lie as many limits away. */
const DROP_OUTS = { part: 0.3, away: 3, longestRun: 2.5 };
/** Readings that median and deviation are taken from. */
const READINGS_FOR_MEDIAN = 4096;

/** Positions of readings far from all others. */
export interface WildReadings {
  /** Glitches: a spike, a drop-out. */
  readonly glitches: readonly number[];
  /** Close together at either end: the last of a step that passes, not a fault. */
  readonly tails: readonly number[];
  /** Number of those that are too many to be glitches, and were let stand. */
  readonly kept: number;
}

/** Deviations from which on a 0 in the file is a drop-out: noise gets there seldom, and hardly ever to the last digit. */
const NOUGHT_DEVIATIONS = 3;

const NONE: WildReadings = { glitches: [], tails: [], kept: 0 };

/**
 * Wild readings of `values`: those far from the median of all and far from their surroundings too, both in scaled median
 * absolute deviations. What is far from all but near to its surroundings is the end of a passing step, or a climb.
 * `resolution` is the step of the reading: readings a few steps apart are never wild. `nought`: the value of a reading
 * that stands as 0 in the file, as a link that drops out writes it; amid readings that are not near it, it is wild from
 * three deviations on.
 *
 * Source   Hampel, Journal of the American Statistical Association 69 (1974) 383.
 * Range    steady stretches; where more than 5 % lie outside they stand, unless they come singly and from far away, as
 *          drop-outs of a radio link do: then up to 30 % are glitches.
 */
export function spikesIn(values: Float64Array, resolution: number, nought = Number.NaN): WildReadings {
  const picked = everyNth(values, READINGS_FOR_MEDIAN);
  if (picked.length < 5) return NONE;
  const centre = median(picked);
  const least = Math.max(resolution, 1e-4 * Math.abs(centre));
  const spread = Math.max(medianAbsoluteDeviation(picked), least);
  const deviations = GLITCH_DEVIATIONS * (1 + FEW_READINGS / Math.sqrt(picked.length));
  const limit = deviations * spread;
  const isNoughtWild = Math.abs(nought - centre) > NOUGHT_DEVIATIONS * spread;
  const isNought = (at: number) => isNoughtWild && values[at] === nought;
  const outside: number[] = [];
  for (let i = 0; i < values.length; i++) {
    if (Math.abs(values[i]! - centre) > limit || isNought(i)) outside.push(i);
  }
  if (outside.length === 0) return NONE;
  const strays = strayFrom(surroundings(values, centre), values, least);
  const wild = outside.filter((at) => isNought(at) || strays(at, deviations));
  const most = Math.max(1, MOST_GLITCHES * values.length);
  const isFar = (at: number) => isNought(at) || Math.abs(values[at]! - centre) > DROP_OUTS.away * limit;
  const isFault = wild.length <= most || areDropOuts(wild, values.length, isFar);
  const tails = tailsIn(values, outside);
  const glitches = wild.filter((at) => !tails.has(at));
  const inside = outside.filter((at) => !tails.has(at)).length;
  const stand = inside - glitches.length;
  if (!isFault || stand > most) return { ...NONE, kept: inside > most ? inside : 0 };
  return { glitches, tails: [...tails], kept: 0 };
}

function areDropOuts(wild: readonly number[], count: number, isFar: (at: number) => boolean): boolean {
  if (wild.length > DROP_OUTS.part * count) return false;
  const runs = wild.filter((at, i) => i === 0 || wild[i - 1] !== at - 1).length;
  const near = wild.filter((at) => !isFar(at)).length;
  return wild.length <= DROP_OUTS.longestRun * runs && near <= MOST_GLITCHES * count;
}

/** A tail is noisy: one reading in so many of it is wild, counted from the end. */
const TAIL = 3;
/** Part of a long stretch at either end that may be of the step before or after it: its edges are found on block means. */
const EDGE = { part: 0.01, longFrom: 300 };

/** Positions of `outside` at either end, missing readings not counted. */
function tailsIn(values: Float64Array, outside: readonly number[]): ReadonlySet<number> {
  const ranks: number[] = [];
  let known = 0;
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i]!)) continue;
    if (outside[ranks.length] === i) ranks.push(known);
    known++;
  }
  const tails = tailsOf(ranks, known);
  return new Set(outside.filter((_, i) => tails.has(ranks[i]!)));
}

/** Those of `wild` that lie close together at either end, or within its edges. */
function tailsOf(wild: readonly number[], count: number): ReadonlySet<number> {
  let first = 0;
  const edge = count < EDGE.longFrom ? 0 : EDGE.part * count;
  while (first < wild.length && wild[first]! <= Math.max(edge, TAIL * first)) first++;
  let last = wild.length;
  while (last > first && count - 1 - wild[last - 1]! <= Math.max(edge, TAIL * (wild.length - last))) last--;
  return new Set([...wild.slice(0, first), ...wild.slice(last)]);
}

/** Parts of a stretch whose medians follow it as it settles, and fewest readings in one: few bend to a glitch. */
const SURROUNDINGS = { parts: 24, fewest: 9 };

/** What `values` are about at each position: the medians of neighbouring parts, joined by straight lines. */
function surroundings(values: Float64Array, centre: number): (at: number) => number {
  const parts = Math.min(SURROUNDINGS.parts, Math.floor(values.length / SURROUNDINGS.fewest));
  if (parts < 3) return () => centre;
  const length = values.length / parts;
  const medians = Float64Array.from({ length: parts }, (_, part) => {
    const own = values.subarray(Math.floor(part * length), Math.floor((part + 1) * length));
    const known = everyNth(own, Math.ceil(READINGS_FOR_MEDIAN / parts));
    return known.length > 0 ? median(known) : centre;
  });
  return (at) => {
    const place = Math.min(parts - 2, Math.max(0, Math.floor((at + 0.5) / length - 0.5)));
    const beyond = (at + 0.5) / length - 0.5 - place;
    return medians[place]! + beyond * (medians[place + 1]! - medians[place]!);
  };
}

/** Whether the reading at a position lies more than so many deviations from its surroundings. */
function strayFrom(about: (at: number) => number, values: Float64Array, least: number) {
  const stride = Math.max(1, Math.floor(values.length / READINGS_FOR_MEDIAN));
  const residuals = new Float64Array(Math.ceil(values.length / stride));
  for (let k = 0; k < residuals.length; k++) residuals[k] = values[k * stride]! - about(k * stride);
  const spread = Math.max(medianAbsoluteDeviation(everyNth(residuals, READINGS_FOR_MEDIAN)), least);
  return (at: number, deviations: number) => Math.abs(values[at]! - about(at)) > deviations * spread;
}

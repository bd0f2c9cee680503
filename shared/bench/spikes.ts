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
 * Wild readings of `values`, by distance from the median in scaled median absolute deviations. `resolution` is the step
 * of the reading: readings a few steps apart are never wild. `nought`: the value of a reading that stands as 0 in the
 * file, as a link that drops out writes it; amid readings that are not near it, it is wild from three deviations on.
 *
 * Source   Hampel, Journal of the American Statistical Association 69 (1974) 383.
 * Range    steady stretches; of a ramp the ends would be cut off, so it lets them stand where more than 5 % lie outside,
 *          unless they come singly and from far away, as drop-outs of a radio link do: then up to 30 %.
 */
export function spikesIn(values: Float64Array, resolution: number, nought = Number.NaN): WildReadings {
  const picked = everyNth(values, READINGS_FOR_MEDIAN);
  if (picked.length < 5) return NONE;
  const centre = median(picked);
  const spread = Math.max(medianAbsoluteDeviation(picked), resolution, 1e-4 * Math.abs(centre));
  const limit = GLITCH_DEVIATIONS * (1 + FEW_READINGS / Math.sqrt(picked.length)) * spread;
  const isNoughtWild = Math.abs(nought - centre) > NOUGHT_DEVIATIONS * spread;
  const wild: number[] = [];
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Math.abs(value - centre) > limit || (isNoughtWild && value === nought)) wild.push(i);
  }
  const most = Math.max(1, MOST_GLITCHES * values.length);
  const found = withoutTails(wild, values.length);
  const isFar = (at: number) => values[at] === nought || Math.abs(values[at]! - centre) > DROP_OUTS.away * limit;
  if (wild.length <= most || areDropOuts(wild, values.length, isFar)) return { ...found, kept: 0 };
  return { ...NONE, kept: found.glitches.length > most ? found.glitches.length : 0 };
}

function areDropOuts(wild: readonly number[], count: number, isFar: (at: number) => boolean): boolean {
  if (wild.length > DROP_OUTS.part * count) return false;
  const runs = wild.filter((at, i) => i === 0 || wild[i - 1] !== at - 1).length;
  const near = wild.filter((at) => !isFar(at)).length;
  return wild.length <= DROP_OUTS.longestRun * runs && near <= MOST_GLITCHES * count;
}

/** A tail is noisy: one reading in so many of it is wild, counted from the end. */
const TAIL = 3;

function withoutTails(wild: readonly number[], count: number): Pick<WildReadings, "glitches" | "tails"> {
  let first = 0;
  while (first < wild.length && wild[first]! <= TAIL * first) first++;
  let last = wild.length;
  while (last > first && count - 1 - wild[last - 1]! <= TAIL * (wild.length - last)) last--;
  return { glitches: wild.slice(first, last), tails: [...wild.slice(0, first), ...wild.slice(last)] };
}

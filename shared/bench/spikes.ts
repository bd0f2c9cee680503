import { median, medianAbsoluteDeviation } from "../numeric/median.ts";
import { everyNth } from "./settling.ts";

/** Scaled median absolute deviations from the median beyond which a reading is a glitch. Normal noise gets there twice in a billion readings, so that a long clean log has none. */
const GLITCH_DEVIATIONS = 6;
/** Where more than this part of the readings lies outside, they are not glitches but how the channel behaves. */
const MOST_GLITCHES = 0.05;
/** Readings that median and deviation are taken from. */
const READINGS_FOR_MEDIAN = 4096;

/**
 * Positions in `values` of single wild readings, by distance from the median in scaled median absolute deviations.
 * `resolution` is the step of the reading: readings a few steps apart are never wild.
 *
 * Source   Hampel, Journal of the American Statistical Association 69 (1974) 383.
 * Range    steady stretches; of a ramp the ends would be cut off, so it refuses where more than 5 % lie outside.
 */
export function spikesIn(values: Float64Array, resolution: number): number[] {
  const picked = everyNth(values, READINGS_FOR_MEDIAN);
  if (picked.length < 5) return [];
  const centre = median(picked);
  const limit = GLITCH_DEVIATIONS * Math.max(medianAbsoluteDeviation(picked), resolution, 1e-4 * Math.abs(centre));
  const wild: number[] = [];
  for (let i = 0; i < values.length; i++) if (Math.abs(values[i]! - centre) > limit) wild.push(i);
  return wild.length <= Math.max(1, MOST_GLITCHES * values.length) ? wild : [];
}

import { effectiveSampleSize } from "../numeric/autocorrelation.ts";
import { laggedCorrelation } from "../numeric/crossCorrelation.ts";
import { type EvenSignal, evenly, type Signal, thinned, usualStep, withoutMissing } from "./steadyStep.ts";

/** The lag at which two signals match best: time on the first clock = time on the second + lag. */
export interface FoundLag {
  /** s */
  readonly lag: number;
  /** Standard uncertainty, s. */
  readonly uncertainty: number;
  /** The part of it that differs between two stretches of the same logs, s. */
  readonly scatter: number;
  /** Time on the second clock at which the changes lie that the lag rests on, in the mean, s. */
  readonly centre: number;
  readonly correlation: number;
  /** Best correlation at a lag that does not belong to the same peak; 0 where there is none. */
  readonly runnerUp: number;
  /**
   * `alone`: no other lag matches nearly as well. `whole`: another does where the logs overlap, but would leave steps in
   * one log that the other does not show. `none`: neither settles it.
   */
  readonly distinct: "alone" | "whole" | "none";
}

export interface LagQuestion {
  /** Where to look; at all lags where absent. s */
  readonly near?: { readonly lag: number; readonly within: number };
  /** Both are the same quantity. Others only rise and fall together, and their best correlation tells little apart. */
  readonly alike?: boolean;
}

/** Points that the first, coarse search compares: all lags of so many cost a few million products. */
const COARSE_POINTS = 2000;
/** Points at most of the fine search. */
const FINE_POINTS = 200_000;
/** Peaks of the coarse search that are looked at closely. */
const PEAKS = 12;
/** Both logs must run beside each other for this part of the shorter. */
const OVERLAP = 0.3;
const FINER = 8;
/** Any other lag must leave this many times as much of the signal unexplained. Common practice, no source. */
const DISTINCT = 1.5;
/** A dip of the correlation by less than this does not part two peaks. */
const DIP = 0.02;

/**
 * Lag of `second` against `first` by normalised cross-correlation, over all lags with enough overlap or within `near`.
 *
 * Both are brought to one even step, the longer of theirs. A coarse search over all lags finds the peaks, each is then
 * searched in ever finer steps, and a parabola through the best three gives the part of a step.
 * The uncertainty is that of a least-squares shift, u² = s_e² / Σ (a y')² with the residuals e = x − b − a y counted as
 * often as they are independent, and one step as a rectangular distribution (JCGM 100:2008, 4.3.7).
 * Null where either signal holds fewer than eight readings or does not change.
 */
export function findLag(first: Signal, second: Signal, { near, alike = true }: LagQuestion = {}): FoundLag | null {
  const [x, y] = [withoutMissing(first), withoutMissing(second)];
  if (x.times.length < 8 || y.times.length < 8) return null;
  const span = Math.max(x.times.at(-1)! - x.times[0]!, y.times.at(-1)! - y.times[0]!);
  const step = Math.max(usualStep(x.times), usualStep(y.times), span / FINE_POINTS);
  if (!(step > 0)) return null;
  const fine = { x: evenly(x, step), y: evenly(y, step) };
  const factor = Math.max(1, Math.round(span / step / COARSE_POINTS));
  const best = near ? [near] : coarsePeaks(fine, factor);
  const within = near ? near.within : 2 * factor * step;
  const peaks = best.map(({ lag }) => refined(fine, lag, within, factor)).sort((a, b) => b.correlation - a.correlation);
  if (!(peaks[0] && peaks[0].correlation > 0)) return null;
  const isApart = (a: Peak, b: Peak) => Math.abs(a.lag - b.lag) > 3 * factor * step;
  const { top, distinct } = settled(peaks, isApart, alike ? ALIKE : UNLIKE);
  const others = peaks.filter((peak) => isApart(peak, top)).map(({ correlation }) => correlation);
  return { ...top, ...shiftUncertainty(fine, top.lag), runnerUp: Math.max(0, ...others), distinct };
}

/** The best match; where others match as well in their overlap, the one that leaves least of either log unmatched. */
function settled(
  peaks: readonly Peak[],
  isApart: (a: Peak, b: Peak) => boolean,
  telling: number,
): { readonly top: Peak; readonly distinct: FoundLag["distinct"] } {
  const first = peaks[0]!;
  const least = DISTINCT * unexplained(first.correlation, telling);
  const rivals = peaks.filter(({ correlation }) => unexplained(correlation, telling) < least);
  if (!rivals.some((peak) => isApart(peak, first))) return { top: first, distinct: "alone" };
  const top = rivals.reduce((a, b) => (b.matched > a.matched ? b : a));
  const next = Math.max(0, ...rivals.filter((peak) => isApart(peak, top)).map(({ matched }) => matched));
  return { top, distinct: unexplained(next, ALIKE) >= DISTINCT * unexplained(top.matched, ALIKE) ? "whole" : "none" };
}

/** Beyond these a higher correlation tells nothing more: rounding, or a relation that is no straight line. */
const ALIKE = 0.9999;
const UNLIKE = 0.95;

/** Part of a signal that a correlation leaves unexplained; what is beyond `telling` counts as that. */
const unexplained = (correlation: number, telling: number) => 1 - Math.min(correlation, telling) ** 2;

interface Pair {
  readonly x: EvenSignal;
  readonly y: EvenSignal;
}

interface Peak {
  readonly lag: number;
  readonly correlation: number;
  /** The correlation times the part of both signals that it rests on: 1 where all of both is matched. */
  readonly matched: number;
}

/** Correlations at the whole lags `from` to `to`, in steps of the pair. */
function curve(pair: Pair, from: number, to: number): Float64Array {
  const fewest = Math.max(4, OVERLAP * Math.min(pair.x.values.length, pair.y.values.length));
  return Float64Array.from(
    { length: Math.max(0, to - from + 1) },
    (_, i) => laggedCorrelation(pair.x.values, pair.y.values, from + i, fewest).correlation,
  );
}

/** A lag in steps is this one in seconds: both series start on their own clocks. */
const seconds = ({ x, y }: Pair, lag: number) => lag * x.step + (x.start - y.start);
const steps = ({ x, y }: Pair, lag: number) => (lag - (x.start - y.start)) / x.step;

function coarsePeaks(fine: Pair, factor: number): { readonly lag: number }[] {
  const pair = { x: thinned(fine.x, factor), y: thinned(fine.y, factor) };
  const from = -pair.y.values.length + 1;
  const correlations = curve(pair, from, pair.x.values.length - 1);
  return separatePeaks(correlations).map((i) => ({ lag: seconds(pair, from + i) }));
}

/** Indices of the highest maxima that are parted by a real dip, highest first. */
function separatePeaks(curve: Float64Array): number[] {
  const maxima = [...curve.keys()]
    .filter((i) => curve[i]! > 0 && curve[i]! >= (curve[i - 1] ?? -1) && curve[i]! > (curve[i + 1] ?? -1))
    .sort((a, b) => curve[b]! - curve[a]!);
  const kept: number[] = [];
  for (const i of maxima) {
    if (kept.length === PEAKS) break;
    if (kept.every((other) => lowest(curve, i, other) < curve[i]! - DIP)) kept.push(i);
  }
  return kept;
}

function lowest(curve: Float64Array, a: number, b: number): number {
  let least = Infinity;
  for (let i = Math.min(a, b); i <= Math.max(a, b); i++) least = Math.min(least, curve[i]!);
  return least;
}

/** Searches around `lag` in ever finer steps. */
function refined(fine: Pair, lag: number, within: number, factor: number): Peak {
  let [best, reach] = [lag, within];
  for (let coarse = factor; ; coarse = Math.max(1, Math.floor(coarse / FINER))) {
    const pair = coarse === 1 ? fine : { x: thinned(fine.x, coarse), y: thinned(fine.y, coarse) };
    const from = Math.floor(steps(pair, best - reach)) - 1;
    const correlations = curve(pair, from, Math.ceil(steps(pair, best + reach)) + 1);
    let top = 0;
    correlations.forEach((value, i) => {
      if (value > correlations[top]!) top = i;
    });
    best = seconds(pair, from + top + vertex(correlations, top));
    reach = 2 * pair.x.step;
    if (coarse === 1) return { lag: best, ...matchAt(fine, from + top) };
  }
}

function matchAt({ x, y }: Pair, lag: number): { correlation: number; matched: number } {
  const { correlation, energies } = laggedCorrelation(x.values, y.values, lag, 4);
  const whole =
    laggedCorrelation(x.values, x.values, 0, 4).energies[0] * laggedCorrelation(y.values, y.values, 0, 4).energies[0];
  return { correlation, matched: whole > 0 ? correlation * Math.sqrt((energies[0] * energies[1]) / whole) : 0 };
}

/** Where the parabola through a maximum and its neighbours is highest, in steps from the maximum. */
function vertex(curve: Float64Array, top: number): number {
  const [left, middle, right] = [curve[top - 1], curve[top]!, curve[top + 1]];
  if (left === undefined || right === undefined) return 0;
  const bend = left - 2 * middle + right;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (left - right) / (2 * bend))) : 0;
}

/** Interpolation between readings shifts a lag by less than this part of a step. Seen on series of known lag. */
const INTERPOLATION = 0.05;

function shiftUncertainty(fine: Pair, lag: number): Pick<FoundLag, "uncertainty" | "scatter" | "centre"> {
  const shift = Math.round(steps(fine, lag));
  const { x, y } = fine;
  const pairs: { a: number; b: number; slope: number; time: number }[] = [];
  for (let i = 1; i + 1 < y.values.length; i++) {
    const a = x.values[i + shift] ?? Number.NaN;
    const slope = (y.values[i + 1]! - y.values[i - 1]!) / (2 * y.step);
    if (!Number.isNaN(a) && !Number.isNaN(slope) && !Number.isNaN(y.values[i]!)) {
      pairs.push({ a, b: y.values[i]!, slope, time: y.start + i * y.step });
    }
  }
  const step = x.step / Math.sqrt(12);
  if (pairs.length < 8) return { uncertainty: x.step, scatter: x.step, centre: y.start };
  const mean = (value: (pair: (typeof pairs)[number]) => number) =>
    pairs.reduce((sum, pair) => sum + value(pair), 0) / pairs.length;
  const [meanA, meanB] = [mean(({ a }) => a), mean(({ b }) => b)];
  const scale = mean(({ a, b }) => (a - meanA) * (b - meanB)) / mean(({ b }) => (b - meanB) ** 2);
  const residuals = Float64Array.from(pairs, ({ a, b }) => a - meanA - scale * (b - meanB));
  const { inflation } = effectiveSampleSize(residuals);
  const variance = residuals.reduce((sum, e) => sum + e * e, 0) / Math.max(1, pairs.length - 3);
  const steepness = pairs.reduce((sum, { slope }) => sum + slope * slope, 0);
  const shift2 = (variance * inflation) / (scale ** 2 * steepness);
  const centre = pairs.reduce((sum, { slope, time }) => sum + slope * slope * time, 0) / steepness;
  return {
    uncertainty: Math.hypot(Math.sqrt(shift2), step),
    scatter: Math.hypot(Math.sqrt(shift2), INTERPOLATION * x.step),
    centre,
  };
}

import { median } from "../numeric/median.ts";
import { samplesOf, writtenKey } from "./channels.ts";
import type { PlateauSearch } from "./plateauSpans.ts";
import { remembered } from "./remembered.ts";
import type { RowSpan } from "./rest.ts";
import { creeps, everyNth, settledFrom } from "./settling.ts";
import { segmentOf } from "./tareLine.ts";

/** Part by which the rotation rate may still move on a plateau: thrust moves with its square, and the ratio is what counts. */
const RATE_TOLERANCE = 0.01;
/** Part by which thrust over rotation rate squared may still move. */
const RATIO_TOLERANCE = 0.002;

/** Part by which it may creep over the whole of a plateau. */
const CREEP_TOLERANCE = 0.02;
/** The same as part of the thrust at the top rotation rate: what does not matter there need not throw a slow plateau out. */
const CREEP_OF_GREATEST = 0.005;

/** Steps of which the outcome is kept: a row number each. */
const KEPT_STEPS = 10_000;

/**
 * First row from which rotation rate and thrust per rotation rate squared stay settled; null where they do not. Thrust is
 * looked at as written: only parts of it count.
 */
export function settledRow(search: PlateauSearch, span: RowSpan): number | null {
  const { channels, timeline, tare, rest } = search;
  const segment = segmentOf(timeline, span.from);
  const [first, last] = [span.from, span.to - 1].map((row) => tare.writtenAt(timeline.times[row]!, segment));
  const dependsOn = [span, first, last, writtenKey(channels.thrust)];
  // A tare window that is moved changes the zero of its neighbours alone.
  return remembered(rest, { stage: "settled", dependsOn, budget: KEPT_STEPS }, () =>
    settledAnew(search, span, { first: first!, last: last! }),
  );
}

/** `zero`: the reading of thrust that is nothing at the first row and at the last. */
function settledAnew(
  { channels, rest }: PlateauSearch,
  { from, to }: RowSpan,
  zero: { readonly first: number; readonly last: number },
): number | null {
  const rates = samplesOf(channels.rotationRate, from, to);
  const thrusts = channels.thrust.raw.subarray(from, to);
  // The zero moves on during the step; holding it still would make a slow propeller look as if it crept.
  const drift = (zero.last - zero.first) / Math.max(1, to - from - 1);
  const typicalRate = Math.abs(lateMedian(rates));
  if (!(typicalRate > 0)) return null;
  const byRate = settledFrom(rates, {
    tolerance: Math.max(RATE_TOLERANCE * typicalRate, channels.rotationRate.resolution),
  });
  const ratios = new Float64Array(rates.length);
  for (let i = 0; i < ratios.length; i++) {
    const square = rates[i]! * rates[i]!;
    ratios[i] = square > 0 ? (thrusts[i]! - zero.first - drift * i) / square : Number.NaN;
  }
  const step = channels.thrust.writtenStep / typicalRate ** 2;
  const byRatio = settledFrom(ratios, { tolerance: Math.max(RATIO_TOLERANCE * Math.abs(lateMedian(ratios)), step) });
  if (byRate === null || byRatio === null) return null;
  const settled = Math.max(byRate, byRatio);
  const part = Math.max(CREEP_TOLERANCE, CREEP_OF_GREATEST * (rest.topRate / typicalRate) ** 2);
  const creeping = creeps(ratios.subarray(settled), part * Math.abs(lateMedian(ratios)));
  return creeping ? null : from + settled;
}

/** Typical value of the second half, undisturbed by glitches. */
function lateMedian(values: Float64Array): number {
  const late = everyNth(values.subarray(values.length >> 1), 512);
  return late.length > 0 ? median(late) : 0;
}

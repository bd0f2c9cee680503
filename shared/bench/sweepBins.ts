import { InputProblem } from "../quantity/problem.ts";
import type { FoundSpan, PlateauSearch, PlateauSpans, Rejected } from "./plateauSpans.ts";

/** Bins from the slowest counted rotation rate to the top one. */
const BINS = 12;
/** Part of the top rotation rate below which a sweep is not counted: motors jerk into motion there, and thrust is 1 % of the greatest. */
const SLOWEST_PART = 0.1;
/** Part of a bin by which the rate must be outside before the next one begins, so that noise at a border cuts nothing. */
const BORDER = 0.2;
/** Fewest rows in a bin of one passage. */
const FEWEST_ROWS = 5;
/** Fewest bins that a regression through the origin is shown with. */
const FEWEST_BINS = 4;

/**
 * The stretches in which a slow ramp passes through equal bins of rotation rate, up and down apart. They are no plateaus:
 * they show the run as points, while the coefficient comes from the whole trace (`sweepFitOf`).
 * Throws InputProblem `bench.sweep-without-clock` or `bench.sweep-too-short`.
 */
export function sweepBins({ timeline, blocks, rest, channels }: PlateauSearch): PlateauSpans {
  if (timeline.kind !== "clock") throw withoutClock(channels.rotationRate.header);
  const slowest = Math.max(rest.rateLimit, SLOWEST_PART * rest.topRate);
  const width = (rest.topRate - slowest) / BINS;
  const spans: FoundSpan[] = [];
  const rejected: Rejected[] = [];
  const close = (first: number, end: number, bin: number) => {
    const turn = bin < 0 ? null : turningBlock(blocks.rotationRate, first, end, width / 2);
    for (const [from, to] of turn === null
      ? [[first, end]]
      : [
          [first, turn],
          [turn, end],
        ])
      keep(from!, to!, bin);
  };
  const keep = (first: number, end: number, bin: number) => {
    const span = { from: blocks.starts[first]!, to: blocks.starts[end]! };
    if (bin < 0) rejected.push({ span, because: "at rest" });
    else if (span.to - span.from < FEWEST_ROWS) rejected.push({ span, because: "too short" });
    else spans.push({ ...span, foundBy: "binned", settlingTime: null });
  };
  for (const [start, end] of blocks.segments) {
    let first = start;
    let bin = binOf(blocks.rotationRate[start] ?? 0, slowest, width, -2);
    for (let block = start + 1; block < end; block++) {
      const next = binOf(blocks.rotationRate[block]!, slowest, width, bin);
      if (next === bin) continue;
      close(first, block, bin);
      first = block;
      bin = next;
    }
    if (end > first) close(first, end, bin);
  }
  if (spans.length < FEWEST_BINS) throw tooShort(spans.length);
  return { spans, rejected, passedOver: [], foundBy: "bins of rotation rate" };
}

/** Where a ramp turns round within a bin: the block that lies more than `least` above, or below, both ends; else null. */
function turningBlock(rates: Float64Array, first: number, end: number, least: number): number | null {
  let [highest, lowest] = [first, first];
  for (let block = first; block < end; block++) {
    if (rates[block]! > rates[highest]!) highest = block;
    if (rates[block]! < rates[lowest]!) lowest = block;
  }
  const [start, last] = [rates[first]!, rates[end - 1]!];
  if (rates[highest]! - Math.max(start, last) > least) return highest;
  return Math.min(start, last) - rates[lowest]! > least ? lowest : null;
}

/** Bin of a rotation rate that was in `last` just before; -1 below the slowest counted. */
function binOf(rate: number, slowest: number, width: number, last: number): number {
  const place = (rate - slowest) / width;
  if (last >= -1 && place > last - BORDER && place < last + 1 + BORDER) return last;
  return place < 0 ? -1 : Math.min(BINS - 1, Math.floor(place));
}

function withoutClock(header: string): InputProblem {
  return new InputProblem({
    code: "bench.sweep-without-clock",
    where: `recipe.plateaus, column ${header}`,
    found: "the log has no time column that goes on from row to row",
    needed:
      "the time of each row: thrust lags behind the rotation rate on a ramp, and the lag is part of the regression",
    mend: "Mark the time column, or go back to automatic plateaus",
  });
}

function tooShort(count: number): InputProblem {
  return new InputProblem({
    code: "bench.sweep-too-short",
    where: "recipe.plateaus",
    found: `the rotation rate passes through ${count} of ${BINS} bins for long enough to be read`,
    needed: `a slow ramp with ${FEWEST_ROWS} rows or more in each of ${FEWEST_BINS} bins of rotation rate`,
    mend: "Ramp more slowly or log faster, or go back to automatic plateaus",
  });
}

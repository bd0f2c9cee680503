import type { Recipe } from "../model/recipe.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { type Channels, valueAt } from "./channels.ts";
import type { Rest, RowSpan } from "./rest.ts";
import { settledFrom } from "./settling.ts";
import { rowAt, type Timeline } from "./timeline.ts";

/** Shortest rest that counts as a tare, s and rows. */
const SHORTEST = { seconds: 0.5, rows: 3 };
/** Part of a step that adding up times may be off by. */
const ROUNDING = 1e-3;
/** Last part of a rest that is left out: the thrust may rise before the rotation rate is seen to. s */
const LEAD = 0.1;

export interface TareWindows {
  readonly spans: readonly RowSpan[];
  readonly warnings: readonly Warning[];
}

/** Rows in which the propeller stands and the scale is settled, by the rule that the recipe states. */
export function tareWindowsOf(channels: Channels, timeline: Timeline, rest: Rest, recipe: Recipe): TareWindows {
  const { tare } = recipe;
  if (tare.mode === "none") return { spans: [], warnings: [] };
  if (tare.mode === "windows") {
    const spans = tare.windows.map((window, i) => windowRows(window, timeline, `recipe.tare.windows[${i}]`));
    return { spans, warnings: spans.flatMap((span, i) => turningWarning(span, channels, rest, i)) };
  }
  const spans =
    timeline.kind === "readings" ? restingRows(channels, timeline, rest) : restingStretches(channels, timeline, rest);
  return { spans, warnings: spans.length === 0 ? [noTare()] : [] };
}

/** In a hand-written table every row at zero speed is a reading of the zero. */
function restingRows({ rotationRate, thrust }: Channels, timeline: Timeline, rest: Rest): RowSpan[] {
  const spans: RowSpan[] = [];
  for (let row = 0; row < timeline.times.length; row++) {
    const resting = Math.abs(valueAt(rotationRate, row)) <= rest.rateLimit;
    if (resting && Number.isFinite(valueAt(thrust, row))) spans.push({ from: row, to: row + 1 });
  }
  return spans;
}

function restingStretches(channels: Channels, timeline: Timeline, rest: Rest): RowSpan[] {
  return rest.stretches.flatMap((stretch) => {
    const lead = timeline.kind === "clock" ? Math.max(1, Math.round(LEAD / timeline.step)) : 1;
    const to = Math.max(stretch.from, stretch.to - Math.min(lead, Math.ceil(0.2 * (stretch.to - stretch.from))));
    const readings = channels.thrust.raw.subarray(stretch.from, to);
    const settled = settledFrom(readings, { tolerance: channels.thrust.writtenStep });
    // A zero that creeps all through a rest is still the best zero there is: its second half is taken.
    const span = { from: stretch.from + (settled ?? readings.length >> 1), to };
    return longEnough(span, timeline) && hasNumber(channels, span) ? [span] : [];
  });
}

function longEnough({ from, to }: RowSpan, timeline: Timeline): boolean {
  if (to - from < SHORTEST.rows) return false;
  return (
    timeline.kind !== "clock" ||
    timeline.times[to - 1]! - timeline.times[from]! >= SHORTEST.seconds - ROUNDING * timeline.step
  );
}

function hasNumber({ thrust }: Channels, { from, to }: RowSpan): boolean {
  for (let row = from; row < to; row++) if (Number.isFinite(valueAt(thrust, row))) return true;
  return false;
}

function windowRows(window: { start: number; end: number }, timeline: Timeline, where: string): RowSpan {
  const from = rowAt(timeline, window.start);
  let to = from;
  while (to < timeline.times.length && timeline.times[to]! <= window.end) to++;
  if (to > from) return { from, to };
  throw new InputProblem({
    code: "bench.empty-tare-window",
    where,
    found: `no row of the log lies between ${window.start} s and ${window.end} s`,
    needed: `a window inside the log, ${timeline.times[0]!.toPrecision(4)} s to ${timeline.times.at(-1)!.toPrecision(4)} s`,
    mend: "Set the window again where the propeller stands still",
  });
}

function turningWarning({ from, to }: RowSpan, { rotationRate }: Channels, rest: Rest, index: number): Warning[] {
  let turning = 0;
  for (let row = from; row < to; row++) if (Math.abs(valueAt(rotationRate, row)) > rest.rateLimit) turning++;
  if (turning <= 0.05 * (to - from)) return [];
  return [
    warning({
      code: "bench.tare-while-turning",
      where: `recipe.tare.windows[${index}]`,
      found: `the propeller turns in ${turning} of the ${to - from} rows of this tare window`,
      needed: "a window in which it stands still",
      mend: "Move the window: thrust in it is taken off every plateau",
    }),
  ];
}

function noTare(): Warning {
  return warning({
    code: "bench.no-tare",
    where: "tare",
    found:
      "the log holds no rest at zero throttle, so the zero of the scale is not known and its reading was taken as it is",
    needed: "a few seconds with the propeller at rest before and after the run",
    mend: "Log a rest, or mark a window in which it stands still; the offset column of the calibration also serves",
  });
}

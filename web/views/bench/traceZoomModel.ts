import type { Trace } from "../../../shared/model/trace.ts";
import type { Stretch } from "../../charts/canvasChart.ts";

/** The samples of a stretch of a log, finer than those of the whole. */
export interface FinerTrace {
  /** Run and recipe it was read with. */
  readonly of: string;
  readonly stretch: Stretch;
  readonly trace: Trace;
}

/** The finer trace holds all of `stretch`, and was read as the whole trace was. */
export function coversStretch(finer: FinerTrace | null, of: string, { from, to }: Stretch): finer is FinerTrace {
  return finer !== null && finer.of === of && finer.stretch.from <= from && finer.stretch.to >= to;
}

/** What one point of the picture stands for, so that nobody takes an extreme for a sample. */
export function fineness({ raw, start, end, times }: Trace, hasClock: boolean): string {
  if (raw === true) return "Samples as logged.";
  const width = (end - start) / times.length;
  const each = hasClock ? stepInWords(width) : `${Math.round(width)} rows`;
  return `Extremes of each step of ${each}: zoom in for the samples as logged.`;
}

function stepInWords(seconds: number): string {
  return seconds < 1
    ? `${Number((1000 * seconds).toPrecision(2))}\u202fms`
    : `${Number(seconds.toPrecision(2))}\u202fs`;
}

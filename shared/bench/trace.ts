import type { LogTable } from "../log/logTable.ts";
import { ROLE_DIMENSIONS } from "../log/roleUnits.ts";
import type { UsedInstruments } from "../model/instrument.ts";
import type { ColumnRole, Recipe } from "../model/recipe.ts";
import type { Trace } from "../model/trace.ts";
import { symbolsOf } from "../quantity/unit.ts";
import { type Channel, channelsByRole } from "./channels.ts";
import { remembered } from "./remembered.ts";
import { rowAt, type Timeline, timelineOf } from "./timeline.ts";
import { extremesBetween, tracePyramid } from "./tracePyramid.ts";

export interface TraceRequest {
  readonly table: LogTable;
  readonly recipe: Recipe;
  /** As in `RunRequest`. */
  readonly instruments?: UsedInstruments | undefined;
  /** Part of the log, s; the whole of it where not given. */
  readonly from?: number | undefined;
  readonly to?: number | undefined;
  /** Steps to cut it into. */
  readonly points: number;
}

/**
 * Least and greatest value of each channel in `points` equal steps of time, SI; what a chart needs, whatever the length
 * of the log. A single glitch stays visible. Where the span holds no more rows than steps, the rows themselves, flagged
 * `raw`. Time is that of `timelineOf`: rows where the log has no clock.
 * Throws   as channelsByRole.
 */
export function traceOf({ table, recipe, instruments, from, to, points }: TraceRequest): Trace {
  const channels = channelsByRole(table, recipe, instruments);
  const timeline = timelineOf(table, channels.get("time"));
  const { times } = timeline;
  const start = from ?? times[0]!;
  const end = Math.max(to ?? times.at(-1)!, start);
  const count = Math.max(1, Math.floor(points));
  const rows = { from: rowAt(timeline, start), to: rowAfter(timeline, end) };
  const isRaw = rows.to - rows.from > 0 && rows.to - rows.from <= count;
  const steps = isRaw ? rowSteps(timeline, rows) : equalSteps(timeline, { start, end, count, rows });
  return {
    start,
    end,
    ...(isRaw && { raw: true }),
    times: steps.times,
    channels: [...channels.values()]
      .filter((channel) => channel.role !== "time")
      .map((channel) => ({
        role: channel.role,
        header: channel.header,
        unit: unitOf(channel),
        ...extremes(channel, steps.edges),
      })),
  };
}

/** What is drawn: the time of each step, and the rows at which it starts; one more for the end of the last. */
interface Steps {
  readonly times: number[];
  readonly edges: readonly number[];
}

interface Rows {
  readonly from: number;
  readonly to: number;
}

function rowSteps({ times }: Timeline, { from, to }: Rows): Steps {
  const edges = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  return { times: [...times.subarray(from, to)], edges };
}

function equalSteps(
  timeline: Timeline,
  { start, end, count, rows }: { start: number; end: number; count: number; rows: Rows },
): Steps {
  const width = (end - start) / count || 1;
  const edges = Array.from({ length: count + 1 }, (_, bin) => rowAt(timeline, start + bin * width));
  // The last row belongs to the last step, although it lies on its far edge.
  edges[count] = Math.max(edges[count]!, rows.to);
  return { times: Array.from({ length: count }, (_, bin) => start + (bin + 0.5) * width), edges };
}

/** First row later than `seconds`. */
function rowAfter(timeline: Timeline, seconds: number): number {
  let row = rowAt(timeline, seconds);
  while (row < timeline.times.length && timeline.times[row]! <= seconds) row++;
  return row;
}

function unitOf({ role, unit }: { role: ColumnRole; unit: string }): string {
  return role === "command" ? unit : symbolsOf(ROLE_DIMENSIONS[role])[0]!;
}

function extremes(channel: Channel, edges: readonly number[]): { low: (number | null)[]; high: (number | null)[] } {
  const { raw, scale, shift } = channel;
  const pyramid = remembered(raw, { stage: "pyramid", dependsOn: null }, () => tracePyramid(raw));
  const low: (number | null)[] = [];
  const high: (number | null)[] = [];
  for (let step = 0; step + 1 < edges.length; step++) {
    const { least, greatest } = extremesBetween(raw, pyramid, edges[step]!, edges[step + 1]!);
    const ends = least <= greatest ? [least * scale + shift, greatest * scale + shift] : [null, null];
    // A channel that is turned round has its least reading on top.
    low.push(scale < 0 ? ends[1]! : ends[0]!);
    high.push(scale < 0 ? ends[0]! : ends[1]!);
  }
  return { low, high };
}

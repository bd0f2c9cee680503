import type { LogTable } from "../log/logTable.ts";
import { ROLE_DIMENSIONS } from "../log/roleUnits.ts";
import type { UsedInstruments } from "../model/instrument.ts";
import type { ColumnRole, Recipe } from "../model/recipe.ts";
import type { Trace } from "../model/trace.ts";
import { symbolsOf } from "../quantity/unit.ts";
import { type Channel, channelsByRole, valueAt } from "./channels.ts";
import { rowAt, timelineOf } from "./timeline.ts";

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
 * of the log. A single glitch stays visible. Time is that of `timelineOf`: rows where the log has no clock.
 * Throws   as channelsByRole.
 */
export function traceOf({ table, recipe, instruments, from, to, points }: TraceRequest): Trace {
  const channels = channelsByRole(table, recipe, instruments);
  const timeline = timelineOf(table, channels.get("time"));
  const { times } = timeline;
  const start = from ?? times[0]!;
  const end = Math.max(to ?? times.at(-1)!, start);
  const count = Math.max(1, Math.floor(points));
  const width = (end - start) / count || 1;
  // The last row belongs to the last step, although it lies on its far edge.
  const edges = Array.from({ length: count + 1 }, (_, bin) => rowAt(timeline, start + bin * width));
  while (edges[count]! < times.length && times[edges[count]!]! <= end) edges[count]!++;
  return {
    start,
    end,
    times: Array.from({ length: count }, (_, bin) => start + (bin + 0.5) * width),
    channels: [...channels.values()]
      .filter((channel) => channel.role !== "time")
      .map((channel) => ({
        role: channel.role,
        header: channel.header,
        unit: unitOf(channel),
        ...extremes(channel, edges),
      })),
  };
}

function unitOf({ role, unit }: { role: ColumnRole; unit: string }): string {
  return role === "command" ? unit : symbolsOf(ROLE_DIMENSIONS[role])[0]!;
}

function extremes(channel: Channel, edges: readonly number[]): { low: (number | null)[]; high: (number | null)[] } {
  const low: (number | null)[] = [];
  const high: (number | null)[] = [];
  for (let bin = 0; bin + 1 < edges.length; bin++) {
    let least = Infinity;
    let greatest = -Infinity;
    for (let row = edges[bin]!; row < edges[bin + 1]!; row++) {
      const value = valueAt(channel, row);
      if (value < least) least = value;
      if (value > greatest) greatest = value;
    }
    low.push(least <= greatest ? least : null);
    high.push(least <= greatest ? greatest : null);
  }
  return { low, high };
}

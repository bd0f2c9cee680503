import { median } from "../numeric/median.ts";
import { type Channel, type Channels, valueAt } from "./channels.ts";
import type { Timeline } from "./timeline.ts";

/** A log thinned to block means, so that the search for plateaus costs the same for any sampling rate. */
export interface Blocks {
  readonly count: number;
  /** First row of each block, and the end of the last one. */
  readonly starts: Uint32Array;
  /** Blocks of each unbroken stretch of logging: first, and one past the last. */
  readonly segments: readonly (readonly [number, number])[];
  /** Size of the rotation rate, rev/s. */
  readonly rotationRate: Float64Array;
  /** In the unit of its column. */
  readonly command: Float64Array | null;
  /** m/s; null where no column holds it. */
  readonly advanceSpeed: Float64Array | null;
}

/** Enough to place the plateaus of any sweep; their edges are found on the rows themselves afterwards. */
const MOST_BLOCKS = 4000;
/** Blocks that a running median looks at: two glitches in a row do not make a level. */
const MEDIAN_WIDTH = 5;

/** Block means of command and rotation rate, never across a restart, with isolated glitches taken out. */
export function blocksOf({ rotationRate, command, advanceSpeed }: Channels, timeline: Timeline): Blocks {
  const rows = timeline.times.length;
  const size = Math.max(1, Math.ceil(rows / MOST_BLOCKS));
  const starts: number[] = [];
  const segments: [number, number][] = [];
  timeline.segmentStarts.forEach((from, i) => {
    const to = timeline.segmentStarts[i + 1] ?? rows;
    const first = starts.length;
    for (let row = from; row < to; row += size) starts.push(row);
    segments.push([first, starts.length]);
  });
  const count = starts.length;
  const edges = Uint32Array.from([...starts, rows]);
  const lost = (row: number) => isDropOut(rotationRate.raw, timeline, row);
  const rates = smoothed(rotationRate, edges, segments, lost).map(Math.abs);
  return {
    count,
    starts: edges,
    segments,
    rotationRate: rates,
    command: command ? smoothed(command, edges, segments) : null,
    advanceSpeed: advanceSpeed ? smoothed(advanceSpeed, edges, segments) : null,
  };
}

/**
 * Longest gap that a tachometer may leave, rows and s: no propeller stops and comes back to its speed in it. Common
 * practice, no source.
 */
const DROP_OUT = { rows: 3, seconds: 1 };
/** Part by which the speed before and after it may differ. */
const SAME_SPEED = 0.2;

/** A 0 amid readings of one speed, as a tachometer or its link writes it that missed its marks. */
function isDropOut(raw: Float64Array, { kind, times }: Timeline, row: number): boolean {
  if (kind !== "clock" || raw[row] !== 0) return false;
  let [before, after] = [row - 1, row + 1];
  while (raw[before] === 0 && row - before <= DROP_OUT.rows) before--;
  while (raw[after] === 0 && after - row <= DROP_OUT.rows) after++;
  const [first, second] = [raw[before]!, raw[after]!];
  return (
    after - before <= DROP_OUT.rows + 1 &&
    times[after]! - times[before]! <= DROP_OUT.seconds &&
    Math.abs(first - second) < SAME_SPEED * Math.max(Math.abs(first), Math.abs(second))
  );
}

function smoothed(
  channel: Channel,
  edges: Uint32Array,
  segments: Blocks["segments"],
  isLost?: (row: number) => boolean,
): Float64Array {
  const means = blockMeans(channel, edges, isLost);
  const result = new Float64Array(means.length);
  const half = MEDIAN_WIDTH >> 1;
  for (const [first, end] of segments) {
    for (let i = first; i < end; i++) {
      result[i] = median(means.subarray(Math.max(first, i - half), Math.min(end, i + half + 1)));
    }
  }
  return result;
}

/** Mean of each block; one without any number repeats the block before it. */
function blockMeans(channel: Channel, edges: Uint32Array, isLost?: (row: number) => boolean): Float64Array {
  const means = new Float64Array(edges.length - 1);
  for (let block = 0; block < means.length; block++) {
    let sum = 0;
    let count = 0;
    for (let row = edges[block]!; row < edges[block + 1]!; row++) {
      const value = valueAt(channel, row);
      if (!Number.isNaN(value) && !isLost?.(row)) {
        sum += value;
        count++;
      }
    }
    means[block] = count > 0 ? sum / count : block > 0 ? means[block - 1]! : 0;
  }
  return means;
}

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
  const rates = smoothed(rotationRate, edges, segments).map(Math.abs);
  return {
    count,
    starts: edges,
    segments,
    rotationRate: rates,
    command: command ? smoothed(command, edges, segments) : null,
    advanceSpeed: advanceSpeed ? smoothed(advanceSpeed, edges, segments) : null,
  };
}

function smoothed(channel: Channel, edges: Uint32Array, segments: Blocks["segments"]): Float64Array {
  const means = blockMeans(channel, edges);
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
function blockMeans(channel: Channel, edges: Uint32Array): Float64Array {
  const means = new Float64Array(edges.length - 1);
  for (let block = 0; block < means.length; block++) {
    let sum = 0;
    let count = 0;
    for (let row = edges[block]!; row < edges[block + 1]!; row++) {
      const value = valueAt(channel, row);
      if (!Number.isNaN(value)) {
        sum += value;
        count++;
      }
    }
    means[block] = count > 0 ? sum / count : block > 0 ? means[block - 1]! : 0;
  }
  return means;
}

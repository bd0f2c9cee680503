import { valueAt } from "./channels.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";
import type { PlateauSource } from "./measuredPlateau.ts";
import { segmentOf } from "./tareLine.ts";

/** Most blocks in the turning part: enough for any ramp, few enough that the regression costs nothing. */
const MOST_BLOCKS = 600;

/** Part of the top rate by which a block may lie off its bin: one that holds a sudden stop is no ramp. */
const JUMP = 0.12;

/** Mean readings of equal stretches of a sweep, in order of time; those at rest too, for the rate just before a block. */
export interface SweepBlocks {
  /** Length of a block, s. */
  readonly duration: number;
  readonly times: readonly number[];
  /** Mean of the squared rotation rate, rev²/s². */
  readonly squares: readonly number[];
  /** Thrust after tare, N; NaN where none was read. */
  readonly thrusts: readonly number[];
  /** Position among the used plateaus (bins) of the block; -1 where it lies in none. */
  readonly bins: readonly number[];
  /** Whether the block comes right after the one before it in unbroken logging. */
  readonly follows: readonly boolean[];
}

/** Cuts the whole log into blocks so that the `used` bins of the sweep hold some hundreds of them. */
export function sweepBlocksOf(source: PlateauSource, used: readonly JudgedPlateau[]): SweepBlocks {
  const { channels, timeline } = source;
  const turning = used.reduce((sum, { measured: { span } }) => sum + span.to - span.from, 0);
  const size = Math.max(1, Math.ceil(turning / MOST_BLOCKS));
  const wild = glitchRows(used);
  const blocks = { times: [] as number[], squares: [] as number[], thrusts: [] as number[], follows: [] as boolean[] };
  const middles: number[] = [];
  timeline.segmentStarts.forEach((start, i) => {
    const end = timeline.segmentStarts[i + 1] ?? timeline.times.length;
    for (let from = start; from + size <= end; from += size) {
      const { square, thrust, time } = meansOf(channels, timeline.times, { from, to: from + size }, wild);
      if (Number.isNaN(square)) continue;
      middles.push(from + size / 2);
      blocks.follows.push(from > start && blocks.times.length > 0);
      blocks.times.push(time);
      blocks.squares.push(square);
      blocks.thrusts.push(thrust - source.thrustTare.at(time, segmentOf(timeline, from)).value);
    }
  });
  const top = Math.max(...used.map(({ measured }) => measured.rotationRate.mean));
  const bins = middles.map((row, i) =>
    used.findIndex(({ measured: { span, rotationRate } }) => {
      const inside = row >= span.from && row < span.to;
      return inside && Math.abs(Math.sqrt(blocks.squares[i]!) - rotationRate.mean) <= JUMP * top;
    }),
  );
  return { duration: size * timeline.step, ...blocks, bins };
}

/** Rows whose thrust was left out of its bin as a glitch. */
function glitchRows(used: readonly JudgedPlateau[]): ReadonlySet<number> {
  return new Set(
    used.flatMap(({ measured: { span, written } }) =>
      Array.from(written.readings.thrust).flatMap((value, i) => (Number.isNaN(value) ? [span.from + i] : [])),
    ),
  );
}

function meansOf(
  { rotationRate, thrust }: PlateauSource["channels"],
  times: Float64Array,
  { from, to }: { from: number; to: number },
  wild: ReadonlySet<number>,
) {
  let [square, pull, time, count] = [0, 0, 0, 0];
  for (let row = from; row < to; row++) {
    const [n, T] = [valueAt(rotationRate, row), valueAt(thrust, row)];
    if (Number.isNaN(n) || Number.isNaN(T) || wild.has(row)) continue;
    square += n * n;
    pull += T;
    time += times[row]!;
    count++;
  }
  return { square: square / count, thrust: pull / count, time: time / count };
}

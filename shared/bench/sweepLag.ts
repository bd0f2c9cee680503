import type { SweepBlocks } from "./sweepBlocks.ts";

/** Blocks on each side that a slope is taken over: noise of the tachometer must not pass for a change. */
const REACH = 10;

/** Slope of the squared rotation rate at every block by least squares over its neighbours, rev²/s³; 0 where it has none. */
export function slopesOf(blocks: SweepBlocks): number[] {
  return blocks.times.map((_, i) => {
    const [from, to] = neighbourhood(blocks, i);
    return slopeOver(blocks.times, blocks.squares, from, to + 1);
  });
}

/** First and last block around `i` in unbroken turning: a sudden stop is no slope of the ramp before it. */
function neighbourhood({ times, follows, bins }: SweepBlocks, i: number): readonly [number, number] {
  let from = i;
  while (from > 0 && i - from < REACH && follows[from] && bins[from - 1]! >= 0) from--;
  let to = i;
  while (to + 1 < times.length && to - i < REACH && follows[to + 1] && bins[to + 1]! >= 0) to++;
  return [from, to];
}

function slopeOver(x: readonly number[], y: readonly number[], from: number, to: number): number {
  const count = to - from;
  if (count < 2) return 0;
  let [meanX, meanY] = [0, 0];
  for (let i = from; i < to; i++) {
    meanX += x[i]! / count;
    meanY += y[i]! / count;
  }
  let [above, below] = [0, 0];
  for (let i = from; i < to; i++) {
    above += (x[i]! - meanX) * (y[i]! - meanY);
    below += (x[i]! - meanX) ** 2;
  }
  return below > 0 ? above / below : 0;
}

/**
 * `values` as they were `lag` seconds before each block, straight between blocks; the first or last value of an unbroken
 * stretch beyond its ends.
 */
export function laggedSquares({ times, follows }: SweepBlocks, values: readonly number[], lag: number): number[] {
  return times.map((time, i) => {
    const wanted = time - lag;
    let at = i;
    while (times[at]! > wanted && follows[at]) at--;
    while (at + 1 < times.length && follows[at + 1] && times[at + 1]! <= wanted) at++;
    const next = at + 1 < times.length && follows[at + 1] ? at + 1 : at;
    const width = times[next]! - times[at]!;
    const part = width > 0 ? Math.min(1, Math.max(0, (wanted - times[at]!) / width)) : 0;
    return values[at]! + part * (values[next]! - values[at]!);
  });
}

/** 1 where the rotation rate rises over the neighbourhood of a block, -1 where it falls. */
export function risingAt(blocks: SweepBlocks, i: number): 1 | -1 {
  const [before, after] = neighbourhood(blocks, i);
  return blocks.squares[after]! >= blocks.squares[before]! ? 1 : -1;
}

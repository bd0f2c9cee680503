import type { Blocks } from "./blocks.ts";

/** Rows `from` (included) to `to` (not included). */
export interface RowSpan {
  readonly from: number;
  readonly to: number;
}

/** Where the propeller stood still. */
export interface Rest {
  /** Top rotation rate of the run, wild counts aside, rev/s. */
  readonly topRate: number;
  /** Rotation rate below which it counts as standing, rev/s. */
  readonly rateLimit: number;
  /** Command that means stop, in the unit of its column; null without a command or without a rest. */
  readonly idleCommand: number | null;
  /** Standing with the command at idle. */
  readonly stretches: readonly RowSpan[];
  /** Standing although the command asks for something: the dead band of the controller. */
  readonly deadBand: readonly RowSpan[];
}

/** Part of the top rotation rate that still counts as standing: hum and idle counts of a sensor. */
const STANDING_PART = 0.02;
/** Below one turn in a quarter of an hour nothing turns, rev/s. */
const SLOWEST_TURNING = 1e-3;
/** Part of the command range within which a command is taken as the same. */
export const SAME_COMMAND_PART = 0.01;

/** Finds where the propeller stands, by rotation rate and, where there is one, by the command at its idle level. */
export function restOf(blocks: Blocks): Rest {
  const topRate = topRateOf(blocks.rotationRate);
  const rateLimit = Math.max(SLOWEST_TURNING, STANDING_PART * topRate);
  const standing = Array.from(blocks.rotationRate, (rate) => rate <= rateLimit);
  const idleCommand = idleOf(blocks, standing);
  const tolerance = blocks.command ? SAME_COMMAND_PART * rangeOf(blocks.command) : 0;
  const idle = (block: number) => idleCommand === null || Math.abs(blocks.command![block]! - idleCommand) <= tolerance;
  return {
    topRate,
    rateLimit,
    idleCommand,
    stretches: stretchesWhere(blocks, (block) => standing[block]! && idle(block)),
    deadBand: idleCommand === null ? [] : stretchesWhere(blocks, (block) => standing[block]! && !idle(block)),
  };
}

/** The 98th percentile: a single wild count does not set the scale. */
function topRateOf(rates: Float64Array): number {
  const sorted = rates.slice().sort();
  return sorted[Math.floor(0.98 * (sorted.length - 1))] ?? 0;
}

/** The command seen most often while the propeller stands. */
function idleOf({ command }: Blocks, standing: readonly boolean[]): number | null {
  if (command === null) return null;
  const width = SAME_COMMAND_PART * rangeOf(command) || 1;
  const bins = new Map<number, number[]>();
  command.forEach((value, block) => {
    if (!standing[block]) return;
    const bin = Math.round(value / width);
    const values = bins.get(bin);
    if (values) values.push(value);
    else bins.set(bin, [value]);
  });
  let fullest: number[] = [];
  for (const values of bins.values()) if (values.length > fullest.length) fullest = values;
  return fullest.length > 0 ? fullest.reduce((sum, value) => sum + value, 0) / fullest.length : null;
}

/** Greatest less least value. */
export function rangeOf(values: Float64Array): number {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low;
}

function stretchesWhere(blocks: Blocks, holds: (block: number) => boolean): RowSpan[] {
  const found: RowSpan[] = [];
  for (const [first, end] of blocks.segments) {
    let start = -1;
    for (let block = first; block <= end; block++) {
      const inside = block < end && holds(block);
      if (inside && start < 0) start = block;
      if (!inside && start >= 0) {
        found.push({ from: blocks.starts[start]!, to: blocks.starts[block]! });
        start = -1;
      }
    }
  }
  return found;
}

import type { Reduction } from "../model/reduction.ts";
import { formatNumber, formatUncertain } from "../quantity/format.ts";

const SECOND = { symbol: "s", factor: 1 } as const;

/** What the regression behind a sweep rests on, in sentences; empty for a run of plateaus. */
export function sweepInWords({ sweep }: Pick<Reduction, "sweep">): string[] {
  if (sweep === null) return [];
  const { method, blocks, blockDuration, autocorrelation, lag, up, down, lagEffect } = sweep;
  return [
    `Reduced as a sweep, without plateaus: regression of the thrust on the square of the rotation rate over ${blocks} blocks of ${formatNumber(blockDuration, 2)}\u202fs, by ${method}.`,
    `What the regression leaves hangs together from block to block with a correlation of ${formatNumber(autocorrelation, 2)}.`,
    `Thrust comes ${formatUncertain(lag, SECOND)} after the rotation rate; this lag is allowed for.`,
    up && down ? `Way up ${formatUncertain(up)}, way down ${formatUncertain(down)}.` : "The ramp goes one way only.",
    lagEffect === null
      ? ""
      : `Without the lag, up and down would differ by ${formatNumber(100 * Math.abs(lagEffect), 2)}\u202f%: what a slower ramp would make smaller.`,
  ].filter((sentence) => sentence !== "");
}

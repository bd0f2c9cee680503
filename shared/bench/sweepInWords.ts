import type { Reduction } from "../model/reduction.ts";
import { formatNumber, formatUncertain } from "../quantity/format.ts";
import { scaled } from "../quantity/uncertain.ts";

const SECOND = { symbol: "s", factor: 1 } as const;

/** What the regression behind a sweep rests on, in sentences; empty for a run of plateaus. */
export function sweepInWords({ sweep }: Pick<Reduction, "sweep">): string[] {
  if (sweep === null) return [];
  const { method, blocks, blockDuration, autocorrelation, up, down, lagEffect } = sweep;
  return [
    `Reduced as a sweep, without plateaus: regression of the thrust on the square of the rotation rate over ${blocks} blocks of ${formatNumber(blockDuration, 2)}\u202fs, by ${method}.`,
    `What the regression leaves hangs together from block to block with a correlation of ${formatNumber(autocorrelation, 2)}.`,
    lagInWords(sweep),
    up && down && lagEffect !== null
      ? `Without it the way up would give ${formatUncertain(up)} and the way down ${formatUncertain(down)}, ${formatNumber(100 * Math.abs(lagEffect), 2)}\u202f% apart: a slower ramp makes that smaller, unless the stand has friction.`
      : "The ramp goes one way only.",
  ];
}

function lagInWords({ lag, converged }: NonNullable<Reduction["sweep"]>): string {
  if (!converged) return "No lag between rotation rate and thrust could be found; none was allowed for.";
  return lag.value < 0
    ? `Thrust comes ${formatUncertain(scaled(lag, -1), SECOND)} before the rotation rate; this is allowed for.`
    : `Thrust comes ${formatUncertain(lag, SECOND)} after the rotation rate; this lag is allowed for.`;
}

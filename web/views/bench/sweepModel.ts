import type { Reduction } from "../../../shared/model/reduction.ts";

/** Whether a run that was refused, or that lost a ramp, could be reduced as a sweep. */
export function offersSweep(reduction: Reduction | null, problemCode: string | undefined): boolean {
  if (reduction === null) return problemCode === "bench.ramp-without-plateaus";
  return reduction.sweep === null && reduction.warnings.some(({ code }) => code === "bench.ramp");
}

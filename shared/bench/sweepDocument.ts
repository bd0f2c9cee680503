import type { Sweep } from "../model/reduction.ts";
import { SWEEP_METHOD, type SweepFit } from "./sweepFit.ts";

/** What the result says of the regression behind a sweep. */
export function sweepDocument(sweep: SweepFit): Sweep {
  const { blocks, blockDuration, autocorrelation, lag, up, down, lagEffect, freeZero, converged } = sweep;
  return {
    method: SWEEP_METHOD,
    ...{ blocks, blockDuration, autocorrelation, lag, up, down, lagEffect, freeZero, converged },
  };
}

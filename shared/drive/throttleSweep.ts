import type { DriveRequest, OperatingPoint } from "../model/drive.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { supplyCollapse } from "../supply/busVoltage.ts";
import { chainOf } from "./chain.ts";
import { sweepCutShort } from "./driveWarnings.ts";
import { describePoint } from "./operatingPoint.ts";
import { requireDrive } from "./requireDrive.ts";
import { emptyState, solveSteadyState } from "./steadyState.ts";
import { throttleLimits } from "./throttleLimits.ts";

/**
 * Operating points at `steps` equal steps of throttle from 0 to 1, both ends included (`steps` + 1 points); the
 * throttle of the request itself is not used.
 *
 * Where the supply collapses on the way, the sweep ends at the last throttle it holds and that point says so.
 *
 * Throws   as operatingPoint, and OutOfDomain for steps that are not a whole number above 0. `supply.collapse` only
 *          where not even the hotel load can be held.
 */
export function throttleSweep(request: DriveRequest, steps: number): OperatingPoint[] {
  if (!(Number.isInteger(steps) && steps > 0)) {
    throw new OutOfDomain({ where: "steps", found: `${steps} steps`, needed: "a whole number above 0", mend: "" });
  }
  requireDrive({ ...request, throttle: 0 });
  const chain = chainOf(request);
  const limits = throttleLimits(chain, request);
  const supply = { openCircuitVoltage: chain.supplyVoltage, resistance: chain.supplyResistance };
  const state = emptyState();
  const points: OperatingPoint[] = [];
  for (let step = 0; step <= steps; step++) {
    const throttle = step / steps;
    solveSteadyState(chain, throttle, state);
    if (state.status === "collapsed") {
      const last = points.at(-1);
      if (last === undefined) throw supplyCollapse(supply, `a hotel load of ${formatNumber(chain.constantPower)} W`);
      last.warnings.push(sweepCutShort((step - 1) / steps));
      break;
    }
    points.push(describePoint({ ...request, throttle }, { chain, state, limits }));
  }
  return points;
}

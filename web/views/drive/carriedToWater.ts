import { carriedPropeller } from "../../../shared/drive/carriedPropeller.ts";
import { driveRequestOf, type PreparedDrive } from "../../../shared/drive/driveRequestOf.ts";
import { throttleSweep } from "../../../shared/drive/throttleSweep.ts";
import type { DriveTrain } from "../../../shared/model/driveTrain.ts";
import type { DriveRunning } from "../../../shared/model/driveTrainPoint.ts";
import { bladeOf } from "../theory/carryOver/carryOverModel.ts";
import type { Carried } from "./driveModel.ts";
import type { PropellerInHand } from "./measuredPropeller.ts";

/**
 * The propeller at the Reynolds number of the water, found at the full throttle of the coefficients as measured, with what
 * that did to them; null where it was measured nowhere, or does not turn.
 */
export function carriedToWater(
  { propeller, stand }: PropellerInHand,
  rest: Omit<DriveTrain, "propeller">,
  running: DriveRunning,
) {
  if (stand === undefined) return null;
  const { request } = driveRequestOf({ ...rest, propeller }, { ...running, throttle: 1 });
  const rotationRate = fullRate({ ...request, uncertainties: {}, correlations: [] });
  if (!(rotationRate > 0)) return null;
  const carried = carriedPropeller(propeller, {
    from: { fluid: stand.fluid, rotationRate: stand.topRate },
    to: { fluid: rest.water, rotationRate },
    ...(stand.part ? bladeOf(stand.part) : {}),
  });
  const told: Carried = { factor: carried.factor, reynolds: carried.reynolds };
  return { propeller: carried.propeller, told };
}

/** Rotation rate at the most that the supply can hold, rev/s; 0 where it can hold nothing. */
function fullRate(request: PreparedDrive["request"]): number {
  try {
    return throttleSweep(request, 4).at(-1)?.rotationRate ?? 0;
  } catch {
    return 0;
  }
}

import type { AsternEstimate } from "../../../shared/model/driveTrainPoint.ts";

/** How well a stated share of the coefficients ahead is known astern, relative. Common practice, no source. */
const SHARE_DOUBT = 0.2;

/** One share for thrust and torque of a propeller that was not measured astern. */
export function asternEstimate(share: number): AsternEstimate {
  return { thrustShare: share, torqueShare: share, relativeUncertainty: SHARE_DOUBT };
}

import type { Doubtful, DrivePropeller, PropellerCurve } from "../model/drivePropeller.ts";
import type { DriveTrain } from "../model/driveTrain.ts";
import type { AsternEstimate, DriveDirection } from "../model/driveTrainPoint.ts";
import { formatNumber, formatPercent } from "../quantity/format.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";

export interface CurveInUse {
  readonly curve: PropellerCurve;
  /** Set where the curve is no measurement but a stated share of the one ahead. */
  readonly warnings: readonly Warning[];
}

/**
 * Coefficients of the propeller turning the way that is asked for.
 *
 * Throws   InputProblem `drive.one-way-controller` and, without coefficients astern or an estimate,
 *          `drive.no-astern-coefficients`, which says what to measure.
 */
export function curveInUse(
  { propeller, controller }: Pick<DriveTrain, "propeller" | "controller">,
  direction: DriveDirection,
  estimate?: AsternEstimate,
): CurveInUse {
  if (direction === "ahead") return { curve: propeller.ahead, warnings: [] };
  if (controller?.command?.fullReverse === null) throw oneWay();
  if (propeller.astern !== undefined) return { curve: propeller.astern, warnings: [] };
  if (estimate === undefined) throw notMeasuredAstern(propeller);
  return { curve: estimatedAstern(propeller.ahead, estimate), warnings: [estimated(estimate)] };
}

/** Stated shares of the coefficients ahead; at rest only, as nothing tells how they change with speed. */
function estimatedAstern(
  { thrustCoefficient, torqueCoefficient }: PropellerCurve,
  { thrustShare, torqueShare, relativeUncertainty }: AsternEstimate,
): PropellerCurve {
  const shared = ({ value, standardUncertainty }: Doubtful, share: number): Doubtful => ({
    value: share * value,
    standardUncertainty: share * Math.hypot(standardUncertainty, relativeUncertainty * value),
  });
  return {
    thrustCoefficient: shared(thrustCoefficient, thrustShare),
    torqueCoefficient: shared(torqueCoefficient, torqueShare),
    correlation: 0,
  };
}

function estimated({ thrustShare, torqueShare, relativeUncertainty }: AsternEstimate): Warning {
  return warning({
    code: "drive.astern-estimated",
    where: "asternEstimate",
    found: `Astern nothing was measured: ${formatNumber(thrustShare)} of the thrust and ${formatNumber(torqueShare)} of the torque coefficient ahead are taken, to ${formatPercent(relativeUncertainty)}`,
    needed: "K_T and K_Q turning astern",
    mend: "Run the propeller backwards on the stand",
  });
}

function notMeasuredAstern({ name }: DrivePropeller): InputProblem {
  return new InputProblem({
    code: "drive.no-astern-coefficients",
    where: "train.propeller.astern",
    found: `Nothing is known of “${name}” turning astern`,
    needed: "its K_T and K_Q turning the other way",
    mend: "Run it backwards on the stand at several steady throttles, thrust and torque or motor current recorded: plateaus that turn backwards are reduced apart. Or state shares of the coefficients ahead as an estimate",
  });
}

function oneWay(): InputProblem {
  return new InputProblem({
    code: "drive.one-way-controller",
    where: "train.controller.command.fullReverse",
    found: "The controller turns its motor one way only",
    needed: "a pulse for full throttle astern",
    mend: "State the pulse if the controller can reverse, or use one that can",
  });
}

import { driveRequestOf } from "../drive/driveRequestOf.ts";
import { requireDrive } from "../drive/requireDrive.ts";
import type { DriveRequest } from "../model/drive.ts";
import type { DrivePropeller } from "../model/drivePropeller.ts";
import type { AskedDuty } from "./demandSlots.ts";
import { type CurveInputs, type DoubtfulInput, type Doubts, emptyInputs, NO_DOUBT } from "./inputs.ts";
import type { PropellerRecord } from "./partRecords.ts";
import { advanceOf, NOT_KNOWN, RateSolver } from "./rateSolver.ts";
import { bought, doubt, doubtsOf, type Making, requestWith, toldFrom } from "./recordMaking.ts";
import { nameTold } from "./yardstick.ts";

/** What a propeller brings into every combination. */
export function propellerRecord(making: Making, propeller: DrivePropeller): PropellerRecord {
  const { duties } = making.table;
  const rest = requestWith(making, { propeller }, "Propeller", propeller.name);
  const requests = duties.map((duty) => requestIn(making, propeller, duty));
  // The other parts can not be other than physical by their documents; coefficients and their change with speed can.
  toldFrom(`Propeller ${propeller.name}`, () => {
    for (const request of [rest, ...requests]) if (request !== null) requireDrive(request);
  });
  const astern = requests[duties.findIndex(({ duty }) => duty === "astern")] ?? null;
  const curves = requests.map((request, d) => request && curveOf(request, duties[d]!.advanceSpeed));
  const inputs = doubtsOf(rest, ["diameter"]).inputs;
  const ahead = coefficientDoubts(rest, "thrustAhead", "torqueAhead");
  const back = astern === null ? NO_DOUBT : coefficientDoubts(astern, "thrustAstern", "torqueAstern");
  return {
    ...bought(making, propeller),
    name: nameTold(propeller),
    document: propeller,
    diameter: rest.diameter,
    curves,
    rates: curves.map((curve, d) => (curve === null ? NOT_KNOWN : rateOf(making, duties[d]!, curve, rest))),
    atRest: curveOf(rest, 0),
    doubts: {
      inputs: [...inputs, ...ahead.inputs, ...back.inputs],
      correlations: [...ahead.correlations, ...back.correlations],
    },
  };
}

/** The rate does not depend on what turns the propeller, so motor and supply are left empty. */
function rateOf(
  { requirement }: Making,
  { thrust }: AskedDuty,
  curve: CurveInputs,
  { diameter, density }: DriveRequest,
) {
  const solver = new RateSolver();
  solver.fill({ ...emptyInputs(requirement, density), diameter }, curve, curve.advance);
  return solver.rateForThrust(thrust);
}

/** The request of a propeller in a state; null where nothing is known of it there. */
function requestIn({ first, requirement }: Making, propeller: DrivePropeller, duty: AskedDuty): DriveRequest | null {
  const { advanceSpeed } = duty;
  const { controller: _, ...withoutController } = first;
  const direction = duty.duty === "astern" ? "astern" : "ahead";
  const { asternEstimate } = requirement;
  if (direction === "astern" && propeller.astern === undefined && asternEstimate === undefined) return null;
  if (advanceSpeed > 0 && propeller.ahead.openWater === undefined) return null;
  const running = { throttle: 1, direction, advanceSpeed, ...(asternEstimate && { asternEstimate }) } as const;
  return toldFrom(
    `Propeller ${propeller.name}`,
    () => driveRequestOf({ ...withoutController, propeller }, running).request,
  );
}

function curveOf(request: DriveRequest, advanceSpeed: number): CurveInputs {
  const { thrustCoefficient, torqueCoefficient, openWater = null, limits } = request;
  const atRest = { thrustCoefficient, torqueCoefficient, openWater };
  const { cavitation = Infinity, ventilation = Infinity } = limits;
  const curve = { ...atRest, cavitation, ventilation, advance: null };
  return { ...curve, advance: advanceOf(curve, advanceSpeed) };
}

function coefficientDoubts(request: DriveRequest, thrust: DoubtfulInput, torque: DoubtfulInput): Doubts {
  const { thrustCoefficient = 0, torqueCoefficient = 0 } = request.uncertainties;
  const shared = request.correlations.find(({ of, and }) => of === "thrustCoefficient" && and === "torqueCoefficient");
  return {
    inputs: [...doubt(thrust, thrustCoefficient), ...doubt(torque, torqueCoefficient)],
    correlations: shared ? [{ of: thrust, and: torque, coefficient: shared.coefficient }] : [],
  };
}

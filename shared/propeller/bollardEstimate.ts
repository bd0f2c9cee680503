import type { BollardDuty, BollardEstimate, BollardEstimateRequest } from "../model/bollardEstimate.ts";
import { finiteResult } from "../quantity/finiteResult.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { discArea } from "./coefficients.ts";
import { idealBollardThrust, idealNozzleThrust } from "./momentum.ts";
import { meritFromThrustAndPower, thrustFromMerit } from "./staticMerit.ts";

/** A disc in a fluid, open or in a nozzle. */
export interface WorkingDisc {
  /** D, m. */ readonly diameter: number;
  /** ρ, kg/m³. */ readonly density: number;
  /** Exit area of the nozzle over disc area; null for an open propeller. */
  readonly nozzleAreaRatio: number | null;
}

/** Greatest thrust momentum theory allows the disc at `shaftPower` (W), N. Throws OutOfDomain for non-positive input. */
export function limitThrust(shaftPower: number, { diameter, density, nozzleAreaRatio }: WorkingDisc): number {
  const disc = { shaftPower, discArea: discArea(diameter), density };
  return nozzleAreaRatio === null
    ? idealBollardThrust(disc)
    : idealNozzleThrust({ ...disc, areaRatio: nozzleAreaRatio });
}

/** Static merit of the ideal itself: 1 for an open propeller, sqrt(2σ) in a nozzle, which carries part of the thrust. */
export function idealMerit(disc: WorkingDisc): number {
  const shaftPower = 1;
  const { diameter, density } = disc;
  const thrust = limitThrust(shaftPower, disc);
  return meritFromThrustAndPower({ thrust, shaftPower, discArea: discArea(diameter), density });
}

/** Thrust that a propeller of `staticMerit` makes of `shaftPower` (W), N. Throws OutOfDomain for non-positive input. */
export function thrustOfMerit(shaftPower: number, staticMerit: number, { diameter, density }: WorkingDisc): number {
  return thrustFromMerit({ shaftPower, discArea: discArea(diameter), density, staticMerit });
}

/** Shaft power that `thrust` (N) takes at `staticMerit`, W: power grows with thrust to the 3/2, so one known point is enough. */
function shaftPowerOfMerit(thrust: number, staticMerit: number, disc: WorkingDisc): number {
  return (thrust / thrustOfMerit(1, staticMerit, disc)) ** 1.5;
}

/**
 * Thrust, power and current that follow from a stated static merit, beside what momentum theory allows.
 *
 *   T = FM^(2/3) (2 ρ A P²)^(1/3),   P_e = P/η,   I = P_e/U
 *
 * Source   momentum theory (Rankine-Froude); e.g. Carlton, Marine Propellers and Propulsion, ch. 8.
 * Assumes  bollard, unbounded fluid; merit and drive efficiency are stated, not predicted.
 * Range    all positive; a merit above the ideal is computed and warned of.
 * Throws   OutOfDomain for other input.
 */
export function bollardEstimate(request: BollardEstimateRequest): BollardEstimate {
  const { duty, staticMerit, driveEfficiency, voltage } = request;
  const shaftPower = shaftPowerOf(duty, request);
  const thrust = duty.given === "thrust" ? duty.thrust : thrustOfMerit(shaftPower, staticMerit, request);
  const electricalPower = shaftPower / driveEfficiency;
  const ideal = idealMerit(request);
  return finiteResult({
    thrust,
    idealThrust: limitThrust(shaftPower, request),
    shaftPower,
    idealShaftPower: shaftPowerOfMerit(thrust, ideal, request),
    electricalPower,
    supplyCurrent: voltage === null ? null : electricalPower / voltage,
    thrustPerPower: thrust / electricalPower,
    idealMerit: ideal,
    warnings: staticMerit > ideal ? [aboveIdeal(staticMerit, ideal)] : [],
  });
}

function shaftPowerOf(duty: BollardDuty, request: BollardEstimateRequest): number {
  if (duty.given === "thrust") return shaftPowerOfMerit(duty.thrust, request.staticMerit, request);
  return duty.given === "shaftPower" ? duty.shaftPower : duty.electricalPower * request.driveEfficiency;
}

function aboveIdeal(staticMerit: number, ideal: number): Warning {
  return warning({
    code: "propeller.merit-above-ideal",
    where: "static merit",
    found: `A static merit of ${formatNumber(staticMerit, 2)} is more than momentum theory allows`,
    needed: `at most ${formatNumber(ideal, 3)}`,
    mend: "Take less; small printed propellers reach 0.3 to 0.6 (common practice, no source)",
  });
}

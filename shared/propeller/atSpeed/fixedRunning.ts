import type { ThrustAtSpeedRequest } from "../../model/thrustAtSpeed.ts";
import { formatNumber } from "../../quantity/format.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../coefficients.ts";
import { advanceRatioOfDuty, REST_SPEED } from "../dutyAdvanceRatio.ts";
import type { AdvanceCandidate } from "./advanceCandidate.ts";

export type FixedRunning =
  | {
      readonly state: "solved";
      readonly rotationRate: number;
      readonly advanceRatio: number;
      /** Change of T/(ρ n² D⁴) by a change of K_Q at fixed shaft power; 0 at a fixed rotation rate. */
      readonly thrustSlope: number;
    }
  | { readonly state: "failed"; readonly reason: string };

/**
 * Rotation rate and advance ratio at a speed (m/s), for a fixed rotation rate or a fixed shaft power:
 *
 *   P = 2π K_Q(J) ρ n³ D⁵  with n = V/(J D):   K_Q(J) = c J³,   c = P/(2π ρ V³ D²)
 *
 * Source   definitions of J and K_Q: ITTC Symbols and Terminology List (2021).
 * Range    speed 0 or more; below 1e-9 m/s it is taken as rest.
 * Error    J to 1e-12 of itself.
 * Returns  `failed` past the end of the curve.
 */
export function fixedRunning(
  V: number,
  candidate: AdvanceCandidate,
  { fixed, diameter: D, density: rho }: ThrustAtSpeedRequest,
): FixedRunning {
  if (fixed.given === "rotationRate") {
    const J = V / (fixed.rotationRate * D);
    if (J > candidate.end) return pastTheEnd(J, candidate);
    return { state: "solved", rotationRate: fixed.rotationRate, advanceRatio: J, thrustSlope: 0 };
  }
  const torquePower = (fixed.shaftPower * TORQUE_OVER_POWER_COEFFICIENT) / rho;
  const torqueAtRest = candidate.torque(0);
  if (!(torqueAtRest > 0))
    return { state: "failed", reason: "The curve gives no torque at rest, so that no power is known." };
  if (V < REST_SPEED) {
    const n = Math.cbrt(torquePower / (torqueAtRest * D ** 5));
    return { state: "solved", rotationRate: n, advanceRatio: 0, thrustSlope: slopeAt(0, candidate) };
  }
  const c = torquePower / (V ** 3 * D ** 2);
  const J = advanceRatioOfDuty(candidate.torque, c, 3);
  if (J === null) return { state: "failed", reason: "No rotation rate takes up this power at this speed." };
  if (J > candidate.end) return pastTheEnd(J, candidate);
  return { state: "solved", rotationRate: V / (J * D), advanceRatio: J, thrustSlope: slopeAt(J, candidate) };
}

/**
 * At fixed power and speed a greater K_Q slows the propeller: with K_Q = c J³, δJ = δK_Q/(3 c J² - K_Q'), and as n goes
 * with 1/J, δ(K_T/J²) J² = (K_T' - 2 K_T/J) δJ. At rest, where J has no size, δn/n = -δK_Q/(3 K_Q).
 */
function slopeAt(J: number, { thrust, torque }: AdvanceCandidate): number {
  const atRest = (-2 * thrust(J)) / (3 * torque(J));
  if (J < STEP) return atRest;
  const slopeOf = (f: (x: number) => number) => (f(J + STEP) - f(J - STEP)) / (2 * STEP);
  const change = (3 * torque(J)) / J - slopeOf(torque);
  return change > 0 ? (slopeOf(thrust) - (2 * thrust(J)) / J) / change : atRest;
}

const STEP = 1e-4;

function pastTheEnd(J: number, { zeroThrust, end }: AdvanceCandidate): FixedRunning {
  const at = formatNumber(J);
  const reason =
    zeroThrust === null
      ? `The advance ratio would be ${at}; the curve is followed to ${formatNumber(end)}.`
      : `The advance ratio would be ${at}; the thrust ends at ${formatNumber(zeroThrust)}, and what a dragged propeller does is not computed.`;
  return { state: "failed", reason };
}

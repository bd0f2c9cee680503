import type { OpenWater } from "../model/drivePropeller.ts";
import { firstZero } from "../propeller/firstZero.ts";

/** K(J) = K(0) + c_1 J + c_2 J² + ... by Horner's rule. */
export function coefficientAt(atRest: number, change: readonly number[], J: number): number {
  let sum = 0;
  for (let k = change.length - 1; k >= 0; k--) sum = (sum + change[k]!) * J;
  return atRest + sum;
}

/**
 * 2 K − J K′ at an advance ratio: what the slope over the rotation rate of K n² is in proportion to, as J goes with 1/n.
 * 2 K − J K′ = 2 K(0) + c_1 J + 0 J² − c_3 J³ − 2 c_4 J⁴ − ...   all ratios, 1; by Horner's rule.
 */
export function slopeOverRate(atRest: number, change: readonly number[], J: number): number {
  let sum = 0;
  for (let k = change.length - 1; k >= 0; k--) sum = (sum + (1 - k) * change[k]!) * J;
  return 2 * atRest + sum;
}

/** Advance ratio up to which a curve holds and the propeller takes torque: beyond it the water would drive the motor. */
export function endOfCurve(torqueCoefficient: number, { torque, greatestAdvanceRatio }: OpenWater): number {
  const zero = firstZero((J) => coefficientAt(torqueCoefficient, torque, J));
  return zero === null ? greatestAdvanceRatio : Math.min(zero, greatestAdvanceRatio);
}

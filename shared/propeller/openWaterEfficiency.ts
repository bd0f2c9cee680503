import { finite, positive } from "../quantity/domain.ts";

/**
 * Efficiency of a propeller in open water: thrust times advance speed over shaft power.
 *
 *   η_O = J K_T / (2π K_Q) = J K_T / C_P,   J = V_A / (n D)
 *
 * Source   ITTC Recommended Procedure 7.5-02-03-02.1, Open Water Test; ITTC Symbols and Terminology List (2021).
 * Range    advance ratio and thrust coefficient of either sign; torque coefficient greater than 0. Negative where the
 *          propeller takes power and pushes backwards.
 * Throws   OutOfDomain for other input.
 *
 * @example openWaterEfficiency({ advanceRatio: 0.8, thrustCoefficient: 0.1297, torqueCoefficient: 0.02397 }) // 0.6890
 */
export function openWaterEfficiency({
  advanceRatio,
  thrustCoefficient,
  torqueCoefficient,
}: {
  readonly advanceRatio: number;
  readonly thrustCoefficient: number;
  readonly torqueCoefficient: number;
}): number {
  const J = finite(advanceRatio, "advance ratio", "");
  const K_T = finite(thrustCoefficient, "thrust coefficient", "");
  const K_Q = positive(torqueCoefficient, "torque coefficient", "");
  return (J * K_T) / (2 * Math.PI * K_Q);
}

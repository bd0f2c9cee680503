import { nonNegative, positive } from "../quantity/domain.ts";
import { idealBollardPower, idealBollardThrust, type PoweredDisc } from "./momentum.ts";

/**
 * Static merit: ideal over real shaft power for the thrust that is made at rest.
 *
 *   FM = T^(3/2) / (P sqrt(2 ρ A)) = K_T^(3/2) / (C_P sqrt(π/2))
 *
 * Below 1 for every open propeller; with a nozzle of exit-to-disc area ratio σ up to sqrt(2σ). Series books print
 * (K_T/π)^(3/2) / K_Q, which is sqrt(2) FM.
 *
 * Source   momentum theory; e.g. Carlton, Marine Propellers and Propulsion, ch. 8.
 * Range    thrust coefficient 0 or more, power coefficient greater than 0.
 * Throws   OutOfDomain for other input.
 *
 * @example staticMerit({ thrustCoefficient: 0.3, powerCoefficient: 2 * Math.PI * 0.035 }) // 0.596175
 */
export function staticMerit({
  thrustCoefficient,
  powerCoefficient,
}: {
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
}): number {
  const K_T = nonNegative(thrustCoefficient, "thrust coefficient", "");
  const C_P = positive(powerCoefficient, "power coefficient", "");
  return K_T ** 1.5 / (C_P * Math.sqrt(Math.PI / 2));
}

/**
 * Static merit from a measured thrust (N) and shaft power (W) of a disc (m²) in a fluid (kg/m³).
 *
 *   FM = T^(3/2) / (P sqrt(2 ρ A))
 *
 * Source, range as `staticMerit`; thrust greater than 0.
 * Throws   OutOfDomain for other input.
 */
export function meritFromThrustAndPower({
  thrust,
  shaftPower,
  discArea,
  density,
}: PoweredDisc & { readonly thrust: number }): number {
  return idealBollardPower({ thrust, discArea, density }) / positive(shaftPower, "shaft power", "W");
}

/**
 * Bollard thrust of a propeller of known static merit from its shaft power, N.
 *
 *   T = FM^(2/3) (2 ρ A P²)^(1/3)
 *
 * Source   as `staticMerit`, solved for the thrust.
 * Range    all greater than 0.
 * Throws   OutOfDomain for other input.
 *
 * @example thrustFromMerit({ shaftPower: 100, discArea: 0.00384845, density: 998.6, staticMerit: 0.6 }) // 30.246 N
 */
export function thrustFromMerit({
  staticMerit: merit,
  ...disc
}: PoweredDisc & { readonly staticMerit: number }): number {
  return positive(merit, "static merit", "") ** (2 / 3) * idealBollardThrust(disc);
}

/**
 * Torque coefficient that goes with a thrust coefficient at a given static merit.
 *
 *   K_Q = (K_T/π)^(3/2) / (sqrt(2) FM)        from C_P = 2π K_Q and FM = K_T^(3/2) / (C_P sqrt(π/2))
 *
 * Source   as `staticMerit`, solved for the torque coefficient.
 * Range    thrust coefficient 0 or more, merit greater than 0.
 * Throws   OutOfDomain for other input.
 *
 * @example torqueCoefficientFromMerit({ thrustCoefficient: 0.3, staticMerit: 0.596175371301 }) // 0.0350
 */
export function torqueCoefficientFromMerit({
  thrustCoefficient,
  staticMerit: merit,
}: {
  readonly thrustCoefficient: number;
  readonly staticMerit: number;
}): number {
  const K_T = nonNegative(thrustCoefficient, "thrust coefficient", "");
  return (K_T / Math.PI) ** 1.5 / (Math.SQRT2 * positive(merit, "static merit", ""));
}

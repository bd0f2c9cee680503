import type { DriveRequest, OperatingPoint } from "../model/drive.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";

/**
 * Static merit of the propeller of an operating point at rest, with the doubt of its coefficients; null at speed, where
 * the ideal power hangs on the point as a whole, and where no coefficient states a doubt.
 *
 *   u²(FM)/FM² = (1.5 u_T/K_T)² + (u_Q/K_Q)² − 3 r (u_T/K_T)(u_Q/K_Q)
 *
 * Source   FM ~ K_T^1.5/K_Q (`staticMerit`); law of propagation, JCGM 100:2008, 5.2.2.
 */
export function meritAtRest(request: DriveRequest, point: Pick<OperatingPoint, "efficiencies">): Uncertain | null {
  const { uncertainties, correlations, thrustCoefficient, torqueCoefficient, advanceSpeed } = request;
  const thrust = (1.5 * (uncertainties.thrustCoefficient ?? 0)) / thrustCoefficient;
  const torque = (uncertainties.torqueCoefficient ?? 0) / torqueCoefficient;
  if (advanceSpeed !== 0 || !(thrust > 0 || torque > 0)) return null;
  const together = correlations.find(
    ({ of, and }) =>
      (of === "thrustCoefficient" && and === "torqueCoefficient") ||
      (of === "torqueCoefficient" && and === "thrustCoefficient"),
  );
  const variance = thrust ** 2 + torque ** 2 - 2 * (together?.coefficient ?? 0) * thrust * torque;
  const merit = point.efficiencies.propeller;
  return uncertain(merit, merit * Math.sqrt(Math.max(0, variance)));
}

import type { Ventilation } from "../../model/cavitation.ts";
import { STANDARD_GRAVITY } from "../../quantity/constants.ts";
import { nonNegative, positive } from "../../quantity/domain.ts";
import { discArea } from "../coefficients.ts";
import { inducedVelocity } from "../momentum.ts";

export interface SurfaceRunning {
  /** Thrust of the blades, N. */ readonly thrust: number;
  /** Thrust of a nozzle, N; 0 without. */ readonly nozzleThrust: number;
  /** Diameter over the blade tips, m. */ readonly diameter: number;
  /** Advance speed, m/s. */ readonly advanceSpeed: number;
  /** ρ, kg/m³. */ readonly density: number;
  /** Depth of the shaft, m. */ readonly shaftImmersion: number;
}

/** Shaft depth over diameter from which open-water tests neglect the surface; ITTC 7.5-02-03-02.1, from memory. */
export const OPEN_WATER_IMMERSION = 1.5;

/**
 * Whether a propeller near the surface draws air, and what the surface costs it.
 *
 *   Δh = (V_d² - V²)/(2 g)               the surface can be pulled down by no more than this where it moves with V_d
 *   h  = R + Δh                          upper tip under the drawn-down surface
 *   h  = D (1 + 2.3 (V_d - V)/sqrt(g D)) no air vortices at a pump intake
 *   β  = 1 - 0.675 (1 - 0.769 h/R)^1.258 for h < 1.3 R, else 1
 *
 * V_d is the mean velocity through the disc by momentum theory. Air is likely where the shaft is less than 1.5 D deep
 * and the mean flow could pull the surface down to the tips; possible as long as one depth asks for more; unlikely
 * below all.
 *
 * Source   Δh: Bernoulli along the surface. Second depth: Hydraulic Institute, ANSI/HI 9.8, Rotodynamic pumps for pump
 *          intake design, from memory; carried over to a propeller it is strict. β: Minsaas, Faltinsen & Persson, On
 *          the importance of added resistance, propeller immersion and propeller ventilation, PRADS 1983, from memory.
 *          To take the first two depths as the limits of air drawn in is common practice at best, no source: no tests
 *          of small thrusters stand behind them.
 * Assumes  calm water, a level shaft, nothing between propeller and surface.
 * Range    thrust, diameter and density greater than 0; speed, depth and nozzle thrust 0 or more.
 * Throws   OutOfDomain for other input.
 */
export function ventilation(running: SurfaceRunning): Ventilation {
  const { diameter, advanceSpeed: V } = running;
  const h = nonNegative(running.shaftImmersion, "depth of the shaft", "m");
  const D = positive(diameter, "diameter", "m");
  const through = velocityThroughDisc(running);
  const drawdown = (through ** 2 - V ** 2) / (2 * STANDARD_GRAVITY);
  const depthAgainstDrawdown = D / 2 + drawdown;
  const depthOfOpenWater = OPEN_WATER_IMMERSION * D;
  const depthAgainstVortices = D * (1 + (2.3 * (through - V)) / Math.sqrt(STANDARD_GRAVITY * D));
  const isSafe = h >= Math.max(depthOfOpenWater, depthAgainstDrawdown, depthAgainstVortices);
  const isLikely = h < Math.min(depthOfOpenWater, depthAgainstDrawdown);
  return {
    verdict: isLikely ? "likely" : isSafe ? "unlikely" : "possible",
    immersionRatio: h / D,
    ...{ drawdown, depthAgainstDrawdown, depthOfOpenWater, depthAgainstVortices },
    thrustRatio: thrustRatioNearSurface(h / (D / 2)),
  };
}

/**
 * Part of the deep-water thrust left at shaft depth over tip radius `immersion`: disc out of water and waves, no air
 * drawn in. Both are ratios, 1.
 *
 *   β = 1 − 0.675 (1 − 0.769 h/R)^1.258 for h < 1.3 R, else 1
 *
 * Source   Minsaas, Faltinsen & Persson, PRADS 1983, from memory; as in `ventilation`.
 * Throws   OutOfDomain for a negative or infinite depth.
 */
export function thrustRatioNearSurface(immersion: number): number {
  const left = 1 - 0.769 * nonNegative(immersion, "depth of the shaft over the tip radius", "");
  return left > 0 ? 1 - 0.675 * left ** 1.258 : 1;
}

/** V_d = T (V + v)/T_P: ideal power over the thrust that the disc carries, m/s. */
function velocityThroughDisc({ thrust, nozzleThrust, diameter, advanceSpeed, density }: SurfaceRunning): number {
  const T_P = positive(thrust, "thrust", "N");
  const T = T_P + nonNegative(nozzleThrust, "nozzle thrust", "N");
  const v = inducedVelocity({ thrust: T_P, discArea: discArea(diameter), density, advanceSpeed });
  return (T * (advanceSpeed + v)) / T_P;
}

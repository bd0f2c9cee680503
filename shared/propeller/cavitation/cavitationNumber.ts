import { STANDARD_GRAVITY } from "../../quantity/constants.ts";
import { nonNegative, positive } from "../../quantity/domain.ts";
import { discArea } from "../coefficients.ts";

export interface SectionRunning {
  /** Diameter over the blade tips, m. */ readonly diameter: number;
  /** Rotation rate, rev/s. */ readonly rotationRate: number;
  /** Advance speed, m/s. */ readonly advanceSpeed: number;
}

/**
 * Velocity of the section at 0.7 of the radius through the water, m/s.
 *
 *   V_R = sqrt(V_A² + (0.7 π n D)²)
 *
 * Source   Burrill & Emerson, Propeller cavitation: further tests on 16 in. propeller models, Transactions NECIES 79
 *          (1963).
 * Throws   OutOfDomain unless diameter and rotation rate are greater than 0 and the advance speed 0 or more.
 */
export function sectionSpeed({ diameter, rotationRate, advanceSpeed }: SectionRunning): number {
  const D = positive(diameter, "diameter", "m");
  const n = positive(rotationRate, "rotation rate", "rev/s");
  return Math.hypot(nonNegative(advanceSpeed, "advance speed", "m/s"), 0.7 * Math.PI * n * D);
}

export interface Submerged {
  /** Depth of the shaft, m. */ readonly shaftImmersion: number;
  /** ρ, kg/m³. */ readonly density: number;
  /** p_v, Pa. */ readonly vapourPressure: number;
  /** p_atm, Pa. */ readonly atmosphericPressure: number;
}

/**
 * Pressure at the shaft less vapour pressure, Pa: p_atm + ρ g h - p_v.
 *
 * Source   hydrostatics; g as `STANDARD_GRAVITY`.
 * Throws   OutOfDomain for negative or infinite input.
 */
export function pressureOverVapour({
  shaftImmersion,
  density,
  vapourPressure,
  atmosphericPressure,
}: Submerged): number {
  const h = nonNegative(shaftImmersion, "depth of the shaft", "m");
  const p_atm = positive(atmosphericPressure, "atmospheric pressure", "Pa");
  return (
    p_atm +
    positive(density, "density", "kg/m³") * STANDARD_GRAVITY * h -
    nonNegative(vapourPressure, "vapour pressure", "Pa")
  );
}

/**
 * Cavitation number of the section at 0.7 of the radius.
 *
 *   σ_0.7 = (p_atm + ρ g h - p_v) / (½ ρ V_R²)
 *
 * Source, throws as `sectionSpeed` and `pressureOverVapour`.
 */
export function cavitationNumber(at: SectionRunning & Submerged): number {
  return pressureOverVapour(at) / (0.5 * at.density * sectionSpeed(at) ** 2);
}

/**
 * Depth of the shaft, m, at which the section has cavitation number `sigma` (1); 0 where it has more at the surface
 * already.
 *
 *   h = (½ σ ρ V_R² + p_v − p_atm)/(ρ g)
 *
 * Source   the definition of σ_0.7 in `cavitationNumber`, solved for the depth.
 * Throws   OutOfDomain as `sectionSpeed`.
 */
export function depthOfCavitationNumber(sigma: number, at: SectionRunning & Omit<Submerged, "shaftImmersion">): number {
  const { density: rho, vapourPressure, atmosphericPressure } = at;
  const pressure = sigma * 0.5 * rho * sectionSpeed(at) ** 2 + vapourPressure - atmosphericPressure;
  return Math.max(0, pressure / (rho * STANDARD_GRAVITY));
}

/**
 * Projected area of the blades, m², from their expanded area, which is taken as the developed one.
 *
 *   A_P = A_E (1.067 - 0.229 P/D)
 *
 * Source   Burrill 1943; also UFC 4-159-03 (2016), eq. 22 and 23.
 * Range    common pitch ratios, 0.5 to 1.4; positive below 4.6.
 * Throws   OutOfDomain unless area ratio, pitch ratio and diameter are greater than 0.
 */
export function projectedArea({
  areaRatio,
  pitchRatio,
  diameter,
}: {
  readonly areaRatio: number;
  readonly pitchRatio: number;
  readonly diameter: number;
}): number {
  const A_E = positive(areaRatio, "area ratio", "") * discArea(diameter);
  return A_E * (1.067 - 0.229 * positive(pitchRatio, "pitch ratio", ""));
}

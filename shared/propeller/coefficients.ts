import { finite, positive } from "../quantity/domain.ts";

/** What turns a force, torque or power of a propeller into its coefficient. */
export interface Running {
  /** Fluid density, kg/m³. */
  readonly density: number;
  /** Rotation rate, rev/s. */
  readonly rotationRate: number;
  /** Diameter over the blade tips, m. */
  readonly diameter: number;
}

/**
 * Thrust coefficient.
 *
 *   K_T = T / (ρ n² D⁴)
 *
 * Source   ITTC Symbols and Terminology List (2021), propulsor performance; e.g. Carlton, Marine Propellers and
 *          Propulsion, ch. 6.
 * Range    thrust of either sign, N; density, rotation rate (rev/s) and diameter greater than 0.
 * Throws   OutOfDomain for other input.
 *
 * @example thrustCoefficient({ thrust: 51.33, density: 998.6, rotationRate: 84.4765, diameter: 0.07 }) // 0.3000
 */
export function thrustCoefficient({ thrust, ...running }: Running & { readonly thrust: number }): number {
  const { rho, n, D } = checked(running);
  return finite(thrust, "thrust", "N") / (rho * n ** 2 * D ** 4);
}

/**
 * Power coefficient, of the power delivered to the shaft.
 *
 *   C_P = P / (ρ n³ D⁵) = 2π K_Q
 *
 * Source   as `thrustCoefficient`.
 * Range    power of either sign, W; density, rotation rate (rev/s) and diameter greater than 0.
 * Throws   OutOfDomain for other input.
 */
export function powerCoefficient({ shaftPower, ...running }: Running & { readonly shaftPower: number }): number {
  const { rho, n, D } = checked(running);
  return finite(shaftPower, "shaft power", "W") / (rho * n ** 3 * D ** 5);
}

/** K_Q over C_P, 1/2π: shaft power is torque times angular velocity, P = 2π n Q. Source as `thrustCoefficient`. */
export const TORQUE_OVER_POWER_COEFFICIENT = 1 / (2 * Math.PI);

export interface BladeFlow {
  /** Blade chord at `radius`, m. */
  readonly chord: number;
  /** Place of the section as a fraction of the tip radius; 0.7 where it is not given. */
  readonly radius?: number;
  /** Diameter over the blade tips, m. */
  readonly diameter: number;
  /** Rotation rate, rev/s. */
  readonly rotationRate: number;
  /** Advance speed, m/s; 0 at bollard. */
  readonly advanceSpeed: number;
  /** Kinematic viscosity, m²/s. */
  readonly kinematicViscosity: number;
}

/**
 * Reynolds number of a blade section, that at x = 0.7 of the tip radius where no other is given.
 *
 *   Re = c sqrt(V_A² + (x π n D)²) / ν
 *
 * Source   ITTC Recommended Procedure 7.5-02-03-01.4 (1978 performance prediction method).
 * Assumes  no induced velocity.
 * Range    chord, diameter, rotation rate and viscosity greater than 0; advance speed of either sign.
 * Throws   OutOfDomain for other input.
 */
export function bladeReynolds({
  chord,
  radius = 0.7,
  diameter,
  rotationRate,
  advanceSpeed,
  kinematicViscosity,
}: BladeFlow): number {
  const c = positive(chord, "chord", "m");
  const D = positive(diameter, "diameter", "m");
  const n = positive(rotationRate, "rotation rate", "rev/s");
  const V = finite(advanceSpeed, "advance speed", "m/s");
  const nu = positive(kinematicViscosity, "kinematic viscosity", "m²/s");
  return (c * Math.hypot(V, positive(radius, "radius", "") * Math.PI * n * D)) / nu;
}

/**
 * Area swept by the blades, hub included, m²: A = π D²/4 of the diameter in m.
 *
 * Source   definition: ITTC Symbols and Terminology List (2021), disc area A_0.
 * Throws   OutOfDomain unless D > 0.
 */
export function discArea(diameter: number): number {
  return (Math.PI * positive(diameter, "diameter", "m") ** 2) / 4;
}

function checked({ density, rotationRate, diameter }: Running): { rho: number; n: number; D: number } {
  return {
    rho: positive(density, "density", "kg/m³"),
    n: positive(rotationRate, "rotation rate", "rev/s"),
    D: positive(diameter, "diameter", "m"),
  };
}

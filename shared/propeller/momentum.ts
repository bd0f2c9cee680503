import { bracketedRoot } from "../numeric/rootFinding.ts";
import { nonNegative, positive } from "../quantity/domain.ts";

export interface PoweredDisc {
  /** Power delivered to the shaft, W. */
  readonly shaftPower: number;
  /** Area swept by the blades, hub included, m². */
  readonly discArea: number;
  /** Fluid density, kg/m³. */
  readonly density: number;
}

export interface PoweredNozzle extends PoweredDisc {
  /** Exit area of the nozzle over disc area, σ; 1 for a nozzle that ends as wide as the disc. */
  readonly areaRatio?: number;
}

export interface LoadedDisc {
  /** Thrust, N. */
  readonly thrust: number;
  /** Area swept by the blades, hub included, m². */
  readonly discArea: number;
  /** Fluid density, kg/m³. */
  readonly density: number;
}

/** In a nozzle `thrust` is the part the disc itself carries, τ T. */
export interface AdvancingDisc extends LoadedDisc {
  /** Speed of the fluid towards the disc far ahead, m/s; 0 at bollard. */
  readonly advanceSpeed: number;
}

/**
 * Greatest thrust an open disc can make at rest from a given shaft power, N.
 *
 *   T = (2 ρ A P²)^(1/3)         from P = T v and T = 2 ρ A v², v the velocity through the disc
 *
 * Source   Rankine-Froude momentum theory; e.g. Carlton, Marine Propellers and Propulsion, ch. 8.
 * Assumes  steady, incompressible, no swirl, no nozzle, unbounded fluid at rest.
 * Range    any positive power, area and density. A nozzle can exceed it: idealNozzleThrust.
 * Error    none within the assumptions: it is a bound. A real disc makes FM^(2/3) of it.
 * Throws   OutOfDomain for zero, negative, infinite or NaN input.
 *
 * @example idealBollardThrust({ shaftPower: 100, discArea: 0.00785, density: 998.2 }) // 53.915 N
 */
export function idealBollardThrust({ shaftPower, discArea, density }: PoweredDisc): number {
  return idealNozzleThrust({ shaftPower, discArea, density, areaRatio: OPEN_DISC });
}

/** The wake of an open disc narrows to half the disc area far behind: it acts as a nozzle of σ = 1/2. */
const OPEN_DISC = 0.5;

/**
 * Greatest thrust of a disc and its nozzle together at rest from a given shaft power, N.
 *
 *   T = (4 σ ρ A P²)^(1/3)       from P = ½ m v², T = m v, m = ρ σ A v, v the velocity at the exit
 *
 * The nozzle ends at ambient pressure, so the jet leaves as wide as the exit; an open disc is σ = 1/2.
 *
 * Source   momentum theory for ducted propellers; Küchemann & Weber, Aerodynamics of Propulsion (1953).
 * Assumes  as idealBollardThrust, and that the flow fills the exit (no separation in the nozzle).
 * Range    any positive power, area, density and area ratio; real nozzles have σ of 0.9 to 1.3.
 * Error    none within the assumptions: it is a bound.
 * Throws   OutOfDomain for zero, negative, infinite or NaN input.
 *
 * @example idealNozzleThrust({ shaftPower: 100, discArea: 0.00384845, density: 998.6 }) // 53.569 N
 */
export function idealNozzleThrust({ shaftPower, discArea, density, areaRatio = 1 }: PoweredNozzle): number {
  const P = positive(shaftPower, "shaft power", "W");
  const A = positive(discArea, "disc area", "m²");
  const rho = positive(density, "density", "kg/m³");
  const sigma = positive(areaRatio, "nozzle area ratio", "");
  return Math.cbrt(4 * sigma * rho * A * P * P);
}

/**
 * Least shaft power from which an open disc can make a given thrust at rest, W.
 *
 *   P = T^(3/2) / sqrt(2 ρ A)
 *
 * Source   as idealBollardThrust, solved for the power.
 * Range    any positive thrust, area and density.
 * Throws   OutOfDomain for zero, negative, infinite or NaN input.
 *
 * @example idealBollardPower({ thrust: 10, discArea: 0.0019635, density: 1025 }) // 15.76 W
 */
export function idealBollardPower({ thrust, discArea, density }: LoadedDisc): number {
  const T = positive(thrust, "thrust", "N");
  const A = positive(discArea, "disc area", "m²");
  const rho = positive(density, "density", "kg/m³");
  return T ** 1.5 / Math.sqrt(2 * rho * A);
}

/**
 * Velocity that an open disc adds to the fluid at the disc, m/s.
 *
 *   v = -V/2 + sqrt(V²/4 + T/(2 ρ A))         from T = 2 ρ A (V + v) v
 *
 * Written as T/(ρ A) / (V + sqrt(V² + 2T/(ρ A))), which loses no digits for a lightly loaded disc.
 *
 * Source   Rankine-Froude momentum theory; e.g. Carlton, Marine Propellers and Propulsion, ch. 8.
 * Range    thrust and advance speed 0 or more, area and density greater than 0.
 * Throws   OutOfDomain for other input.
 *
 * @example inducedVelocity({ thrust: 20, discArea: 0.00384845, density: 998.6, advanceSpeed: 1 }) // 1.18881 m/s
 */
export function inducedVelocity({ thrust, discArea, density, advanceSpeed }: AdvancingDisc): number {
  const T = nonNegative(thrust, "thrust", "N");
  const A = positive(discArea, "disc area", "m²");
  const rho = positive(density, "density", "kg/m³");
  const V = nonNegative(advanceSpeed, "advance speed", "m/s");
  if (T === 0) return 0;
  return T / (rho * A) / (V + Math.sqrt(V * V + (2 * T) / (rho * A)));
}

/**
 * Greatest efficiency T V / P of a disc that advances, 0 to 1; 0 at bollard. T is the whole thrust, nozzle included.
 *
 *   η_i = 2 / (1 + sqrt(1 + τ C_Th)),   C_Th = T / (½ ρ A V²),   τ the part of T that the disc carries
 *
 * Written as V / (V + v), v of the thrust on the disc: the same, and defined at V = 0.
 *
 * Source   as inducedVelocity; with a nozzle Küchemann & Weber, Aerodynamics of Propulsion (1953).
 * Range    as inducedVelocity; thrust and advance speed not both 0.
 * Throws   OutOfDomain for other input.
 *
 * @example idealEfficiency({ thrust: 20, discArea: 0.00384845, density: 998.6, advanceSpeed: 1 }) // 0.45687
 */
export function idealEfficiency(disc: AdvancingDisc): number {
  const v = inducedVelocity(disc);
  const through = positive(disc.advanceSpeed + v, "velocity through the disc", "m/s");
  return disc.advanceSpeed / through;
}

export interface AdvancingPoweredDisc extends PoweredDisc {
  /** Speed of the fluid towards the disc far ahead, m/s; 0 at bollard. */
  readonly advanceSpeed: number;
  /** Exit area of the nozzle over disc area, σ; null for an open disc. */
  readonly nozzleAreaRatio: number | null;
}

/**
 * Greatest thrust of a disc, with its nozzle if it has one, from a given shaft power at speed, N.
 *
 *   T = m u,   P = T (V + u/2)         m = ρ A (V + u/2) open, m = ρ σ A (V + u) in a nozzle
 *
 * u is the velocity added far behind: an open wake narrows until it has the outer pressure, a nozzle's jet leaves with
 * it. At rest it is idealBollardThrust and idealNozzleThrust. A nozzle that ends as wide as the disc loses its gain
 * with speed.
 *
 * Source   momentum theory (Rankine-Froude); with a nozzle Küchemann & Weber, Aerodynamics of Propulsion (1953).
 * Assumes  as idealNozzleThrust; no drag of the nozzle.
 * Range    shaft power, area and density greater than 0, advance speed 0 or more, area ratio greater than 0.
 * Error    none within the assumptions: it is a bound. Root by Brent's method to 1e-12.
 * Throws   OutOfDomain for other input.
 *
 * @example idealThrust({ shaftPower: 100, discArea: 0.00384845, density: 998.6, advanceSpeed: 1, nozzleAreaRatio: null }) // 36.538 N
 */
export function idealThrust({
  shaftPower,
  discArea,
  density,
  advanceSpeed,
  nozzleAreaRatio,
}: AdvancingPoweredDisc): number {
  const P = positive(shaftPower, "shaft power", "W");
  const A = positive(discArea, "disc area", "m²");
  const rho = positive(density, "density", "kg/m³");
  const V = nonNegative(advanceSpeed, "advance speed", "m/s");
  const sigma = nozzleAreaRatio === null ? null : positive(nozzleAreaRatio, "nozzle area ratio", "");
  const thrustAt = (u: number) => rho * A * u * (sigma === null ? V + u / 2 : sigma * (V + u));
  const excess = (u: number) => thrustAt(u) * (V + u / 2) - P;
  // At rest the same power adds the most; a margin keeps the sign change inside in spite of rounding.
  const greatest = 1.01 * Math.cbrt((2 * P) / (rho * A * (sigma ?? OPEN_DISC)));
  return thrustAt(bracketedRoot(excess, 0, greatest).root);
}

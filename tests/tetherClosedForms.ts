import { bracketedRoot } from "../shared/numeric/rootFinding.ts";

/*
 * Published solutions for tethers in a uniform flow, which the solver is held against. They are checked by themselves in
 * reference/vehicleTether.test.ts.
 */

export interface SquareTether {
  /** Density of the water, kg/m³. */ readonly density: number;
  /** Outer diameter, m. */ readonly diameter: number;
  /** Normal drag coefficient. */ readonly normalDragCoefficient: number;
  /** Speed of the water past the tether, m/s. */ readonly speed: number;
}

/**
 * Drag per length of a tether square to the flow, N/m.
 *
 *   R = 0.5 ρ C_n d U²
 *
 * Source   Pode, DTMB report 687 (1951); Hoerner, Fluid-Dynamic Drag (1965), ch. 3.
 */
export function squareDrag({ density, diameter, normalDragCoefficient, speed }: SquareTether): number {
  return 0.5 * density * normalDragCoefficient * diameter * speed * speed;
}

/**
 * Greatest drag along the flow that a length of tether can have, N: straight and square to it. The two ends carry it
 * together. A tether drawn taut across the flow pulls harder than that, but then along itself.
 *
 *   D = R L
 *
 * Source   Pode, DTMB report 687 (1951): a piece at an angle φ has R sin³φ + R_t cos³φ along the flow, at most R
 *          while the tangential drag per length R_t is smaller.
 * Range    uniform flow, or the fastest speed of a sheared one.
 */
export function tetherDragBound({ length, ...square }: SquareTether & { readonly length: number }): number {
  return squareDrag(square) * length;
}

export interface SidewaysCatenary {
  /** Tension over drag per length T/R, m. */ readonly parameter: number;
  /** Greatest distance from the line between the ends, m. */ readonly belly: number;
  /** Angle of the tether to the flow at its ends, rad. */ readonly endAngle: number;
}

/**
 * Catenary on its side: a tether without weight and tangential drag between two ends on a line square to a uniform flow.
 * Its tension a R is the same all along.
 *
 *   L = 2 a sinh(D/(2 a)),  b = a (cosh(D/(2 a)) - 1),  cot φ = L/(2 a)
 *
 * Source   Pode, DTMB report 687 (1951), zero tangential force; Berteaux, Buoy Engineering (1976).
 * Range    a length greater than the distance.
 */
export function sidewaysCatenary(ends: { readonly length: number; readonly distance: number }): SidewaysCatenary {
  const { length: L, distance: D } = ends;
  const ratio = L / D;
  // sinh(u)/u ≥ 1 + u²/6 puts the root below the first, and sinh(u)/u > ratio holds at the second for all greater ratios.
  const high = Math.min(Math.sqrt(6 * (ratio - 1)), 2 * Math.log(2 * ratio) + 1);
  const { root: u } = bracketedRoot((u) => Math.sinh(u) / u - ratio, high * 1e-3, high * (1 + 1e-9), {
    relativeTolerance: 1e-15,
  });
  const a = D / (2 * u);
  return { parameter: a, belly: a * (Math.cosh(u) - 1), endAngle: Math.atan2(2 * a, L) };
}

export interface PulledAcross {
  /** Force of the tether on the vehicle, straight across the flow, N. */ readonly pull: number;
  /** Drag per length square to the flow R, N/m. */ readonly squareDrag: number;
  /** Length of tether, m. */ readonly length: number;
}

/**
 * Where the upper end of a tether without weight and tangential drag lies, from a vehicle that it pulls straight across a
 * uniform flow, m, and the force there, N.
 *
 *   a = T/R,  x = a (sqrt(1 + (L/a)²) - 1) against the flow,  z = a asinh(L/a) across it
 *
 * Source   Pode, DTMB report 687 (1951), zero tangential force; Berteaux, Buoy Engineering (1976).
 */
export function pulledAcross({ pull, squareDrag: R, length }: PulledAcross): {
  readonly againstFlow: number;
  readonly across: number;
  readonly endForce: { readonly againstFlow: number; readonly across: number };
} {
  const a = pull / R;
  const cotangent = length / a;
  const sine = 1 / Math.hypot(1, cotangent);
  return {
    againstFlow: a * (Math.hypot(1, cotangent) - 1),
    across: a * Math.asinh(cotangent),
    endForce: { againstFlow: pull * cotangent * sine, across: pull * sine },
  };
}

/**
 * Critical angle of a long heavy tether towed with a free end, rad from the flow: straight, weight and normal drag in
 * balance square to it.
 *
 *   R sin²φ = w cos φ,  cos φ = -w/(2 R) + sqrt(1 + (w/(2 R))²)
 *
 * Source   Pode, DTMB report 687 (1951).
 */
export function criticalAngle(load: { readonly squareDrag: number; readonly weightPerLength: number }): number {
  const k = load.weightPerLength / load.squareDrag / 2;
  // The printed form loses its digits for a great weight; this is the same number.
  const cosine = 1 / (k + Math.hypot(1, k));
  return Math.atan2(Math.sqrt((1 - cosine) * (1 + cosine)), cosine);
}

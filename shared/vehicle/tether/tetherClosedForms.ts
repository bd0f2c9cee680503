import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { nonNegative, positive, within } from "../../quantity/domain.ts";
import { OutOfDomain } from "../../quantity/problem.ts";

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
 * Throws   OutOfDomain for sizes that are not positive or a negative speed.
 *
 * @example squareDrag({ density: 1025, diameter: 0.006, normalDragCoefficient: 1.2, speed: 1 }) // 3.69 N/m
 */
export function squareDrag({ density, diameter, normalDragCoefficient, speed }: SquareTether): number {
  const rho = positive(density, "density", "kg/m³");
  const d = positive(diameter, "diameter", "m");
  const C_n = positive(normalDragCoefficient, "normal drag coefficient", "");
  const U = nonNegative(speed, "speed", "m/s");
  return 0.5 * rho * C_n * d * U * U;
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
 *
 * @example tetherDragBound({ density: 1025, diameter: 0.006, normalDragCoefficient: 1.2, speed: 1, length: 60 }) // 221.4 N
 */
export function tetherDragBound({ length, ...square }: SquareTether & { readonly length: number }): number {
  return squareDrag(square) * positive(length, "length", "m");
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
 * Throws   OutOfDomain `vehicle.tether-too-short` for a length that does not reach.
 *
 * @example sidewaysCatenary({ length: 60, distance: 50 }).parameter // 23.477076156326 m
 */
export function sidewaysCatenary(ends: { readonly length: number; readonly distance: number }): SidewaysCatenary {
  const L = positive(ends.length, "length", "m");
  const D = positive(ends.distance, "distance", "m");
  if (L <= D) {
    throw new OutOfDomain({
      code: "vehicle.tether-too-short",
      found: `A tether of ${L} m does not reach over ${D} m`,
      needed: `more than ${D} m`,
      mend: "Pay out more, or come nearer",
    });
  }
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
 *
 * @example pulledAcross({ pull: 20, squareDrag: 3.69, length: 50 }).againstFlow // 44.8728577010 m
 */
export function pulledAcross({ pull, squareDrag: R, length }: PulledAcross): {
  readonly againstFlow: number;
  readonly across: number;
  readonly endForce: { readonly againstFlow: number; readonly across: number };
} {
  const a = positive(pull, "pull", "N") / positive(R, "drag per length", "N/m");
  const s = positive(length, "length", "m");
  const cotangent = s / a;
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
 * Throws   OutOfDomain for drag that is not positive or weight that is not from 0 to 1e6 times it.
 *
 * @example criticalAngle({ squareDrag: 3.69, weightPerLength: 0.5 }) // 0.363827135 rad
 */
export function criticalAngle(load: { readonly squareDrag: number; readonly weightPerLength: number }): number {
  const R = positive(load.squareDrag, "drag per length", "N/m");
  const k = within(load.weightPerLength / R, 0, 1e6, "weight over drag per length", "") / 2;
  // The printed form loses its digits for a great weight; this is the same number.
  const cosine = 1 / (k + Math.hypot(1, k));
  return Math.atan2(Math.sqrt((1 - cosine) * (1 + cosine)), cosine);
}

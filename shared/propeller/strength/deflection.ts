/** Curvature of the blade at a radius, 1/m. */
export interface BentStation {
  /** m from the shaft axis. */ readonly radius: number;
  /** Towards forward. */ readonly axialCurvature: number;
  /** Against the turning. */ readonly tangentialCurvature: number;
}

export interface Bending {
  readonly flatwiseMoment: number;
  readonly edgewiseMoment: number;
  /** E I about the chord, N·m². */ readonly flatwiseStiffness: number;
  /** E I about the normal of the chord, N·m². */ readonly edgewiseStiffness: number;
  /** φ, rad. */ readonly pitchAngle: number;
}

/**
 * Curvature along the shaft and in the plane of rotation of a twisted section, 1/m.
 *
 *   κ_f = M_f/(E I_f),   κ_e = M_e/(E I_e);   κ_x = κ_f cos φ − κ_e sin φ,   κ_t = κ_f sin φ + κ_e cos φ
 *
 * Source   Euler-Bernoulli beam about each principal axis: Gere & Timoshenko, Mechanics of Materials (1997), ch. 6
 *          (unsymmetric bending), from memory.
 * Assumes  the principal axes lie along the chord and square to it.
 */
export function curvatureOf(bending: Bending): Omit<BentStation, "radius"> {
  const flat = bending.flatwiseMoment / bending.flatwiseStiffness;
  const edge = bending.edgewiseMoment / bending.edgewiseStiffness;
  const [cos, sin] = [Math.cos(bending.pitchAngle), Math.sin(bending.pitchAngle)];
  return { axialCurvature: flat * cos - edge * sin, tangentialCurvature: flat * sin + edge * cos };
}

export interface Deflection {
  readonly axial: number;
  readonly tangential: number;
}

/**
 * Deflection at each station and at `tipRadius`, m, of a blade held at its first station: the curvature integrated twice.
 *
 *   w'' = M/(E I),   w = w' = 0 at the root
 *
 * Source   Euler-Bernoulli beam; Gere & Timoshenko, Mechanics of Materials (1997), ch. 9, deflection by integration.
 * Assumes  small slopes; the stiffening by centrifugal pull is left out, so that the deflection is not understated.
 *          Between stations the curvature is a straight line; beyond the last station the blade is straight.
 */
export function deflections(
  stations: readonly BentStation[],
  tipRadius: number,
): { stations: Deflection[]; tip: Deflection } {
  const axial = integratedTwice(stations, (station) => station.axialCurvature, tipRadius);
  const tangential = integratedTwice(stations, (station) => station.tangentialCurvature, tipRadius);
  return {
    stations: stations.map((_, i) => ({ axial: axial.at[i]!, tangential: tangential.at[i]! })),
    tip: { axial: axial.tip, tangential: tangential.tip },
  };
}

function integratedTwice(
  stations: readonly BentStation[],
  curvatureAt: (station: BentStation) => number,
  tipRadius: number,
): { at: number[]; tip: number } {
  const at = [0];
  let slope = 0;
  let deflection = 0;
  for (let i = 1; i < stations.length; i++) {
    const [inner, outer] = [stations[i - 1]!, stations[i]!];
    const h = outer.radius - inner.radius;
    const [k0, k1] = [curvatureAt(inner), curvatureAt(outer)];
    // Exact for a curvature that is a straight line over the step.
    deflection += slope * h + (h * h * (2 * k0 + k1)) / 6;
    slope += (h * (k0 + k1)) / 2;
    at.push(deflection);
  }
  return { at, tip: deflection + slope * (tipRadius - stations.at(-1)!.radius) };
}

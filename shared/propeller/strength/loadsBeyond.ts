/** A piece of one blade with what acts on it, taken as even over its width. */
export interface LoadedPiece {
  /** Its middle, m from the shaft axis. */ readonly radius: number;
  /** Length along the blade, m. */ readonly width: number;
  /** Thrust of the piece per length, N/m, forward. */ readonly thrustPerLength: number;
  /** Force per length against the turning, N/m. */ readonly tangentialForcePerLength: number;
  /** ρ_m A ω², N/m²: times length and radius it is the centrifugal force. */ readonly pullPerRadius: number;
  /** Where its centroid lies forward of the generator line, m (aft rake is negative). */ readonly forward: number;
  /** Skew, rad, positive against the turning. */ readonly skew: number;
}

/** What the part of a blade beyond a section does to that section. */
export interface SectionLoads {
  /** Force along the shaft, forward, N. */ readonly axialForce: number;
  /** Force in the plane of rotation, against the turning, N. */ readonly tangentialForce: number;
  /** Pull along the blade, N. */ readonly centrifugalForce: number;
  /** Moment that bends the tip forward, N·m. */ readonly axialMoment: number;
  /** Moment that bends the tip against the turning, N·m. */ readonly tangentialMoment: number;
}

const NONE: SectionLoads = {
  axialForce: 0,
  tangentialForce: 0,
  centrifugalForce: 0,
  axialMoment: 0,
  tangentialMoment: 0,
};

export interface Section {
  /** r_0, m. */ readonly radius: number;
  /** Its own place as in `LoadedPiece`. */ readonly forward: number;
  readonly skew: number;
}

/**
 * Forces and bending moments at a section from everything beyond it: statics of a cantilever.
 *
 *   M_axial = Σ T' (r cos δ - r_0) - C' cos δ (x - x_0),   M_tangential = Σ Q' (r - r_0 cos δ) - C' r_0 sin δ
 *
 * with T', Q', C' the thrust, tangential and centrifugal force of a piece, δ its skew and x its place forward, both
 * against the section. Rake aft and thrust bend the same way; skew against the turning relieves the tangential bending.
 *
 * Source   equilibrium of the part cut off; Gere & Timoshenko, Mechanics of Materials (1997), ch. 4; for propellers
 *          Carlton, Marine Propellers and Propulsion, chapter on propeller blade stress (cantilever beam method).
 * Assumes  small bending; twisting of a skewed blade is not included.
 * Error    pieces are even over their width: exact for an even load, second order in the width for others.
 */
export function loadsBeyond(section: Section, pieces: readonly LoadedPiece[]): SectionLoads {
  return pieces.reduce((sum, piece) => added(sum, section, piece), NONE);
}

function added(sum: SectionLoads, section: Section, piece: LoadedPiece): SectionLoads {
  const { radius: r0, forward: x0, skew: skew0 } = section;
  const outer = piece.radius + piece.width / 2;
  const inner = Math.max(r0, piece.radius - piece.width / 2);
  if (outer <= inner) return sum;
  const length = outer - inner;
  const r = (outer + inner) / 2;
  const delta = piece.skew - skew0;
  const [cos, sin] = [Math.cos(delta), Math.sin(delta)];
  const T = piece.thrustPerLength * length;
  const Q = piece.tangentialForcePerLength * length;
  const C = piece.pullPerRadius * length * r;
  return {
    axialForce: sum.axialForce + T,
    tangentialForce: sum.tangentialForce + Q * cos + C * sin,
    centrifugalForce: sum.centrifugalForce + C * cos - Q * sin,
    axialMoment: sum.axialMoment + T * (r * cos - r0) - C * cos * (piece.forward - x0),
    tangentialMoment: sum.tangentialMoment + Q * (r - r0 * cos) - C * r0 * sin,
  };
}

/** Where the flow leaves the section: angle of attack, rad, with the lift and drag coefficient there. */
export interface StallPoint {
  readonly angle: number;
  readonly lift: number;
  readonly drag: number;
}

/** Constants of the curve beyond the stall. */
export interface Viterna {
  readonly A1: number;
  readonly A2: number;
  readonly B1: number;
  readonly B2: number;
}

/**
 * Curve of a stalled section from its stall point to a plate across the flow.
 *
 *   C_L = A1 sin 2α + A2 cos²α / sin α,   C_D = B1 sin²α + B2 cos α
 *   B1 = C_D,max = 1.11 + 0.018 AR (2.01 above AR 50),  A1 = B1/2
 *   A2 = (C_Ls - B1 sin α_s cos α_s) sin α_s / cos²α_s,  B2 = (C_Ds - B1 sin²α_s) / cos α_s
 *
 * Source   Viterna & Corrigan, Fixed pitch rotor performance of large horizontal axis wind turbines, NASA CP-2230 (1982).
 * Range    stall angle between 0 and π/2, aspect ratio greater than 0. It passes the stall point; C_L(π/2) = 0.
 *
 * @example viternaLift(viternaOf({ angle: Math.PI / 15, lift: 1, drag: 0.08 }, 10), Math.PI / 6) // 0.7990
 */
export function viternaOf({ angle, lift, drag }: StallPoint, aspectRatio: number): Viterna {
  const greatest = aspectRatio > 50 ? 2.01 : 1.11 + 0.018 * aspectRatio;
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  return {
    A1: greatest / 2,
    A2: ((lift - greatest * sin * cos) * sin) / (cos * cos),
    B1: greatest,
    B2: (drag - greatest * sin * sin) / cos,
  };
}

/** Lift coefficient at `angle`, rad, from the stall angle to π/2: C_L = A1 sin 2α + A2 cos²α/sin α. Source as `viternaOf`. */
export function viternaLift({ A1, A2 }: Viterna, angle: number): number {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  return 2 * A1 * sin * cos + (A2 * cos * cos) / sin;
}

/** Drag coefficient at `angle`, rad, from the stall angle to π/2: C_D = B1 sin²α + B2 cos α. Source as `viternaOf`. */
export function viternaDrag({ B1, B2 }: Viterna, angle: number): number {
  const sin = Math.sin(angle);
  return B1 * sin * sin + B2 * Math.cos(angle);
}

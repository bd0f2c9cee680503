import type { BodyDirection, BodyPoint, ThrusterPlacement } from "../../model/vehicle/layoutRequest.ts";
import { InputProblem } from "../../quantity/problem.ts";

export type Vector = readonly [number, number, number];

const ORIGIN: BodyPoint = { x: 0, y: 0, z: 0 };

export const cross = ([a, b, c]: Vector, [d, e, f]: Vector): Vector => [b * f - c * e, c * d - a * f, a * e - b * d];
export const scaled = ([a, b, c]: Vector, by: number): Vector => [a * by, b * by, c * by];
export const size = (vector: Vector): number => Math.hypot(...vector);

/** Direction of length one. Throws InputProblem where the three parts are all zero. */
export function unitDirection({ x, y, z }: BodyDirection, where: string): Vector {
  const length = Math.hypot(x, y, z);
  if (length > 0 && Number.isFinite(length)) return [x / length, y / length, z / length];
  throw new InputProblem({
    code: "vehicle.layout-zero-direction",
    where,
    found: "The direction has no length",
    needed: "at least one part that is not zero",
    mend: "Write 1, 0, 0 for a thruster that pushes straight ahead",
  });
}

/** Arm of a thruster from the point that moments are taken about. */
export function armOf({ position }: ThrusterPlacement, { x, y, z } = ORIGIN): Vector {
  return [position.x - x, position.y - y, position.z - z];
}

/** Which torque of the propeller on the vehicle is counted. */
export type ReactionSide = "none" | "forward" | "reverse";

/**
 * Forces and moments on the vehicle for 1 N of each thruster: rows X, Y, Z, K, M, N, one column a thruster.
 *
 *   w_i = f_i [d_i ; p_i × d_i − s_i κ_i d_i]
 *
 * d_i direction, p_i arm from the centre of mass, κ_i propeller torque over thrust, s_i = +1 where the propeller turns
 * clockwise seen from behind at forward thrust. The water brakes the propeller, so the vehicle is turned against the
 * sense of rotation. Astern the propeller turns the other way and thrust changes sign too, so the same formula holds
 * with κ of the reverse side.
 *
 * Source   rigid-body statics; axes as SNAME, Technical and Research Bulletin 1-5 (1952).
 * Assumes  thrusters do not disturb each other's water or the hull's.
 * Throws   InputProblem `vehicle.layout-zero-direction`.
 */
export function wrenchMatrix(
  thrusters: readonly ThrusterPlacement[],
  centre: BodyPoint = ORIGIN,
  side: ReactionSide = "none",
): number[][] {
  const columns = thrusters.map((one, i) => {
    const d = unitDirection(one.direction, `thrusters.${i}.direction`);
    const moment = cross(armOf(one, centre), d);
    const kappa = side === "none" ? 0 : (one.torquePerThrust?.[side] ?? 0);
    const turn = one.spin === "clockwise" ? kappa : -kappa;
    return [...d, ...moment.map((part, k) => part - turn * d[k]!)];
  });
  // Adding zero takes the sign from a zero, which JSON does not keep.
  return [0, 1, 2, 3, 4, 5].map((row) => columns.map((column) => column[row]! + 0));
}

/** Sum over the thrusters: wrench of given thrusts. */
export function wrenchOf(matrix: readonly (readonly number[])[], forces: readonly number[]): number[] {
  return matrix.map((row) => row.reduce((sum, one, i) => sum + one * forces[i]!, 0) + 0);
}

/** Moments K, M, N that the propellers' torque puts on the vehicle at given thrusts, N·m; null where none is known. */
export function reactionOf(thrusters: readonly ThrusterPlacement[], forces: readonly number[]): Vector | null {
  if (thrusters.every(({ torquePerThrust }) => torquePerThrust === undefined)) return null;
  const total = [0, 0, 0];
  thrusters.forEach((one, i) => {
    const d = unitDirection(one.direction, `thrusters.${i}.direction`);
    const kappa = one.torquePerThrust?.[forces[i]! < 0 ? "reverse" : "forward"] ?? 0;
    const turn = one.spin === "clockwise" ? kappa : -kappa;
    d.forEach((part, k) => {
      total[k]! -= turn * forces[i]! * part;
    });
  });
  return [total[0]! + 0, total[1]! + 0, total[2]! + 0];
}

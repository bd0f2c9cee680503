import { integrate } from "../../numeric/dormandPrince.ts";
import { type TetherLoad, type Triple, writeDrag, writeFlow } from "./tetherLoad.ts";

/** Tension as a vector along the tether, N, and place, m: H_x, H_y, H_z, x, y, z. */
export type TetherState = Float64Array;

export interface ShapeProblem {
  readonly load: TetherLoad;
  /** Depth of the vehicle, m. */
  readonly depth: number;
  /** Size of the load per length, N/m, that small tensions are measured by. */
  readonly loadSize: number;
  /** Local error of the integration, relative. */
  readonly tolerance: number;
}

/**
 * Tension below which a tether has no direction, as a part of load times length. A real one bends there by its
 * stiffness; without a floor a tether folded on itself would turn about a point of zero tension and could not be
 * integrated. At a tension of a millionth of load times length the direction is off by 1e-10.
 */
const SOFTENING = 1e-11;

/** Part of load times length under which the error of a tension is no longer relative to that tension. */
const SMALL_TENSION = 1e-7;

/**
 * Shape of a tether from the vehicle up, from the force `pull` of it on the vehicle: the states at even lengths, first the
 * vehicle's, last the upper end's.
 *
 *   d(T t)/ds + f = 0,  dr/ds = t        H = T t, t = H/|H|
 *
 * f is weight and drag per length (`writeDrag`). Free in three dimensions.
 *
 * Source   Berteaux, Buoy Engineering (1976), ch. 4; Pode, DTMB report 687 (1951).
 * Assumes  steady; the tether does not stretch and has no bending stiffness.
 * Error    about 1e-9 of the length at a tolerance of 1e-10.
 */
export function shapeFrom({ load, depth, loadSize, tolerance }: ShapeProblem, pull: Triple, pieces = 1): TetherState[] {
  const derivative = equationOf(load, loadSize);
  const forceScale = loadSize * load.length;
  const errorSize = (y: TetherState, size: Float64Array) => {
    const tension = Math.sqrt(y[0]! ** 2 + y[1]! ** 2 + y[2]! ** 2);
    size.fill(Math.max(tension, SMALL_TENSION * forceScale), 0, 3);
    size.fill(load.length, 3, 6);
  };
  const states: TetherState[] = [Float64Array.of(...pull, 0, 0, depth)];
  let firstStep = load.length / 50;
  for (let piece = 0; piece < pieces; piece++) {
    const [from, to] = [(load.length * piece) / pieces, (load.length * (piece + 1)) / pieces];
    const { end, nextStep } = integrate({
      derivative,
      start: states[piece]!,
      from,
      to,
      tolerance,
      errorSize,
      firstStep,
    });
    firstStep = nextStep;
    states.push(end);
  }
  return states;
}

function equationOf(load: TetherLoad, loadSize: number) {
  const flow = new Float64Array(3);
  const force = new Float64Array(3);
  const floor = (SOFTENING * loadSize * load.length) ** 2 + Number.MIN_VALUE;
  return (along: number, y: TetherState, slope: Float64Array) => {
    const T = Math.sqrt(y[0]! * y[0]! + y[1]! * y[1]! + y[2]! * y[2]! + floor);
    const tx = y[0]! / T;
    const ty = y[1]! / T;
    const tz = y[2]! / T;
    writeFlow(load, along, y[5]!, flow);
    writeDrag(load, flow, tx, ty, tz, force);
    slope[0] = -force[0]!;
    slope[1] = -force[1]!;
    slope[2] = -force[2]! - load.weight;
    slope[3] = tx;
    slope[4] = ty;
    slope[5] = tz;
  };
}

import { type Integrated, integrate } from "../../numeric/dormandPrince.ts";
import { type TetherLoad, writeDrag, writeFlow } from "./tetherLoad.ts";
import { size, type Triple } from "./triple.ts";

/** Tension as a vector along the tether, N, and place, m: H_x, H_y, H_z, x, y, z. */
export type TetherState = Float64Array;

/** What decides a whole shape: tension and depth at one point of the tether. */
export interface TetherAnchor {
  /** Length from the vehicle, m. */
  readonly along: number;
  /** Tension as a vector, N, from the vehicle to the upper end. */
  readonly tension: Triple;
  /** Depth, m. */
  readonly depth: number;
}

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
 * Shape of a tether from what it is at one point, the states at even lengths: first the vehicle's, which is put at 0 ahead
 * and 0 to starboard, last the upper end's.
 *
 *   d(T t)/ds + f = 0,  dr/ds = t        H = T t, t = H/|H|
 *
 * f is weight and drag per length (`writeDrag`). Free in three dimensions. Integrated outwards from the point both ways:
 * where the tension is small the direction turns fast, and what is integrated towards such a place loses its digits.
 *
 * Source   Berteaux, Buoy Engineering (1976), ch. 4; Pode, DTMB report 687 (1951).
 * Assumes  steady; the tether does not stretch and has no bending stiffness.
 * Error    about 1e-9 of the length at a tolerance of 1e-10.
 */
export function shapeFrom(problem: ShapeProblem, anchor: TetherAnchor, pieces = 1): TetherState[] {
  const { length } = problem.load;
  const start = Float64Array.of(...anchor.tension, 0, 0, anchor.depth);
  const stations = Array.from({ length: pieces + 1 }, (_, i) => (length * i) / pieces);
  const below = stations.filter((station) => station <= anchor.along).reverse();
  const above = stations.filter((station) => station > anchor.along);
  const states = [
    ...leg(problem, start, anchor.along, -1, below).reverse(),
    ...leg(problem, start, anchor.along, 1, above),
  ];
  const [x, y] = [states[0]![3]!, states[0]![4]!];
  for (const state of states) {
    state[3]! -= x;
    state[4]! -= y;
  }
  return states;
}

/** States at stations on one side of a point, from it outwards: `way` 1 to the upper end, -1 to the vehicle. */
function leg(
  { load, loadSize, tolerance }: ShapeProblem,
  start: TetherState,
  along: number,
  way: 1 | -1,
  stations: readonly number[],
): TetherState[] {
  const derivative = equationOf(load, loadSize, way);
  const forceScale = loadSize * load.length;
  const errorSize = (y: TetherState, sizes: Float64Array) => {
    const tension = size([y[0]!, y[1]!, y[2]!]);
    sizes.fill(Math.max(tension, SMALL_TENSION * forceScale), 0, 3);
    sizes.fill(load.length, 3, 6);
  };
  const states: TetherState[] = [];
  let [from, state, firstStep] = [way * along, start, load.length / 50];
  for (const station of stations) {
    const to = way * station;
    const made: Pick<Integrated, "end" | "nextStep"> =
      to > from
        ? integrate({ derivative, start: state, from, to, tolerance, errorSize, firstStep })
        : { end: Float64Array.from(state), nextStep: firstStep };
    [from, state, firstStep] = [to, made.end, made.nextStep];
    states.push(state);
  }
  return states;
}

/** The equations over `way` times the length from the vehicle. */
function equationOf(load: TetherLoad, loadSize: number, way: 1 | -1) {
  const flow = new Float64Array(3);
  const force = new Float64Array(3);
  const floor = (SOFTENING * loadSize * load.length) ** 2 + Number.MIN_VALUE;
  return (distance: number, y: TetherState, slope: Float64Array) => {
    const T = Math.sqrt(y[0]! * y[0]! + y[1]! * y[1]! + y[2]! * y[2]! + floor);
    const tx = y[0]! / T;
    const ty = y[1]! / T;
    const tz = y[2]! / T;
    writeFlow(load, way * distance, y[5]!, flow);
    writeDrag(load, flow, tx, ty, tz, force);
    slope[0] = -way * force[0]!;
    slope[1] = -way * force[1]!;
    slope[2] = -way * (force[2]! + load.weight);
    slope[3] = way * tx;
    slope[4] = way * ty;
    slope[5] = way * tz;
  };
}

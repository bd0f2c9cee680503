import type { SolvedTether } from "../../model/vehicle/tetherShape.ts";
import { type TetherLoad, writeDrag, writeFlow } from "./tetherLoad.ts";
import type { ShapeProblem, TetherState } from "./tetherShape.ts";
import { cross, size, sum, type Triple, times } from "./triple.ts";

type Described = Pick<SolvedTether, "points" | "greatestNormalSpeed" | "drag" | "check">;

/** How far a shape bows out and how hard it pulls at most. */
export interface Extremes {
  /** m, and where, m from the vehicle. */ readonly belly: { readonly distance: number; readonly along: number };
  /** N, and where, m from the vehicle. */
  readonly greatestTension: { readonly tension: number; readonly along: number };
}

/** Tension as a vector, N. */
export const tensionOf = (state: TetherState): Triple => [state[0]!, state[1]!, state[2]!];
const placeOf = (state: TetherState): Triple => [state[3]!, state[4]!, state[5]!];
const tangentOf = (state: TetherState): Triple => {
  const T = size(tensionOf(state));
  return T === 0 ? [0, 0, 0] : times(tensionOf(state), 1 / T);
};

/** What is told of a shape, from its states at even lengths. */
export function describeShape({ load }: ShapeProblem, states: readonly TetherState[]): Described {
  const piece = load.length / (states.length - 1);
  const points = states.map((state, i) => ({
    along: i * piece,
    forward: state[3]!,
    starboard: state[4]!,
    depth: state[5]!,
    tension: size(tensionOf(state)),
  }));
  const drags = states.map((state, i) => dragAt(load, state, i * piece));
  const change = sum(tensionOf(states.at(-1)!), tensionOf(states[0]!), -1);
  const [forward, starboard, down] = sum(times(change, -1), [0, 0, load.weight * load.length], -1);
  return {
    points,
    greatestNormalSpeed: Math.max(...drags.map(({ normalSpeed }) => normalSpeed)),
    drag: { forward, starboard, down },
    check: {
      arcLength: arcLength(states, piece),
      forceBalance: size(
        sum(
          change,
          simpson(
            drags.map(({ drag }) => sum(drag, [0, 0, load.weight])),
            piece,
          ),
        ),
      ),
    },
  };
}

/** Belly and greatest tension of a shape, from its states at even lengths. */
export function extremesOf({ load }: Pick<ShapeProblem, "load">, states: readonly TetherState[]): Extremes {
  const piece = load.length / (states.length - 1);
  const tensions = states.map((state) => size(tensionOf(state)));
  const tension = Math.max(...tensions);
  return {
    belly: bellyOf(states, piece),
    greatestTension: { tension, along: tensions.indexOf(tension) * piece },
  };
}

function dragAt(load: TetherLoad, state: TetherState, along: number): { drag: Triple; normalSpeed: number } {
  const flow = new Float64Array(3);
  const force = new Float64Array(3);
  writeFlow(load, along, state[5]!, flow);
  const normalSpeed = writeDrag(load, flow, ...tangentOf(state), force);
  return { drag: [force[0]!, force[1]!, force[2]!], normalSpeed };
}

/** Greatest distance from the line through the two ends, of the points and of the parabola through the three about it. */
function bellyOf(states: readonly TetherState[], piece: number): Extremes["belly"] {
  const start = placeOf(states[0]!);
  const line = sum(placeOf(states.at(-1)!), start, -1);
  const length = size(line);
  const distances = states.map((state) => {
    const from = sum(placeOf(state), start, -1);
    return length === 0 ? size(from) : size(cross(from, line)) / length;
  });
  const at = distances.indexOf(Math.max(...distances));
  const [before, here, after] = [distances[at - 1] ?? 0, distances[at]!, distances[at + 1] ?? 0];
  const curvature = before - 2 * here + after;
  const shift = curvature < 0 && at > 0 && at < states.length - 1 ? (before - after) / (2 * curvature) : 0;
  return { distance: here - (curvature * shift * shift) / 2, along: (at + shift) * piece };
}

/** Length of the cubic curves through the points along their tangents, by Simpson's rule on each. */
function arcLength(states: readonly TetherState[], piece: number): number {
  let length = 0;
  for (const [i, state] of states.entries()) {
    const next = states[i + 1];
    if (next === undefined) break;
    const chord = sum(placeOf(next), placeOf(state), -1);
    const middle = sum(times(chord, 1.5), sum(tangentOf(state), tangentOf(next)), -piece / 4);
    length += (2 * piece + 4 * size(middle)) / 6;
  }
  return length;
}

function simpson(values: readonly Triple[], piece: number): Triple {
  const last = values.length - 1;
  return values.reduce<Triple>(
    (total, value, i) => {
      const weight = i === 0 || i === last ? 1 : i % 2 === 1 ? 4 : 2;
      return sum(total, value, (weight * piece) / 3);
    },
    [0, 0, 0],
  );
}

import { type LinearOptimum, type LinearProgramme, linearProgramme } from "../../numeric/linearProgramme.ts";
import type { LayoutModel, Limits, Tally } from "./layoutModel.ts";
import {
  type ThrustCost,
  type ThrustUnknown,
  type ThrustUnknowns,
  thrustsOf,
  thrustUnknowns,
  twoSided,
} from "./thrustUnknowns.ts";

export interface Ask {
  /** Weights of X, Y, Z, K, M, N in what is to be as great as possible. */
  readonly along: readonly number[];
  /** Wrenches whose product with that of the vehicle must be a number: a held axis is a unit wrench and 0. */
  readonly hold: readonly { readonly wrench: readonly number[]; readonly at: number }[];
  readonly limits: Limits;
  /** Greatest current of the bus for thrust, A; null: it does not count. */
  readonly current: number | null;
}

export interface Greatest {
  readonly value: number;
  /** N, in the order of the thrusters. */
  readonly forces: readonly number[];
  readonly governedBy: readonly {
    readonly thruster: number;
    readonly limit: "forward" | "reverse";
    readonly gain: number;
  }[];
}

/** A gain below this is rounding: no row of a wrench matrix is so small a part of another. */
const SMALLEST_GAIN = 1e-9;

/**
 * Greatest force or moment along a direction with others held, N or N·m, and thrusts that make it.
 *
 *   max a·w  with  w = Σ f_i w_i,  h_k·w = b_k,  −R_i ≤ f_i ≤ F_i,  Σ I_i(f_i) ≤ I_max
 *
 * I_i is convex, so it goes in as pieces whose slopes grow; see `currentPieces`.
 *
 * Source   linear programming over an attainable set, e.g. Johansen & Fossen, Automatica 49 (2013) 1087, from memory.
 * Assumes  zero thrust is allowed.
 */
export function greatestAlong(model: LayoutModel, ask: Ask): Greatest {
  const unknowns = thrustUnknowns(model, ask.limits, ask.current === null ? "none" : "current");
  const { optimum, closed } = solved(model, unknowns, {
    maximise: weighed(unknowns, ask.along),
    equal: heldRows(unknowns, ask.hold),
    ...(ask.current === null ? {} : { atMost: [{ row: unknowns.cost, to: Math.max(0, ask.current) }] }),
  });
  return {
    value: optimum.greatest + 0,
    forces: thrustsOf(unknowns, optimum.solution, model.limits.length),
    governedBy: governing(unknowns, optimum, closed),
  };
}

/** Thrusts that hold what is asked with the least current, or the least T^1.5 where currents are not all known. */
export function cheapestThrusts(
  model: LayoutModel,
  ask: Omit<Ask, "along" | "current">,
  cost: Exclude<ThrustCost, "none">,
): { readonly forces: readonly number[]; readonly found: boolean } {
  const unknowns = thrustUnknowns(model, ask.limits, cost);
  const { optimum } = solved(model, unknowns, {
    maximise: unknowns.cost.map((one) => -one),
    equal: heldRows(unknowns, ask.hold),
  });
  return { forces: thrustsOf(unknowns, optimum.solution, model.limits.length), found: optimum.outcome === "optimal" };
}

/** Sum of the rows of the unknowns, each times the weight of its axis. */
function weighed({ rows, list }: ThrustUnknowns, weights: readonly number[]): readonly number[] {
  const used = weights.flatMap((weight, k) => (weight === 0 ? [] : [{ weight, row: rows[k]! }]));
  if (used.length === 1 && used[0]!.weight === 1) return used[0]!.row;
  return list.map((_, j) => used.reduce((sum, { weight, row }) => sum + weight * row[j]!, 0));
}

const heldRows = (unknowns: ThrustUnknowns, hold: Ask["hold"]) =>
  hold.map(({ wrench, at }) => ({ row: weighed(unknowns, wrench), to: at }));

type Rows = Pick<LinearProgramme, "maximise" | "equal" | "atMost">;
type Closed = readonly { readonly thruster: number; readonly thrust: 1 | -1 }[];

interface Solved {
  readonly optimum: LinearOptimum;
  readonly closed: Closed;
}

/**
 * The programme, in which no thruster pushes both ways at once. Where that matters the best programme is searched by
 * closing one side or the other of a thruster that does (branch and bound).
 */
function solved(model: LayoutModel, unknowns: ThrustUnknowns, rows: Rows): Solved {
  const sided = twoSided(model);
  const open: Closed[] = [[]];
  let [best, fallback]: [Solved | null, Solved | null] = [null, null];
  while (open.length > 0) {
    const closed = open.pop()!;
    const optimum = linearProgramme({
      ...rows,
      low: unknowns.low,
      high:
        closed.length === 0 ? unknowns.high : unknowns.list.map((one) => (isClosed(one, closed) ? one.low : one.high)),
    });
    counted(model.tally, optimum);
    fallback ??= { optimum, closed };
    if (optimum.outcome !== "optimal" || (best && optimum.greatest <= best.optimum.greatest)) continue;
    const both = bothWays(unknowns, optimum.solution, sided);
    if (both === null) best = { optimum, closed };
    else open.push([...closed, { thruster: both, thrust: -1 }], [...closed, { thruster: both, thrust: 1 }]);
  }
  return best ?? fallback!;
}

const isClosed = ({ thruster, thrust }: ThrustUnknown, closed: Closed) =>
  closed.some((one) => one.thruster === thruster && one.thrust === thrust);

/** A thruster that pushes ahead and astern at once; null if none does. */
function bothWays({ list, high }: ThrustUnknowns, values: readonly number[], sided: readonly number[]) {
  const part = (thruster: number, way: 1 | -1) =>
    list.reduce((sum, one, j) => (one.thruster === thruster && one.thrust === way ? sum + values[j]! : sum), 0);
  const limit = Math.max(...high);
  return sided.find((i) => Math.min(part(i, 1), part(i, -1)) > 1e-9 * limit) ?? null;
}

function counted(tally: Tally, { outcome, steps }: LinearOptimum): void {
  tally.programmes += 1;
  tally.pivots += steps;
  tally.converged &&= outcome !== "stopped";
}

function governing(
  unknowns: ThrustUnknowns,
  { boundGain, solution }: LinearOptimum,
  closed: Closed,
): Greatest["governedBy"] {
  return unknowns.list.flatMap((one, j) => {
    if (!one.atLimit || isClosed(one, closed) || one.low === one.high) return [];
    const atHigh = solution[j] === one.high;
    // A whole thrust stands at its lower bound where it is full astern; the least of a part of it is no limit.
    if (!atHigh && one.low === 0) return [];
    const gain = atHigh ? boundGain[j]! : -boundGain[j]!;
    const limit = (one.thrust === 1) === atHigh ? ("forward" as const) : ("reverse" as const);
    return gain > SMALLEST_GAIN ? [{ thruster: one.thruster, limit, gain }] : [];
  });
}

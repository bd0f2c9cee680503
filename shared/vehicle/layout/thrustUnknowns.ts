import { currentPieces } from "./currentLaw.ts";
import type { LayoutModel, Limits } from "./layoutModel.ts";

/** What the parts of a thrust cost: nothing, their current, or T^1.5, the ideal power of alike propellers but for a factor. */
export type ThrustCost = "none" | "current" | "effort";

/** One unknown of the linear programme: a thrust, or a part of it. */
export interface ThrustUnknown {
  readonly thruster: number;
  /** Thrust for one unit of the unknown, N: 1, or −1 for a part astern. */
  readonly thrust: 1 | -1;
  /** X, Y, Z, K, M, N for one unit of it. */
  readonly wrench: readonly number[];
  readonly low: number;
  readonly high: number;
  /** Cost of one unit. */
  readonly cost: number;
  /** Whether its bounds are limits of the thruster, or only the end of a piece. */
  readonly atLimit: boolean;
}

const EFFORT = [{ thrust: 1, current: 1 }];

/** The unknowns of a layout side by side, with what they put on each axis. */
export interface ThrustUnknowns {
  readonly list: readonly ThrustUnknown[];
  /** X, Y, Z, K, M, N: one row an axis, one number an unknown. */
  readonly rows: readonly (readonly number[])[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly cost: readonly number[];
}

/**
 * The unknowns of a layout: one a thruster where nothing tells ahead from astern, two where the torque of the propeller
 * differs, and one for each straight piece of the cost where current counts. Kept for each set of limits of the model.
 */
export function thrustUnknowns(model: LayoutModel, limits: Limits, cost: ThrustCost): ThrustUnknowns {
  const kept = model.unknowns.get(limits) ?? new Map<ThrustCost, ThrustUnknowns>();
  model.unknowns.set(limits, kept);
  const known = kept.get(cost);
  if (known) return known;
  const list = limits.flatMap((_, thruster) => unknownsOf(model, limits, thruster, cost));
  const made = {
    list,
    rows: [0, 1, 2, 3, 4, 5].map((row) => list.map(({ wrench }) => wrench[row]!)),
    low: list.map(({ low }) => low),
    high: list.map(({ high }) => high),
    cost: list.map((one) => one.cost),
  };
  kept.set(cost, made);
  return made;
}

function unknownsOf(model: LayoutModel, limits: Limits, thruster: number, cost: ThrustCost): ThrustUnknown[] {
  const { forward, reverse } = limits[thruster]!;
  const ahead = model.ahead.map((row) => row[thruster]!);
  const astern = model.astern.map((row) => row[thruster]!);
  if (cost === "none" && ahead.every((part, k) => part === astern[k]))
    return [{ thruster, thrust: 1, wrench: ahead, low: -reverse, high: forward, cost: 0, atLimit: true }];
  const side = (way: "forward" | "reverse", limit: number): ThrustUnknown[] => {
    const law = cost === "current" ? model.request.thrusters[thruster]!.current?.[way] : EFFORT;
    const pieces = cost === "none" || law === undefined ? [{ width: limit, slope: 0 }] : currentPieces(law, limit);
    const wrench = way === "forward" ? ahead : astern.map((part) => -part);
    return pieces.map(({ width, slope }, k) => ({
      thruster,
      thrust: way === "forward" ? 1 : -1,
      wrench,
      low: 0,
      high: width,
      cost: slope,
      atLimit: k === pieces.length - 1,
    }));
  };
  return [...side("forward", forward), ...side("reverse", reverse)];
}

/** Thrust of each thruster from the values of the unknowns, N. */
export function thrustsOf({ list }: ThrustUnknowns, values: readonly number[], thrusters: number): number[] {
  const thrusts = new Array<number>(thrusters).fill(0);
  list.forEach(({ thruster, thrust }, j) => {
    thrusts[thruster]! += thrust * values[j]!;
  });
  return thrusts;
}

/** Thrusters whose sides act differently, so that pushing both ways at once would pretend a torque that is not there. */
export function twoSided(model: LayoutModel): number[] {
  return model.request.thrusters.flatMap((_, i) =>
    model.ahead.every((row, k) => row[i] === model.astern[k]![i]) ? [] : [i],
  );
}

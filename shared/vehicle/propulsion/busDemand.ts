import type { Axis } from "../../model/vehicle/layoutRequest.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import type { Vector } from "../layout/wrenchMatrix.ts";
import { type Flow, flowAt, type PropulsionModel } from "./propulsionModel.ts";
import { greatestShare, type Share } from "./thrustShares.ts";
import type { BusSupply } from "./vehicleNumbers.ts";
import { powerForThrust, setVoltage } from "./wayModel.ts";

/** Forces (N) and moments (N·m) on the hull; an axis that is left out is zero. */
export type HullWrench = Partial<Record<Axis, number>>;

export interface BusAsk {
  /** What is to grow; moments and forces in this proportion. */
  readonly direction: HullWrench;
  /** Times the direction that are wanted; as many as can be if absent. */
  readonly most?: number;
  /** What is held besides, such as a net weight; it comes first. Zero if absent. */
  readonly aside?: HullWrench;
  /** Velocity through the water, m/s; at rest if absent. */
  readonly velocity?: Vector;
  /** Supply instead of the model's: at another charge. */
  readonly supply?: BusSupply;
  /** Hotel load instead of the model's, W. */
  readonly hotelPower?: number;
  /** A thruster that makes none. */
  readonly lost?: number;
}

/** What bounds a demand: the thrusters themselves, or a limit of the bus. */
export type BusBound =
  | "asked"
  | "thrusters"
  | "supplyCurrent"
  | "fuseCurrent"
  | "tetherCurrent"
  | "supplyVoltage"
  | "greatestPower";

export interface BusSolution {
  /** held: all of it; scaled: less than was asked or than the thrusters could; notHeld: not even what is held besides. */
  readonly outcome: "held" | "scaled" | "notHeld" | "collapsed";
  /** Times the direction on the hull. */ readonly times: number;
  /** N, in the order of the thrusters. */ readonly thrusts: readonly number[];
  /** Into each controller, W. */ readonly powers: readonly number[];
  /** U, V. */ readonly busVoltage: number;
  /** I, A. */ readonly supplyCurrent: number;
  /** From the bus, hotel included, W. */ readonly power: number;
  readonly hotelPower: number;
  readonly supply: BusSupply;
  readonly bound: BusBound;
  /** What the supply lets through of what the thrusters could do at that voltage. */ readonly share: number;
  /** Growth of the times for 1 N more of each thruster; empty where the bus bounds it. */ readonly gains: readonly number[];
  readonly flow: Flow;
  readonly converged: boolean;
}

/** Width of the last bracket of a bus voltage or a share, relative. */
const TOLERANCE = 1e-12;

/**
 * All thrusters and the hotel load on one bus, for a wrench on the hull that is asked for or is to be as great as can be.
 *
 *   U = U_oc − R_s [P_h + Σ P_i(T_i)]/U,   T_i ≤ T_max,i(U, V_A),   Σ T_i w_i (1 − t) = a + s d,   s → max or as asked
 *
 * One root in U, bracketed: the greatest thrusts and their current rise with U; for a demand that is held the current falls,
 * and the upper root is the one that a load which is switched on arrives at. Where pack, fuse, tether or least voltage is
 * passed, or the supply would be past its greatest power, s is scaled down until it is not.
 *
 * Source   Kirchhoff's voltage law; thrusters as `solveFull`; shares as `greatestShare`.
 * Assumes  the thrusters do not disturb each other; one thrust deduction for all.
 */
export function busDemand(model: PropulsionModel, ask: BusAsk): BusSolution {
  const problem = problemOf(model, ask);
  const { supply, limit } = problem;
  const { openCircuitVoltage: U_oc, resistance: R_s } = supply;
  const leastVoltage = U_oc - (Number.isFinite(limit.current) ? R_s * limit.current : 0);
  if (R_s === 0) {
    const open = atVoltage(problem, U_oc);
    return open.power <= U_oc * limit.current * (1 + TOLERANCE)
      ? solution(problem, open, U_oc, true)
      : capped(problem, U_oc);
  }
  const excess = (U: number) => U_oc - U - (R_s * atVoltage(problem, U).power) / U;
  if (!(leastVoltage > 0 && excess(leastVoltage) > 0)) return capped(problem, Math.max(leastVoltage, 0));
  const { root, converged } = bracketedRoot(excess, leastVoltage, U_oc, { relativeTolerance: TOLERANCE });
  return solution(problem, atVoltage(problem, root), root, converged);
}

interface BusLimit {
  /** A. */ readonly current: number;
  readonly bound: BusBound;
}

interface BusProblem {
  readonly model: PropulsionModel;
  readonly flow: Flow;
  readonly direction: readonly number[];
  readonly aside: readonly number[];
  readonly most: number;
  readonly supply: BusSupply;
  readonly hotelPower: number;
  readonly limit: BusLimit;
  readonly lost: number;
}

function problemOf(model: PropulsionModel, ask: BusAsk): BusProblem {
  const { numbers, geometry } = model;
  const supply = ask.supply ?? numbers.supply;
  // What the hull gets of the thrust; what the thrusters must make for the hull is more.
  const more = 1 / (1 - numbers.thrustDeduction);
  const onHeld = (wrench: HullWrench = {}) => geometry.held.map((axis) => more * (wrench[axis] ?? 0));
  return {
    ...{ model, supply, flow: flowAt(model, ask.velocity ?? [0, 0, 0]) },
    ...{ direction: onHeld(ask.direction), aside: onHeld(ask.aside), most: ask.most ?? Number.POSITIVE_INFINITY },
    ...{ hotelPower: ask.hotelPower ?? numbers.hotelPower, limit: limitOf(model, supply), lost: ask.lost ?? -1 },
  };
}

/** The least of the currents that the bus is limited to; past half its open-circuit voltage a supply gives less power. */
function limitOf({ supplyLimits }: PropulsionModel, { openCircuitVoltage: U, resistance: R }: BusSupply): BusLimit {
  const { supplyCurrent, fuseCurrent, tetherCurrent, supplyVoltage } = supplyLimits;
  const byVoltage = (least: number) => (U < least ? 0 : (U - least) / R);
  const all: BusLimit[] = [
    { bound: "greatestPower", current: R === 0 ? Number.POSITIVE_INFINITY : U / (2 * R) },
    ...(supplyCurrent === undefined ? [] : [{ bound: "supplyCurrent" as const, current: supplyCurrent }]),
    ...(fuseCurrent === undefined ? [] : [{ bound: "fuseCurrent" as const, current: fuseCurrent }]),
    ...(tetherCurrent === undefined ? [] : [{ bound: "tetherCurrent" as const, current: tetherCurrent }]),
    ...(supplyVoltage === undefined || (R === 0 && U >= supplyVoltage)
      ? []
      : [{ bound: "supplyVoltage" as const, current: byVoltage(supplyVoltage) }]),
  ];
  return all.reduce((least, one) => (one.current < least.current ? one : least));
}

interface AtVoltage {
  readonly share: Share;
  readonly powers: readonly number[];
  /** Thrusters and hotel load, W. */ readonly power: number;
}

/** As much of the demand as the thrusters make at a bus voltage, and what they draw. */
function atVoltage(problem: BusProblem, voltage: number, most = problem.most): AtVoltage {
  const { model, flow, direction, aside, hotelPower, lost } = problem;
  for (const way of flow.ways) setVoltage(way, voltage);
  const limits = flow.thrusters.map(({ ahead, astern }, i) =>
    i === lost ? { forward: 0, reverse: 0 } : { forward: ahead.greatest, reverse: astern?.greatest ?? 0 },
  );
  const share = greatestShare(model.geometry, { direction, aside, limits, most });
  const powers = share.forces.map((force, i) => powerOf(flow, i, force));
  return { share, powers, power: powers.reduce((sum, one) => sum + one, hotelPower) };
}

function powerOf({ thrusters }: Flow, i: number, force: number): number {
  const { ahead, astern } = thrusters[i]!;
  return force < 0 && astern ? powerForThrust(astern, -force) : powerForThrust(ahead, force);
}

/** The demand scaled down until the bus is at its limit, at the voltage that it has there. */
function capped(problem: BusProblem, voltage: number): BusSolution {
  const { limit } = problem;
  const allowed = voltage * limit.current;
  const nothing = voltage > 0 ? atVoltage(problem, voltage, 0) : null;
  if (nothing === null || nothing.power > allowed || nothing.share.times < 0) return failed(problem, nothing, voltage);
  const whole = atVoltage(problem, voltage);
  const greatest = whole.share.times;
  if (!(greatest > 0)) return solution(problem, whole, voltage, true);
  const excess = (part: number) => atVoltage(problem, voltage, part * greatest).power - allowed;
  if (excess(1) <= 0) return solution(problem, whole, voltage, true);
  const { root, converged } = bracketedRoot(excess, 0, 1, { relativeTolerance: TOLERANCE });
  const found = atVoltage(problem, voltage, root * greatest);
  return {
    ...solution(problem, found, voltage, converged),
    outcome: "scaled",
    bound: limit.bound,
    share: root,
    gains: [],
  };
}

function failed(problem: BusProblem, nothing: AtVoltage | null, voltage: number): BusSolution {
  const none = problem.flow.thrusters.map(() => 0);
  const empty = { share: { times: 0, forces: none, gains: [] }, powers: none, power: 0 };
  const outcome = nothing !== null && nothing.power <= voltage * problem.limit.current ? "notHeld" : "collapsed";
  const bound = outcome === "notHeld" ? "thrusters" : problem.limit.bound;
  return { ...solution(problem, empty, Math.max(voltage, 0), true), outcome, bound, share: 0, supplyCurrent: 0 };
}

function solution(
  problem: BusProblem,
  { share, powers, power }: AtVoltage,
  voltage: number,
  converged: boolean,
): BusSolution {
  const { supply, hotelPower, flow, most } = problem;
  const outcome =
    share.times < 0 ? "notHeld" : share.times < most && most !== Number.POSITIVE_INFINITY ? "scaled" : "held";
  return {
    ...{ outcome, times: Math.max(0, share.times), thrusts: share.forces, powers, power, hotelPower, supply, flow },
    ...{ busVoltage: voltage, supplyCurrent: power / voltage, bound: share.times < most ? "thrusters" : "asked" },
    ...{ share: 1, gains: share.gains, converged },
  };
}

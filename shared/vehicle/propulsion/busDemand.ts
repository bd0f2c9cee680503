import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { voltageUnderPower } from "../../supply/busVoltage.ts";
import {
  type AtVoltage,
  atVoltage,
  type BusAsk,
  type BusBound,
  type BusProblem,
  busProblem,
  drawn,
  limitsAt,
  undriven,
} from "./busProblem.ts";
import type { Flow, PropulsionModel } from "./propulsionModel.ts";
import type { BusSupply } from "./vehicleNumbers.ts";

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
 * One root in U, bracketed. Where s is as great as can be, powers rise with U: one root. For a demand that is held the
 * current falls with U, and the upper root is the one that a load which is switched on arrives at. What is held besides,
 * a, is held from some voltage U_a on: the root is sought above it; where s would pull the bus below U_a it is scaled
 * down, and where a alone does it is not held. Where pack, fuse, tether or least voltage is passed, or the supply would be
 * past its greatest power, s is scaled down until it is not.
 *
 * Source   Kirchhoff's voltage law; thrusters as `solveFull`; shares as `shareWithin`.
 * Assumes  the thrusters do not disturb each other; one thrust deduction for all.
 */
export function busDemand(model: PropulsionModel, ask: BusAsk): BusSolution {
  const problem = busProblem(model, ask);
  const { openCircuitVoltage: U_oc, resistance: R_s } = problem.supply;
  if (R_s === 0) {
    const open = atVoltage(problem, U_oc);
    return open.power <= U_oc * problem.limit.current * (1 + TOLERANCE)
      ? solution(problem, open, U_oc, true)
      : capped(problem, U_oc);
  }
  const bracket = heldFromTop(problem) ?? wholeBracket(problem);
  if ("none" in bracket) return bracket.none;
  const { root, converged } = bracketedRoot((U) => bracket.at(U).excess, bracket.low, bracket.high, {
    relativeTolerance: TOLERANCE,
  });
  return solution(problem, bracket.at(root).drawn, root, converged);
}

/** A voltage that is tried, and by how much the supply has more at what is drawn then, V. */
interface Tried {
  readonly drawn: AtVoltage;
  readonly excess: number;
}

interface Bracket {
  readonly low: number;
  readonly high: number;
  readonly at: (voltage: number) => Tried;
}

/** Every voltage is worked out once. */
function triedVoltages(problem: BusProblem): (voltage: number) => Tried {
  const { openCircuitVoltage: U_oc, resistance: R_s } = problem.supply;
  const known = new Map<number, Tried>();
  return (U) => {
    const before = known.get(U);
    if (before) return before;
    const found = atVoltage(problem, U);
    const tried = { drawn: found, excess: U_oc - U - (R_s * found.power) / U };
    known.set(U, tried);
    return tried;
  };
}

/** Part of the sag by which the voltage of a demand that is held may differ from that by its power without load. */
const SAG_PART = 0.05;

/**
 * Where a demand is all held: voltages just about that which its power without load gives, so that the search can not end
 * at the lower root. Null where that is not so, or a limit of the bus is near.
 */
function heldFromTop(problem: BusProblem): Bracket | null {
  const { most, supply, limit } = problem;
  const { openCircuitVoltage: high, resistance } = supply;
  if (most === Number.POSITIVE_INFINITY) return null;
  const at = triedVoltages(problem);
  const voltage = voltageUnderPower(high, resistance, at(high).drawn.power);
  if (voltage === null) return null;
  const low = voltage - SAG_PART * (high - voltage);
  const isWithin = (high - low) / resistance <= limit.current;
  const { drawn: found, excess } = at(low);
  return isWithin && found.share.times >= most && excess > 0 ? { low, high, at } : null;
}

/** From the voltage at the limit of the bus, or at which what is held besides can just be held, up to that without load. */
function wholeBracket(problem: BusProblem): Bracket | { readonly none: BusSolution } {
  const { openCircuitVoltage: high, resistance } = problem.supply;
  const least = high - (Number.isFinite(problem.limit.current) ? resistance * problem.limit.current : 0);
  if (!(least > 0)) return { none: capped(problem, 0) };
  const at = triedVoltages(problem);
  if (at(least).drawn.share.times >= 0) {
    return at(least).excess > 0 ? { low: least, high, at } : { none: capped(problem, least) };
  }
  if (!(at(high).drawn.share.times >= 0)) return { none: unheld(problem) };
  const low = holdingVoltage(problem, least, high);
  return at(low).excess > 0 ? { low, high, at } : { none: cappedByHolding(problem, low) };
}

/** As much as leaves the voltage (V) that what is held besides needs; where not even that much is left, it is not held. */
function cappedByHolding(problem: BusProblem, voltage: number): BusSolution {
  const { openCircuitVoltage, resistance } = problem.supply;
  const current = (openCircuitVoltage - voltage) / resistance;
  const solved = capped({ ...problem, limit: { current, bound: "holding" } }, voltage);
  return solved.outcome === "scaled" ? solved : unheld(problem);
}

/** Least voltage between two at which what is held besides the direction is held. */
function holdingVoltage(problem: BusProblem, from: number, to: number): number {
  const spare = (U: number) =>
    problem.asideOf({ limits: limitsAt(problem, U), most: Number.POSITIVE_INFINITY }).times - 1;
  const { root } = bracketedRoot(spare, from, to, { relativeTolerance: TOLERANCE });
  let [held, hair] = [root, TOLERANCE];
  while (held < to && !(atVoltage(problem, held).share.times >= 0)) {
    held = Math.min(to, root * (1 + hair));
    hair *= 4;
  }
  return held;
}

/** Power of a thruster goes with about this power of its thrust: the root of it makes a search for a share short. */
const POWER_OF_THRUST = 1.5;

/** The demand scaled down until the bus is at its limit, at the voltage that it has there. */
function capped(problem: BusProblem, voltage: number): BusSolution {
  const { limit, most } = problem;
  const allowed = voltage * limit.current;
  const limits = voltage > 0 ? limitsAt(problem, voltage) : null;
  const nothing = limits && drawn(problem, limits, 0);
  if (limits === null || nothing === null || nothing.power > allowed || nothing.share.times < 0)
    return failed(problem, nothing, voltage);
  const whole = drawn(problem, limits, most);
  const greatest = whole.share.times;
  if (!(greatest > 0) || whole.power <= allowed) return solution(problem, whole, voltage, true);
  const spare = allowed - nothing.power;
  const straight = (over: number) => Math.sign(over) * Math.abs(over) ** (1 / POWER_OF_THRUST);
  const tried = new Map([
    [0, nothing],
    [1, whole],
  ]);
  const at = (part: number) => {
    const found = tried.get(part) ?? drawn(problem, limits, part * greatest);
    tried.set(part, found);
    return found;
  };
  const excess = (part: number) => straight(at(part).power - nothing.power) - straight(spare);
  const { root, converged } = bracketedRoot(excess, 0, 1, { relativeTolerance: TOLERANCE });
  const found = at(root);
  return {
    ...solution(problem, found, voltage, converged),
    outcome: "scaled",
    bound: limit.bound,
    share: root,
    gains: [],
  };
}

/** What is held besides can not be held: the thrusters stand, the rest of the vehicle runs on. */
function unheld(problem: BusProblem): BusSolution {
  const { openCircuitVoltage, resistance } = problem.supply;
  const still = undriven(problem);
  const voltage = voltageUnderPower(openCircuitVoltage, resistance, still.power);
  if (voltage === null || still.power > voltage * problem.limit.current) return failed(problem, null, voltage ?? 0);
  return solution(problem, still, voltage, true);
}

function failed(problem: BusProblem, nothing: AtVoltage | null, voltage: number): BusSolution {
  const none = problem.flow.thrusters.map(() => 0);
  const empty = { share: { times: 0, forces: none, gains: [] }, powers: none, power: 0 };
  const outcome = nothing !== null && nothing.power <= voltage * problem.limit.current ? "notHeld" : "collapsed";
  const bound = outcome === "notHeld" ? "thrusters" : problem.limit.bound;
  return { ...solution(problem, empty, Math.max(voltage, 0), true), outcome, bound, share: 0, supplyCurrent: 0 };
}

function solution(
  { supply, hotelPower, flow, most }: BusProblem,
  { share, powers, power }: AtVoltage,
  voltage: number,
  converged: boolean,
): BusSolution {
  const isScaled = share.times < most && most !== Number.POSITIVE_INFINITY;
  return {
    outcome: share.times < 0 ? "notHeld" : isScaled ? "scaled" : "held",
    times: Math.max(0, share.times),
    thrusts: share.forces,
    powers,
    busVoltage: voltage,
    supplyCurrent: power / voltage,
    power,
    hotelPower,
    supply,
    bound: share.times < most ? "thrusters" : "asked",
    share: 1,
    gains: share.gains,
    flow,
    converged,
  };
}

import type { SpeedAfter } from "../../model/vehicle/motionAnswer.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, STEP, toldOf } from "../propulsion/firstOrder.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { LinearWay } from "./linearMotion.ts";
import { simpson } from "./simpson.ts";
import { dragAlong, forcesAt, type WayProblem } from "./wayForces.ts";

/** Shares of the steady speed that are told. */
const SHARES = [0.5, 0.9, 0.95] as const;
const PIECES = 8;

export interface StartQuestion {
  readonly problem: WayProblem;
  readonly doubts: VehicleDoubts;
  readonly moving: LinearWay;
  /** Force at rest on the hull, N. */ readonly atRest: Linear;
  /** Why no interval can be stated; null: it can. */ readonly why: string | null;
}

/**
 * Time and way from rest at full thrust to shares of the steady speed V_s.
 *
 *   t = ∫ M dV/F(V),  x = ∫ M V dV/F(V),  V = V_s tanh u
 *   dt/dp = ∫ (M'/F − M F'/F²) dV + M s V_s'/F(s V_s),  the same with V for x;   ' = ∂/∂p, s the share
 *
 * With that substitution the first integrand is constant for a constant thrust and quadratic drag. F' is known at rest and
 * at V_s, from the solves for force and speed; between them that of a drag is exact, that of a tether or a current is
 * taken to grow with V², and any other to go straight.
 *
 * Source   Newton's second law; Simpson's rule; derivative of an integral by Leibniz's rule.
 * Assumes  added mass that does not change; thrusters that are at full thrust at once.
 */
export function upToSpeed(question: StartQuestion): SpeedAfter[] {
  const { problem, doubts, moving, why } = question;
  const steady = moving.speed.value;
  const mass = massOf(problem, problem.model.numbers);
  if (!(steady > 0) || mass === null) return [];
  const netAt = remembered((V) => forcesAt(problem, V).net);
  const changes = doubts.list.map((_, i) => changeBy(question, i, mass));
  const at = (u: number) => steady * Math.tanh(u);
  const slope = (u: number) => steady / Math.cosh(u) ** 2;
  const sums = { time: 0, distance: 0, timeBy: changes.map(() => 0), distanceBy: changes.map(() => 0) };
  let from = 0;
  return SHARES.map((share) => {
    const to = Math.atanh(share);
    const over = (f: (V: number, F: number) => number) =>
      simpson((u) => f(at(u), netAt(at(u))) * slope(u), from, to, PIECES);
    sums.time += over((_, F) => mass / F);
    sums.distance += over((V, F) => (mass * V) / F);
    for (const [i, { ofMass, ofForce }] of changes.entries()) {
      const slowness = (V: number, F: number) => (ofMass - (mass * ofForce(V)) / F) / F;
      sums.timeBy[i]! += over(slowness);
      sums.distanceBy[i]! += over((V, F) => V * slowness(V, F));
    }
    from = to;
    const end = share * steady;
    const ends = moving.speed.by.map((one) => (mass * share * one) / netAt(at(to)));
    const told = (value: number, by: readonly number[], weight: number) =>
      toldOf(doubts, { value, by: by.map((one, i) => one + weight * ends[i]!) }, why);
    return { share, time: told(sums.time, sums.timeBy, 1), distance: told(sums.distance, sums.distanceBy, end) };
  });
}

/** Of the vehicle and the water that moves along, kg; null where that way has no drag. */
function massOf({ way }: WayProblem, { mass, drag }: VehicleNumbers): number | null {
  const own = drag[way];
  return own === null ? null : mass + own.addedMass;
}

/** What one standard uncertainty of an input changes: the mass, kg, and the force at a speed, N. */
function changeBy({ problem, doubts, moving, atRest }: StartQuestion, i: number, mass: number) {
  const { of, shift, standardUncertainty } = doubts.list[i]!;
  const { way, model } = problem;
  const changed = shift(model.numbers, STEP * standardUncertainty);
  const ofMass = of === "mass" ? (massOf(problem, changed)! - mass) / STEP : 0;
  const drag = ({ drag, density }: VehicleNumbers, V: number) => dragAlong(drag[way]!, density, V);
  const power = of === "tether" || of === "current" ? 2 : 1;
  const ends = [atRest.by[i]!, moving.net.by[i]!] as const;
  const between = (V: number) => ends[0] + (ends[1] - ends[0]) * (V / moving.speed.value) ** power;
  const ofDrag = (V: number) => (drag(model.numbers, V) - drag(changed, V)) / STEP;
  return { ofMass, ofForce: of === "drag" ? ofDrag : between };
}

/** The same speeds are asked for by every integral. */
function remembered(of: (V: number) => number): (V: number) => number {
  const known = new Map<number, number>();
  return (V) => {
    const value = known.get(V) ?? of(V);
    known.set(V, value);
    return value;
  };
}

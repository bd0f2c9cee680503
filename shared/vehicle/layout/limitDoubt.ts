import { NORMAL_975, scaled, type Uncertain } from "../../quantity/uncertain.ts";
import { type AxisAsk, askOf } from "./axisAsk.ts";
import { currentAt } from "./currentLaw.ts";
import { type Greatest, greatestAlong } from "./greatestAlong.ts";
import type { LayoutModel, LimitShifts, Limits } from "./layoutModel.ts";

/**
 * The greatest force or moment of an axis one way with its sign and its doubt, from the doubt of the limits.
 *
 * The programme is solved again with all limits of one drive up and down by their standard uncertainty: thrusters of one
 * drive share its error, one drive's ahead and astern go together, and drives are independent. Up and down are kept apart,
 * because the smaller of two limits governs: the interval can be lopsided.
 *
 * Where the current of the bus bounds it, the doubt of the currents counts too: more current at each thrust is as good as
 * a lower bound, dV = −λ dI with λ = ∂V/∂I_max.
 *
 * Source   JCGM 100:2008 (GUM), 5.1.3 note 2 (differences in place of derivatives), 5.2.2 (full correlation); the price of
 *          a bound: Dantzig, Linear Programming and Extensions (1963), ch. 12, from memory.
 * Assumes  doubts small beside the limits; those of limits and of currents independent.
 * Error    exact where one drive governs or drives add up. Where the smaller of several governs, what all of them gain only
 *          together is added to the upper end, by common practice, no source: that end is then on the safe side.
 */
export function uncertainGreatest(model: LayoutModel, ask: AxisAsk, { value, forces }: Greatest): Uncertain {
  const at = (limits: Limits, current = ask.current) => greatestAlong(model, askOf({ ...ask, limits, current })).value;
  const sum = { up: 0, upPlain: 0, down: 0, mean: 0 };
  const shifts = limitShifts(model, ask.limits);
  const tight = shifts.drives.filter((shift) => !isLoose(shift, forces));
  for (const shift of tight) {
    const [up, down] = [at(shift.up) - value, value - at(shift.down)];
    sum.up += up ** 2;
    sum.upPlain += up;
    sum.down += down ** 2;
    sum.mean += ((up + down) / 2) ** 2;
  }
  const byCurrent = ask.current === null ? 0 : currentVariance(model, forces) * slopeOfCurrent(value, ask, at) ** 2;
  sum.up += byCurrent;
  sum.down += byCurrent;
  sum.mean += byCurrent;
  // Where the smaller of two drives governs, raising one alone gains nothing, yet both may be better than stated.
  const together = tight.length > 1 ? Math.max(0, at(shifts.allUp) - value - sum.upPlain) : 0;
  const low = value - NORMAL_975 * Math.sqrt(sum.down);
  const high = value + NORMAL_975 * (Math.sqrt(sum.up) + together);
  const positive = { value, standardUncertainty: Math.sqrt(sum.mean), interval95: [low, high] } as const;
  return scaled(positive, ask.way === "positive" ? 1 : -1);
}

/**
 * Part of the bound of the current by which it is lowered for its price: wide enough to even out the straight pieces of the
 * currents.
 */
const LESS = 0.1;

/** λ = ∂V/∂I_max, N/A; 0 where the bound does not bind. */
function slopeOfCurrent(
  value: number,
  { limits, current }: AxisAsk,
  at: (limits: Limits, current: number | null) => number,
): number {
  return current! > 0 && value > 0 ? (value - at(limits, (1 - LESS) * current!)) / (LESS * current!) : 0;
}

/** Variance of the current of all thrusters at their thrusts, A²: those of one drive share its doubt. */
export function currentVariance({ request: { thrusters } }: LayoutModel, forces: readonly number[]): number {
  const drives = new Map<string, number>();
  thrusters.forEach((one, i) => {
    const force = forces[i]!;
    if (one.currentUncertainty === undefined || one.current === undefined || force === 0) return;
    const side = force < 0 ? "reverse" : "forward";
    const key = one.drive === undefined ? `#${i}` : `drive ${one.drive}`;
    const u = one.currentUncertainty[side] * currentAt(one.current[side], Math.abs(force));
    drives.set(key, (drives.get(key) ?? 0) + u);
  });
  return [...drives.values()].reduce((sum, u) => sum + u * u, 0);
}

/** A drive all of whose thrusters push less than even the lowered limits: it can not govern, whichever way it moves. */
function isLoose({ down, thrusters }: LimitShifts["drives"][number], forces: readonly number[]): boolean {
  return thrusters.every((i) => forces[i]! < down[i]!.forward && forces[i]! > -down[i]!.reverse);
}

/** Kept for each set of limits, so that every axis asks with the same ones. */
function limitShifts(model: LayoutModel, limits: Limits): LimitShifts {
  const known = model.shifts.get(limits);
  if (known) return known;
  const drives = doubtfulDrives(model, limits);
  const made = {
    drives: drives.map((thrusters) => ({
      thrusters,
      up: shifted(model, limits, thrusters, 1),
      down: shifted(model, limits, thrusters, -1),
    })),
    allUp: shifted(model, limits, drives.flat(), 1),
  };
  model.shifts.set(limits, made);
  return made;
}

/** Thrusters that share one doubtful drive; one without a named drive stands alone. */
function doubtfulDrives({ request }: LayoutModel, limits: Limits): number[][] {
  const drives = new Map<string, number[]>();
  request.thrusters.forEach(({ drive, limits: { forward, reverse } }, i) => {
    const works = limits[i]!.forward > 0 || limits[i]!.reverse > 0;
    if (!works || (forward.standardUncertainty === 0 && reverse.standardUncertainty === 0)) return;
    const key = drive === undefined ? `#${i}` : `drive ${drive}`;
    drives.set(key, [...(drives.get(key) ?? []), i]);
  });
  return [...drives.values()];
}

function shifted({ request }: LayoutModel, limits: Limits, thrusters: readonly number[], by: 1 | -1): Limits {
  return limits.map((one, i) => {
    if (!thrusters.includes(i)) return one;
    const { forward, reverse } = request.thrusters[i]!.limits;
    return {
      forward: Math.max(0, one.forward + by * forward.standardUncertainty),
      reverse: Math.max(0, one.reverse + by * reverse.standardUncertainty),
    };
  });
}

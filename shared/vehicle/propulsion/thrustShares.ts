import type { Axis } from "../../model/vehicle/layoutRequest.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { pseudoInverseOf } from "../layout/allocate.ts";
import { AXES, rowOf } from "../layout/axes.ts";
import { cheapestThrusts, greatestAlong } from "../layout/greatestAlong.ts";
import { type LayoutModel, type Limits, layoutModel } from "../layout/layoutModel.ts";
import { motionsOf } from "../layout/motions.ts";
import { solvedSystem } from "../tether/linearSystem.ts";

type Rows = readonly (readonly number[])[];

/** Where the thrusters sit, and what follows from that alone; the same for every speed, voltage and draw. */
export interface ThrustGeometry {
  readonly layout: LayoutModel;
  readonly held: readonly Axis[];
  /** Rows of the wrench matrix of the held axes. */ readonly rows: Rows;
  /** Thrusts of least sum of squares for one unit of each held axis: a row a thruster. */ readonly inverse: Rows;
  /** Prices of the held axes that proved a greatest value before; see `shareWithin`. */
  readonly prices: Price[];
}

/** A price for each held axis, the greatest of size 1, and what one newton of each thruster is worth by them. */
interface Price {
  readonly axes: readonly number[];
  readonly thrusters: readonly number[];
}

/** Geometry of a vehicle. Throws InputProblem `vehicle.layout-zero-direction`. */
export function thrustGeometry({ thrusters }: Pick<Vehicle, "thrusters">): ThrustGeometry {
  const nothing = { value: 0, standardUncertainty: 0 };
  const placed = thrusters.map((one) => ({ ...one, limits: { forward: nothing, reverse: nothing } }));
  const layout = layoutModel({ thrusters: placed, hotelCurrent: 0, countReactionTorque: false });
  const { held } = motionsOf(layout.matrix, layout.request);
  return {
    ...{ layout, held },
    rows: held.map((axis) => layout.matrix[rowOf(axis)]!),
    inverse: pseudoInverseOf(layout.matrix, held),
    prices: [],
  };
}

/** A wrench of the thrusters that grows along a direction from one that is always there; a number for each held axis. */
export interface ShareAsk {
  readonly direction: readonly number[];
  readonly aside: readonly number[];
}

/** How much of a wrench there is within limits. */
export interface Within {
  readonly limits: Limits;
  /** Times the direction that are wanted; Infinity: as many as can be. */ readonly most: number;
}

export interface Share {
  /** Times the direction; −1 where not even what is always there can be held. */ readonly times: number;
  /** N, in the order of the thrusters. */ readonly forces: readonly number[];
  /** Growth of the times for 1 N more of each thruster's limit that way, signed as the thrust; empty below the limits. */
  readonly gains: readonly number[];
}

const ROUNDING = 1e-11;

/**
 * Thrusts for a wrench a + s d with s as great as limits and `most` allow, and spread evenly over the thrusters; a function
 * of these, as one wrench is asked for within many limits.
 *
 *   W f = a + s d,  −R ≤ f ≤ F;   for any prices y of the axes with y·d = 1:  s ≤ Σ max(y·W_i f_i) − y·a
 *
 * The bound is that of duality of linear programmes. Prices that a programme found once serve for other limits: where
 * thrusts are found that reach the bound, they are the greatest, and no programme is solved.
 *
 * Source   linear duality, e.g. Dantzig, Linear Programming and Extensions (1963), ch. 6; thrusts by the pseudo-inverse,
 *          those at a limit held there and the rest shared anew: Bodson, J. Guid. Control Dyn. 25 (2002) 703, from memory.
 */
export function shareWithin(geometry: ThrustGeometry, ask: ShareAsk): (within: Within) => Share {
  const { direction, aside } = ask;
  if (direction.every((one) => one === 0)) return (within) => held(geometry, ask, within);
  const wrenchAt = (times: number) => aside.map((one, k) => one + times * direction[k]!);
  return ({ limits, most }) => {
    const least = leastBound(geometry, ask, limits);
    if (least !== null && least.times < 0) return { times: -1, forces: limits.map(() => 0), gains: [] };
    if (least !== null) {
      const times = Math.min(most, least.times);
      const forces = sharedThrusts(geometry, limits, wrenchAt(times));
      if (forces !== null) return { times, forces, gains: times < most ? gainsBy(least.price, direction) : [] };
    }
    return byProgramme(geometry, ask, { limits, most }, wrenchAt);
  };
}

function held(geometry: ThrustGeometry, { aside }: ShareAsk, { limits, most }: Within): Share {
  const forces = sharedThrusts(geometry, limits, aside) ?? cheapest(geometry, limits, aside);
  if (forces === null) return { times: -1, forces: limits.map(() => 0), gains: [] };
  // Nothing is asked for besides: as often as is wanted.
  return { times: Number.isFinite(most) ? most : 0, forces, gains: [] };
}

/** Part of the greatest below which a price is rounding. */
const SLIGHT = 1e-9;

/** The least of the bounds that are known; null where none is. */
function leastBound(
  { prices }: ThrustGeometry,
  { direction, aside }: ShareAsk,
  limits: Limits,
): { readonly times: number; readonly price: Price } | null {
  let least = Number.POSITIVE_INFINITY;
  let at: Price | null = null;
  const slight = SLIGHT * Math.max(...direction.map(Math.abs));
  for (const price of prices) {
    const along = dot(price.axes, direction);
    if (!(along > slight)) continue;
    let worth = -dot(price.axes, aside);
    for (let i = 0; i < limits.length; i++) {
      const one = price.thrusters[i]!;
      worth += one > 0 ? one * limits[i]!.forward : -one * limits[i]!.reverse;
    }
    if (worth / along < least) [least, at] = [worth / along, price];
  }
  return at && { times: least, price: at };
}

const gainsBy = ({ axes, thrusters }: Price, direction: readonly number[]): number[] => {
  const along = dot(axes, direction);
  return thrusters.map((one) => one / along);
};

function byProgramme(
  geometry: ThrustGeometry,
  { direction, aside }: ShareAsk,
  { limits, most }: Within,
  wrenchAt: (times: number) => readonly number[],
): Share {
  const none = { times: -1, forces: limits.map(() => 0), gains: [] };
  const { layout, held: axes, inverse } = geometry;
  const lead = direction.reduce((best, one, k) => (Math.abs(one) > Math.abs(direction[best]!) ? k : best), 0);
  const unit = (k: number, by = 1) => AXES.map((axis) => (axis === axes[k] ? by : 0));
  const hold = axes.flatMap((_, k) => {
    if (k === lead) return [];
    const ratio = direction[k]! / direction[lead]!;
    const wrench = unit(k);
    wrench[rowOf(axes[lead]!)] = -ratio;
    return [{ wrench, at: aside[k]! - ratio * aside[lead]! }];
  });
  const sign = Math.sign(direction[lead]!);
  const found = greatestAlong(layout, { along: unit(lead, sign), hold, limits, current: null });
  const made = axes.map((axis) => dot(layout.matrix[rowOf(axis)]!, found.forces));
  const greatest = (sign * found.value - aside[lead]!) / direction[lead]!;
  const size = Math.max(...limits.map((one) => Math.max(one.forward, one.reverse)), 1e-12);
  const missed = wrenchAt(greatest).some((one, k) => Math.abs(one - made[k]!) > 1e-6 * size);
  if (missed || greatest < -1e-9 * size) return none;
  const gainOf = limits.map(() => 0);
  for (const { thruster, limit, gain } of found.governedBy) gainOf[thruster] = limit === "forward" ? gain : -gain;
  const price = axes.map((_, k) => gainOf.reduce((sum, gain, i) => sum + gain * inverse[i]![k]!, 0));
  remember(geometry, price);
  const times = Math.min(most, Math.max(0, greatest));
  const wrench = wrenchAt(times * (1 - ROUNDING));
  const forces = sharedThrusts(geometry, limits, wrench) ?? cheapest(geometry, limits, wrench) ?? found.forces;
  const gains = gainOf.map((gain) => gain / Math.abs(direction[lead]!));
  return { times, forces, gains: times < most ? gains : [] };
}

/** The latest proof is tried first; few are needed. */
function remember({ prices, rows, inverse }: ThrustGeometry, found: readonly number[]): void {
  const size = Math.max(...found.map(Math.abs));
  if (size === 0) return;
  const axes = found.map((one) => (Math.abs(one) <= SLIGHT * size ? 0 : one / size));
  const worth = inverse.map((_, i) => rows.reduce((sum, row, k) => sum + axes[k]! * row[i]!, 0));
  const greatest = Math.max(...worth.map(Math.abs));
  prices.unshift({ axes, thrusters: worth.map((one) => (Math.abs(one) <= SLIGHT * greatest ? 0 : one)) });
  if (prices.length > MOST_PRICES) prices.pop();
}

const MOST_PRICES = 24;

/** Thrusts that make a wrench, spread evenly; null where this rule finds none within the limits. */
function sharedThrusts({ rows, inverse }: ThrustGeometry, limits: Limits, wrench: readonly number[]): number[] | null {
  let forces = inverse.map((row) => dot(row, wrench));
  const closed = new Map<number, number>();
  for (let round = 0; round <= limits.length; round++) {
    const over = limits.flatMap((_, i) => (closed.has(i) ? [] : excessOf(limits, forces, i)));
    if (over.length === 0) return forces;
    for (const { thruster, at } of over) closed.set(thruster, at);
    const free = forces.flatMap((_, i) => (closed.has(i) ? [] : [i]));
    const left = wrench.map((one, k) => {
      let rest = one;
      for (const [i, at] of closed) rest -= rows[k]![i]! * at;
      return rest;
    });
    const shares = leastSquares(rows, free, left);
    if (shares === null) return null;
    forces = forces.map((_, i) => closed.get(i) ?? shares[free.indexOf(i)]!);
  }
  return null;
}

/** Rounding beyond a limit counts as at the limit. */
function excessOf(limits: Limits, forces: number[], i: number): { thruster: number; at: number }[] {
  const { forward, reverse } = limits[i]!;
  const f = forces[i]!;
  const hair = 1e-9 * Math.max(forward, reverse);
  if (f > forward) {
    if (f > forward + hair) return [{ thruster: i, at: forward }];
    forces[i] = forward;
  } else if (f < -reverse) {
    if (f < -reverse - hair) return [{ thruster: i, at: -reverse }];
    forces[i] = -reverse;
  }
  return [];
}

/** Part of the trace that is added to a system that may be singular, and how often what that misses is added back. */
const DAMPING = { part: 1e-9, rounds: 3 } as const;

/** Thrusts of least squares of the free thrusters for what is left: Wᵀ (W Wᵀ)⁻¹ r; null where they can not make it. */
function leastSquares(rows: Rows, free: readonly number[], left: readonly number[]): number[] | null {
  const size = Math.max(...left.map(Math.abs));
  if (free.length === 0) return size <= 1e-9 ? [] : null;
  const normal = rows.map((a) => rows.map((b) => free.reduce((sum, i) => sum + a[i]! * b[i]!, 0)));
  const trace = normal.reduce((sum, row, k) => sum + row[k]!, 0);
  normal.forEach((row, k) => {
    row[k]! += DAMPING.part * trace;
  });
  const forces = free.map(() => 0);
  let rest = [...left];
  for (let round = 0; round < DAMPING.rounds; round++) {
    const y = solvedSystem(normal, rest);
    if (y === null) return null;
    free.forEach((i, j) => {
      rows.forEach((row, k) => {
        forces[j]! += row[i]! * y[k]!;
      });
    });
    rest = left.map((one, k) => one - free.reduce((sum, i, j) => sum + rows[k]![i]! * forces[j]!, 0));
  }
  return rest.every((one) => Math.abs(one) <= 1e-9 * (size + 1)) ? forces : null;
}

function cheapest(
  { layout, held }: ThrustGeometry,
  limits: Limits,
  wrench: readonly number[],
): readonly number[] | null {
  const hold = held.map((axis, k) => ({ wrench: AXES.map((one) => (one === axis ? 1 : 0)), at: wrench[k]! }));
  const { forces, found } = cheapestThrusts(layout, { hold, limits }, "effort");
  return found ? forces : null;
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

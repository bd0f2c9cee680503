import type { LayoutRequest } from "../../model/vehicle/layoutRequest.ts";
import type { ThrustCost, ThrustUnknowns } from "./thrustUnknowns.ts";
import { wrenchMatrix } from "./wrenchMatrix.ts";

/** Greatest thrust of each thruster, N, both without sign. */
export type Limits = readonly { readonly forward: number; readonly reverse: number }[];

/** Work done so far, for the report on convergence. */
export interface Tally {
  programmes: number;
  pivots: number;
  converged: boolean;
}

/** Limits of a layout with those of one drive, or of all, a standard uncertainty up or down. */
export interface LimitShifts {
  readonly drives: readonly { readonly up: Limits; readonly down: Limits; readonly thrusters: readonly number[] }[];
  readonly allUp: Limits;
}

/** A request with its matrices worked out once. */
export interface LayoutModel {
  readonly request: LayoutRequest;
  readonly limits: Limits;
  readonly matrix: readonly (readonly number[])[];
  /** What 1 N ahead and 1 N astern put on the vehicle in the linear programmes: with the reaction torque where it counts. */
  readonly ahead: readonly (readonly number[])[];
  readonly astern: readonly (readonly number[])[];
  readonly tally: Tally;
  /** Unknowns that were built already; the same limits are asked for many times. */
  readonly unknowns: WeakMap<Limits, Map<ThrustCost, ThrustUnknowns>>;
  readonly shifts: WeakMap<Limits, LimitShifts>;
}

export function layoutModel(request: LayoutRequest): LayoutModel {
  const { thrusters, centreOfMass, countReactionTorque } = request;
  const matrix = wrenchMatrix(thrusters, centreOfMass);
  return {
    request,
    limits: thrusters.map(({ limits }) => ({ forward: limits.forward.value, reverse: limits.reverse.value })),
    matrix,
    ahead: countReactionTorque ? wrenchMatrix(thrusters, centreOfMass, "forward") : matrix,
    astern: countReactionTorque ? wrenchMatrix(thrusters, centreOfMass, "reverse") : matrix,
    tally: { programmes: 0, pivots: 0, converged: true },
    unknowns: new WeakMap(),
    shifts: new WeakMap(),
  };
}

/** The same limits with one thruster that makes none. */
export const withoutThruster = (limits: Limits, lost: number): Limits =>
  limits.map((one, i) => (i === lost ? { forward: 0, reverse: 0 } : one));

/** Whether every thruster that can push has its current stated. */
export const currentsKnown = ({ request, limits }: LayoutModel): boolean =>
  request.thrusters.every(
    ({ current }, i) => current !== undefined || (limits[i]!.forward === 0 && limits[i]!.reverse === 0),
  );

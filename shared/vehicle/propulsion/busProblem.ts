import type { Axis } from "../../model/vehicle/layoutRequest.ts";
import type { Limits } from "../layout/layoutModel.ts";
import type { Vector } from "../layout/wrenchMatrix.ts";
import { type Flow, flowAt, type PropulsionModel } from "./propulsionModel.ts";
import { type Share, shareWithin, type Within } from "./thrustShares.ts";
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

/** What bounds a demand: the thrusters themselves, a limit of the bus, or the voltage that what is held besides needs. */
export type BusBound =
  | "asked"
  | "thrusters"
  | "holding"
  | "supplyCurrent"
  | "fuseCurrent"
  | "tetherCurrent"
  | "supplyVoltage"
  | "greatestPower";

interface BusLimit {
  /** A. */ readonly current: number;
  readonly bound: BusBound;
}

/** A demand on the bus, prepared to be asked at any voltage. */
export interface BusProblem {
  readonly flow: Flow;
  readonly shareOf: (within: Within) => Share;
  /** Times that what is held besides could be made. */ readonly asideOf: (within: Within) => Share;
  readonly most: number;
  readonly supply: BusSupply;
  readonly hotelPower: number;
  readonly limit: BusLimit;
  readonly lost: number;
}

/** Takes the supply and hotel load of the model where the demand states none. */
export function busProblem(model: PropulsionModel, ask: BusAsk): BusProblem {
  const { numbers, geometry } = model;
  const supply = ask.supply ?? numbers.supply;
  // What the hull gets of the thrust; what the thrusters must make for the hull is more.
  const more = 1 / (1 - numbers.thrustDeduction);
  const onHeld = (wrench: HullWrench = {}) => geometry.held.map((axis) => more * (wrench[axis] ?? 0));
  const aside = onHeld(ask.aside);
  return {
    supply,
    flow: flowAt(model, ask.velocity ?? [0, 0, 0]),
    shareOf: shareWithin(geometry, { direction: onHeld(ask.direction), aside }),
    asideOf: shareWithin(geometry, { direction: aside, aside: aside.map(() => 0) }),
    most: ask.most ?? Number.POSITIVE_INFINITY,
    hotelPower: ask.hotelPower ?? numbers.hotelPower,
    limit: limitOf(model, supply),
    lost: ask.lost ?? -1,
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

/** What the thrusters make of a demand at one bus voltage. */
export interface AtVoltage {
  readonly share: Share;
  readonly powers: readonly number[];
  /** Thrusters and hotel load, W. */ readonly power: number;
}

/** As much of the demand as the thrusters make at a bus voltage, and what they draw. */
export const atVoltage = (problem: BusProblem, voltage: number): AtVoltage =>
  drawn(problem, limitsAt(problem, voltage), problem.most);

/** Sets the bus voltage, V; gives the greatest thrusts at it. */
export function limitsAt({ flow, lost }: BusProblem, voltage: number): Limits {
  for (const way of flow.ways) setVoltage(way, voltage);
  return flow.thrusters.map(({ ahead, astern }, i) =>
    i === lost ? { forward: 0, reverse: 0 } : { forward: ahead.greatest, reverse: astern?.greatest ?? 0 },
  );
}

/** As much of the demand as there is within `limits`, and what is drawn for it, at the voltage last set. */
export function drawn({ flow, shareOf, hotelPower }: BusProblem, limits: Limits, most: number): AtVoltage {
  const share = shareOf({ limits, most });
  const powers = share.forces.map((force, i) => powerOf(flow, i, force));
  return { share, powers, power: powers.reduce((sum, one) => sum + one, hotelPower) };
}

function powerOf({ thrusters }: Flow, i: number, force: number): number {
  const { ahead, astern } = thrusters[i]!;
  return force < 0 && astern ? powerForThrust(astern, -force) : powerForThrust(ahead, force);
}

/** With all thrusters still. */
export function undriven({ flow, hotelPower }: BusProblem): AtVoltage {
  const powers = flow.thrusters.map((_, i) => powerOf(flow, i, 0));
  const share = { times: -1, forces: powers.map(() => 0), gains: [] };
  return { share, powers, power: powers.reduce((sum, one) => sum + one, hotelPower) };
}

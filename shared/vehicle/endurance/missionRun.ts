import type { EnergyAccount } from "../../model/vehicle/account.ts";
import type { CutOff, DischargePoint } from "../../model/vehicle/enduranceAnswer.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import type { Battery } from "./battery.ts";
import { addedEnergy, discharge, energyBetween, NO_ENERGY } from "./discharge.ts";
import { type Drain, drainingAt } from "./drain.ts";
import type { DrainAnswer } from "./drainOf.ts";

/** A leg with what it draws. */
export interface PlannedLeg {
  /** s; null: it makes no way. */ readonly duration: number | null;
  readonly draw: DrainAnswer;
}

export interface LegRun {
  readonly state: "done" | "cut" | "impossible" | "notReached";
  /** Shares of the charge before and after. */ readonly from: number;
  readonly to: number;
  /** s. */ readonly time: number;
  /** C. */ readonly charge: number;
  readonly energy: EnergyAccount;
  readonly endedBy: CutOff | null;
}

export interface MissionRun {
  readonly legs: readonly LegRun[];
  /** Index of the leg that it ends at before its time; null: it is done whole. */ readonly endsAt: number | null;
  /** s. */ readonly time: number;
  /** Share of the charge left. */ readonly left: number;
  /** C. */ readonly charge: number;
  readonly energy: EnergyAccount;
}

export interface RunOptions {
  /** Times as long as planned. */ readonly stretch?: number;
  /** False: energies are left at nothing, where they are not needed. */ readonly account?: boolean;
}

/** A mission on a battery, one leg after the other. */
export function missionRun(
  battery: Battery,
  legs: readonly PlannedLeg[],
  { stretch = 1, account = true }: RunOptions = {},
): MissionRun {
  const runs: LegRun[] = [];
  let [left, time, energy, endsAt] = [battery.start, 0, NO_ENERGY, null as number | null];
  legs.forEach((leg, i) => {
    const run = endsAt === null ? legRun(battery, leg, left, { stretch, account }) : notReached(left);
    if (endsAt === null && run.state !== "done") endsAt = i;
    runs.push(run);
    [left, time, energy] = [run.to, time + run.time, addedEnergy(energy, run.energy)];
  });
  return { legs: runs, endsAt, time, left, charge: battery.rated * (battery.start - left), energy };
}

const still = (share: number) => ({ from: share, to: share, time: 0, charge: 0, energy: NO_ENERGY });
const notReached = (share: number): LegRun => ({ state: "notReached", ...still(share), endedBy: null });

function legRun(
  battery: Battery,
  { duration, draw }: PlannedLeg,
  from: number,
  { stretch, account }: Required<RunOptions>,
): LegRun {
  if (!draw.can) return { state: "impossible", ...still(from), endedBy: draw.shortfall?.by ?? null };
  if (duration === null) return { state: "impossible", ...still(from), endedBy: null };
  const { drain } = draw;
  if (from < drain.least) return { state: "impossible", ...still(from), endedBy: drain.by };
  const { to, time, complete } = discharge(battery, drain, { from, until: drain.least, duration: stretch * duration });
  const energy = !account ? NO_ENERGY : energyBetween(battery, drain, from, to);
  const charge = battery.rated * (from - to);
  return { state: complete ? "done" : "cut", from, to, time, charge, energy, endedBy: complete ? null : drain.by };
}

/** Width of the last bracket of the stretch, relative. */
const TOLERANCE = 1e-11;
/** More missions than this on one charge are told as no number. */
const MOST = 2 ** 40;

export interface Times {
  /** How often the mission fits into the charge; null: not at all, or without end. */ readonly times: number | null;
  readonly converged: boolean;
}

/**
 * How many times as long all legs of a mission may be until the last of it meets what ends it: one root.
 *
 * As ds/dt = −I(s)/Q, a charge that many times smaller, or larger, does the mission as it is.
 *
 * Assumes  the order of the legs kept: all grow alike.
 */
export function timesOf(battery: Battery, legs: readonly PlannedLeg[], near = 1): Times {
  const none = { times: null, converged: true };
  if (legs.some(({ duration, draw }) => duration === null || !draw.can)) return none;
  if (legs.every(({ duration }) => duration === 0)) return none;
  const spare = (stretch: number) => spareOf(battery, legs, stretch);
  let [low, high] = [near, near];
  for (let step = 1e-3; spare(high) > 0; step *= 2) {
    if (high > MOST) return none;
    [low, high] = [high, high * (1 + step)];
  }
  for (let step = 1e-3; spare(low) < 0; step *= 2) {
    if (low < 1 / MOST) return none;
    [low, high] = [low / (1 + step), low];
  }
  if (low === high) return { times: low, converged: true };
  const { root, converged } = bracketedRoot(spare, low, high, { relativeTolerance: TOLERANCE });
  return { times: root, converged };
}

/** Share of the charge to spare at the tightest leg; where one is cut, the part of the time that is left undone, negative. */
function spareOf(battery: Battery, legs: readonly PlannedLeg[], stretch: number): number {
  const run = missionRun(battery, legs, { stretch, account: false });
  if (run.endsAt === null) return Math.min(...run.legs.map(({ to }, i) => to - leastOf(legs[i]!)));
  const whole = legs.reduce((sum, { duration }) => sum + stretch * duration!, 0);
  return run.time / whole - 1;
}

const leastOf = ({ draw }: PlannedLeg) => (draw.can ? draw.drain.least : 0);

/** Points of a leg in the picture besides its beginning. */
const POINTS = 12;

/** Charge, voltage and current through a mission. */
export function trackOf(battery: Battery, legs: readonly PlannedLeg[], run: MissionRun): DischargePoint[] {
  let begun = 0;
  return run.legs.flatMap((one, leg) => {
    const { draw } = legs[leg]!;
    if (!draw.can || one.time === 0) return [];
    const at = (part: number) => trackPoint(battery, draw.drain, one, part);
    const points = Array.from({ length: POINTS + 1 }, (_, k) => ({ ...at(k / POINTS), leg }));
    const shifted = points.map((point) => ({ ...point, time: begun + point.time }));
    begun += one.time;
    return shifted;
  });
}

/** By parts of the charge where there is a draw, of the time where there is none. */
function trackPoint(battery: Battery, drain: Drain, { from, to, time }: LegRun, part: number) {
  const charge = from + part * (to - from);
  const { openCircuitVoltage, voltage, current } = drainingAt(battery, drain, charge);
  const spent = from === to ? part * time : timeTo(battery, drain, from, charge);
  return { time: spent, charge, openCircuitVoltage, voltage, current };
}

function timeTo(battery: Battery, drain: Drain, from: number, until: number): number {
  return discharge(battery, drain, { from, until, duration: Number.POSITIVE_INFINITY }).time;
}

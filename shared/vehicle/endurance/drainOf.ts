import type { CutOff, DemandShortfall } from "../../model/vehicle/enduranceAnswer.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { formatNumber } from "../../quantity/format.ts";
import { greatestSupplyPower } from "../../supply/busVoltage.ts";
import { type BusSolution, busDemand } from "../propulsion/busDemand.ts";
import type { BusBound } from "../propulsion/busProblem.ts";
import { powerAccount } from "../propulsion/busState.ts";
import { limitingPart } from "../propulsion/limitingPart.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import { type Battery, percent } from "./battery.ts";
import type { Drain } from "./drain.ts";
import type { Needs } from "./needs.ts";
import { type PowerParts, powerTable, type TableOptions } from "./powerTable.ts";

/** What a demand draws, or why and by how much it is out of reach of the battery at its start. */
export type DrainAnswer =
  | { readonly can: true; readonly drain: Drain }
  | { readonly can: false; readonly shortfall: DemandShortfall | null };

/** Width of the last bracket of the least charge, relative. */
const TOLERANCE = 1e-11;

/**
 * The draw of a demand at every charge of a battery at which it can be done.
 *
 * Assumes  what can be done at one charge can be done at every higher one.
 */
export function drainOf(
  model: PropulsionModel,
  battery: Battery,
  needs: Needs,
  options: TableOptions = {},
): DrainAnswer {
  if (needs.unknown.length > 0) return { can: false, shortfall: null };
  const { floor, start, openCircuitVoltage: at } = battery;
  const known = new Map<number, BusSolution>();
  const bus = (voltage: number) => {
    const solved = known.get(voltage) ?? whole(model, battery, needs, voltage);
    known.set(voltage, solved);
    return solved;
  };
  const lasts = needs.notCommanded.length === 0 && isHeld(bus(at(floor)));
  if (!lasts && (needs.notCommanded.length > 0 || !isHeld(bus(at(start))))) {
    return { can: false, shortfall: shortfallAt(model, battery, needs, start) };
  }
  const least = lasts ? floor : leastCharge(model, battery, needs);
  const table = powerTable((voltage) => partsOf(model, needs, bus(voltage)), at(least), at(start), options);
  const atFloor = battery.floorIsCurve ? "curve" : "reserve";
  const by = lasts ? atFloor : boundAt(model, battery, needs, justBelow(battery, least));
  return { can: true, drain: { table, least, by, converged: needs.converged && table.converged } };
}

/** The whole demand on the bus at an open-circuit voltage. */
function whole(model: PropulsionModel, battery: Battery, needs: Needs, openCircuitVoltage: number): BusSolution {
  const still = Object.keys(needs.wrench).length === 0;
  return solved(model, battery, needs, openCircuitVoltage, still ? Number.POSITIVE_INFINITY : 1);
}

function solved(
  model: PropulsionModel,
  { resistance }: Battery,
  { wrench, wish }: Needs,
  openCircuitVoltage: number,
  most: number,
) {
  const { velocity, hotelPower } = wish;
  return busDemand(model, {
    direction: wrench,
    most,
    velocity,
    hotelPower,
    supply: { openCircuitVoltage, resistance },
  });
}

const isHeld = ({ outcome }: BusSolution) => outcome === "held";

function partsOf(model: PropulsionModel, { useful }: Needs, bus: BusSolution): PowerParts {
  const { source: _source, supplyLoss: _loss, ...parts } = powerAccount(model, bus, useful);
  return parts;
}

/** Least share of the charge at which the demand is held, between floor and start. */
function leastCharge(model: PropulsionModel, battery: Battery, needs: Needs): number {
  const at = battery.openCircuitVoltage;
  const still = Object.keys(needs.wrench).length === 0;
  const spare = (share: number) => {
    if (still) return isHeld(whole(model, battery, needs, at(share))) ? 1 : -1;
    return solved(model, battery, needs, at(share), Number.POSITIVE_INFINITY).times - 1;
  };
  // Both ends were asked for the whole demand; the greatest one may differ from it by rounding.
  if (spare(battery.start) <= 0) return battery.start;
  if (spare(battery.floor) >= 0) return battery.floor;
  const { root } = bracketedRoot(spare, battery.floor, battery.start, { relativeTolerance: TOLERANCE });
  let least = root;
  for (let hair = TOLERANCE; least < battery.start && !isHeld(whole(model, battery, needs, at(least))); hair *= 4) {
    least = Math.min(battery.start, root * (1 + hair));
  }
  return least;
}

const CUT_OFFS: Readonly<Record<BusBound, CutOff>> = {
  ...{
    asked: "thrust",
    thrusters: "thrust",
    holding: "thrust",
    greatestPower: "collapse",
    supplyVoltage: "leastVoltage",
  },
  ...{ supplyCurrent: "supplyCurrent", fuseCurrent: "fuseCurrent", tetherCurrent: "tetherCurrent" },
};

const justBelow = ({ floor }: Battery, share: number) => Math.max(floor, share * (1 - 1e-6));

function boundAt(model: PropulsionModel, battery: Battery, needs: Needs, share: number): CutOff {
  return CUT_OFFS[whole(model, battery, needs, battery.openCircuitVoltage(share)).bound];
}

/** By how much a demand is out of reach at a charge; null where it is not. */
export function shortfallAt(
  model: PropulsionModel,
  battery: Battery,
  needs: Needs,
  share: number,
): DemandShortfall | null {
  const U_oc = battery.openCircuitVoltage(share);
  if (needs.notCommanded.length > 0) return notCommanded(needs);
  const asked = whole(model, battery, needs, U_oc);
  if (isHeld(asked)) return null;
  const by = CUT_OFFS[asked.bound];
  const limitedBy = limitingPart(model, asked);
  if (needs.force === 0) {
    const needed = needs.wish.hotelPower;
    const available = powerWithin(model, battery, U_oc);
    const sentence = `It draws ${formatNumber(needed)} W and the supply gives at most ${formatNumber(available)} W at ${percent(share)} of the charge.`;
    return { by, needed, available, unit: "W", limitedBy, sentence };
  }
  const most = solved(model, battery, needs, U_oc, Number.POSITIVE_INFINITY);
  const available = most.times * needs.force;
  const sentence = `It needs ${formatNumber(needs.force)} N on the hull and there are ${formatNumber(available)} N at ${percent(share)} of the charge. ${limitedBy.text}`;
  return { by, needed: needs.force, available, unit: "N", limitedBy, sentence };
}

/** Greatest power that the bus may be loaded with, W. */
function powerWithin({ supplyLimits }: PropulsionModel, { resistance }: Battery, openCircuitVoltage: number): number {
  const { supplyCurrent, fuseCurrent, tetherCurrent, supplyVoltage } = supplyLimits;
  const allowed = Math.min(...[supplyCurrent, fuseCurrent, tetherCurrent].filter((one) => one !== undefined));
  const byCurrent = Number.isFinite(allowed)
    ? (openCircuitVoltage - resistance * allowed) * allowed
    : Number.POSITIVE_INFINITY;
  const byVoltage =
    supplyVoltage === undefined
      ? Number.POSITIVE_INFINITY
      : (supplyVoltage * (openCircuitVoltage - supplyVoltage)) / resistance;
  return Math.max(0, Math.min(greatestSupplyPower({ openCircuitVoltage, resistance }), byCurrent, byVoltage));
}

function notCommanded(needs: Needs): DemandShortfall {
  const axes = needs.notCommanded.join(" and ");
  const sentence = `No thruster pushes along ${axes} alone.`;
  const limitedBy = { part: "layout", drive: null, limit: "layout", text: sentence } as const;
  return { by: "thrust", needed: needs.force, available: 0, unit: "N", limitedBy, sentence };
}

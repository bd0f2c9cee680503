import type { HoldingCell, HoldingMap } from "../../model/vehicle/enduranceAnswer.ts";
import { formatNumber, formatUncertain, type ShownUnit } from "../../quantity/format.ts";
import { busDemand } from "../propulsion/busDemand.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { linearOf, uncertainOf } from "../propulsion/firstOrder.ts";
import { withNumbers } from "../propulsion/propulsionModel.ts";
import { discharge } from "./discharge.ts";
import { drainingAt } from "./drain.ts";
import { needsOf } from "./needs.ts";
import type { Drawing } from "./plan.ts";
import { holdWish } from "./wishes.ts";

const WATT: ShownUnit = { symbol: "W", factor: 1 };

export interface MapSize {
  /** Greatest current, m/s. */ readonly greatestCurrent: number;
  /** Speeds besides none. */ readonly speeds: number;
  /** Headings besides ahead. */ readonly headings: number;
}

/**
 * Power and time to hold a place, bow kept, in a current that comes from ahead round to astern over starboard.
 *
 * Assumes  as `needsOf`; port is as starboard where the layout is the same both sides.
 */
export function holdingMap(
  on: Drawing,
  { greatestCurrent, ...counts }: MapSize,
  { timed, doubts }: { readonly timed: boolean; readonly doubts: VehicleDoubts },
): HoldingMap {
  const speeds = Array.from({ length: counts.speeds + 1 }, (_, i) => (greatestCurrent * i) / counts.speeds);
  const headings = Array.from({ length: counts.headings + 1 }, (_, i) => (i * Math.PI) / counts.headings);
  const cells = speeds.map((speed) => headings.map((from) => cellAt(on, speed, from, timed)));
  const hardest = hardestHeld(on, cells, doubts);
  return { speeds, headings, cells, hardest, sentence: sentenceOf(cells, greatestCurrent, hardest) };
}

function cellAt(on: Drawing, currentSpeed: number, currentFrom: number, timed: boolean): HoldingCell {
  // Without a current no side is another.
  const wish = holdWish(on.model.numbers, { speed: currentSpeed, from: currentSpeed === 0 ? 0 : currentFrom });
  const needs = on.needs(wish);
  const draw = on.draw(needs);
  const cell = { currentSpeed, currentFrom, power: null, current: null, time: null };
  if (!draw.can) {
    return { ...cell, state: draw.shortfall === null ? "notKnown" : "notHeld", shortfall: draw.shortfall };
  }
  const { battery } = on;
  const { power, current } = drainingAt(battery, draw.drain, battery.start);
  const span = { from: battery.start, until: draw.drain.least, duration: Number.POSITIVE_INFINITY };
  const time = timed && power > 0 ? discharge(battery, draw.drain, span).time : null;
  return { ...cell, state: "held", power, current, time, shortfall: null };
}

/** The last row that is held from every side, as far as is known. */
const lastHeld = (cells: readonly (readonly HoldingCell[])[]) =>
  cells.filter((row) => row.every(({ state }) => state !== "notHeld")).at(-1);

/** Where holding takes the most power of that row, with the doubt of that power; the other cells are doubtful in like manner. */
function hardestHeld(
  on: Drawing,
  cells: readonly (readonly HoldingCell[])[],
  doubts: VehicleDoubts,
): HoldingMap["hardest"] {
  const row = (lastHeld(cells) ?? []).filter(({ power }) => power !== null);
  if (row.length === 0) return null;
  const { currentSpeed, currentFrom, power } = row.reduce((most, one) => (one.power! > most.power! ? one : most));
  const { openCircuitVoltage, resistance, start } = on.battery;
  const still = { openCircuitVoltage: openCircuitVoltage(start), resistance };
  const linear = linearOf(doubts, on.model.numbers, power!, (numbers, { of }) => {
    if (of === "mass" || of === "current") return null;
    const model = withNumbers(on.model, numbers);
    const { wrench, wish } = needsOf(model, on.pulls, holdWish(numbers, { speed: currentSpeed, from: currentFrom }));
    const rise = numbers.supply.openCircuitVoltage - on.model.numbers.supply.openCircuitVoltage;
    const more = numbers.supply.resistance - on.model.numbers.supply.resistance;
    const supply = { openCircuitVoltage: still.openCircuitVoltage + rise, resistance: still.resistance + more };
    const { velocity, hotelPower } = wish;
    return busDemand(model, { direction: wrench, most: 1, velocity, hotelPower, supply }).power;
  });
  return { currentSpeed, currentFrom, power: uncertainOf(doubts, linear) };
}

function sentenceOf(
  cells: readonly (readonly HoldingCell[])[],
  greatest: number,
  hardest: HoldingMap["hardest"],
): string {
  const all = cells.flat();
  const known = all.filter(({ state }) => state !== "notKnown");
  const missed = known.filter(({ state }) => state === "notHeld");
  const unknown = known.length < all.length ? " From the sides whose drag is not given nothing is known." : "";
  if (known.length === 0) return "Nothing is known: no drag is given.";
  if (missed.length === 0)
    return `It holds its place in up to ${formatNumber(greatest)} m/s from every side that is told.${unknown}`;
  const row = lastHeld(cells);
  const takes = hardest === null ? "" : ` From the hardest side that takes ${formatUncertain(hardest.power, WATT)}.`;
  const round = row === undefined ? "It does not hold its place even without a current." : lastRowWords(cells, row);
  return `${round}${takes}${unknown}`;
}

/** A row is a step of the picture, no limit: where the limit is told. */
function lastRowWords(cells: readonly (readonly HoldingCell[])[], row: readonly HoldingCell[]): string {
  const next = cells[cells.indexOf(row) + 1]?.[0]?.currentSpeed ?? null;
  const misses = next === null ? "" : `; the next row, ${formatNumber(next)} m/s, is not`;
  const first = `${formatNumber(row[0]!.currentSpeed)} m/s is the last row of this picture that is held, bow kept, from every side that is told${misses}.`;
  return `${first} That is no limit: the greatest current that is held, bow kept too, lies between rows and is told with its ± “In a current from any side”, there on the supply as stated, here on the charge at the start.`;
}

import type { HoldingCell, HoldingMap } from "../../model/vehicle/enduranceAnswer.ts";
import { formatNumber } from "../../quantity/format.ts";
import { discharge } from "./discharge.ts";
import { drainingAt } from "./drain.ts";
import type { Drawing } from "./plan.ts";
import { holdWish } from "./wishes.ts";

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
export function holdingMap(on: Drawing, { greatestCurrent, ...counts }: MapSize, timed: boolean): HoldingMap {
  const speeds = Array.from({ length: counts.speeds + 1 }, (_, i) => (greatestCurrent * i) / counts.speeds);
  const headings = Array.from({ length: counts.headings + 1 }, (_, i) => (i * Math.PI) / counts.headings);
  const cells = speeds.map((speed) => headings.map((from) => cellAt(on, speed, from, timed)));
  return { speeds, headings, cells, sentence: sentenceOf(cells, greatestCurrent) };
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

function sentenceOf(cells: readonly (readonly HoldingCell[])[], greatest: number): string {
  const all = cells.flat();
  const known = all.filter(({ state }) => state !== "notKnown");
  const missed = known.filter(({ state }) => state === "notHeld");
  const unknown = known.length < all.length ? " From the sides whose drag is not given nothing is known." : "";
  if (known.length === 0) return "Nothing is known: no drag is given.";
  if (missed.length === 0)
    return `It holds its place in up to ${formatNumber(greatest)} m/s from every side that is told.${unknown}`;
  const allRound =
    cells.filter((row) => row.every(({ state }) => state !== "notHeld")).at(-1)?.[0]?.currentSpeed ?? null;
  const round =
    allRound === null
      ? "It does not hold its place even without a current."
      : `With the bow kept it holds its place in ${formatNumber(allRound)} m/s from every side that is told, and not in the cells that are marked.`;
  return `${round}${unknown}`;
}

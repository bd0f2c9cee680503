import type { CutOff, DemandShortfall } from "../../model/vehicle/enduranceAnswer.ts";
import { formatNumber, type ShownUnit } from "../../quantity/format.ts";
import { formatTold, type Told } from "../../quantity/told.ts";
import { METRE, SECOND } from "../tether/shownUnits.ts";

const HOUR: ShownUnit = { symbol: "h", factor: 3600 };
const MINUTE: ShownUnit = { symbol: "min", factor: 60 };
const AMPERE_HOUR: ShownUnit = { symbol: "A·h", factor: 3600 };
const WATT_HOUR: ShownUnit = { symbol: "W·h", factor: 3600 };
const PERCENT: ShownUnit = { symbol: "%", factor: 0.01 };
const KILOMETRE: ShownUnit = { symbol: "km", factor: 1000 };

const unitOfTime = (seconds: number) => (seconds >= 3 * 3600 ? HOUR : seconds >= 180 ? MINUTE : SECOND);

/** A time in the unit that suits it: "47.3 min". */
export function timeWords(seconds: number): string {
  const unit = unitOfTime(Math.abs(seconds));
  return `${formatNumber(seconds / unit.factor)} ${unit.symbol}`;
}

export const uncertainTimeWords = (time: Told): string => formatTold(time, unitOfTime(Math.abs(time.value)));

/** A way, m or km. */
export function wayWords(metres: number): string {
  const unit = Math.abs(metres) >= 1000 ? KILOMETRE : METRE;
  return `${formatNumber(metres / unit.factor)} ${unit.symbol}`;
}

export const uncertainWayWords = (way: Told): string =>
  formatTold(way, Math.abs(way.value) >= 1000 ? KILOMETRE : METRE);

/** A charge, A·h. */
export const chargeWords = (coulombs: number): string => `${formatNumber(coulombs / 3600)} A·h`;

export const uncertainChargeWords = (charge: Told): string => formatTold(charge, AMPERE_HOUR);

/** An energy, W·h. */
export const uncertainEnergyWords = (energy: Told): string => formatTold(energy, WATT_HOUR);

/** A share of the charge in percent. */
export const shareWords = (share: number): string => `${formatNumber(100 * share, share < 0.1 ? 2 : 3)} %`;

/** What ends it, to stand after "because". */
export const CUT_OFF_WORDS: Readonly<Record<CutOff, string>> = {
  reserve: "only the reserve is left in the pack",
  leastVoltage: "the pack is at its least voltage under load",
  supplyCurrent: "the pack would have to give more than its continuous current",
  fuseCurrent: "the fuse would have to carry more than its rating",
  tetherCurrent: "the tether would have to carry more than its continuous current",
  thrust: "the thrusters no longer reach the force at the voltage that is left",
  collapse: "the supply can not give more power at the voltage that is left",
  curve: "the stated charge curve of the cell ends there",
};

export const uncertainShareWords = (share: Told): string => formatTold(share, PERCENT);

/** How many "times": "1.37 ± 0.05 times". */
export const uncertainTimesWords = (times: Told): string => formatTold(times, { symbol: "times", factor: 1 });

export const shortfallWords = (shortfall: DemandShortfall | null): string =>
  shortfall === null ? "The drag that way is not given, so that its force is not known." : shortfall.sentence;

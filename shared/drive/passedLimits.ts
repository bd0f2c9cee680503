import type { LimitState, OperatingPoint } from "../model/drive.ts";
import { CELSIUS_ZERO } from "../quantity/constants.ts";
import { formatNumber, formatUncertain, type ShownUnit } from "../quantity/format.ts";
import type { Uncertain } from "../quantity/uncertain.ts";

/** What a limit bounds, where its name is not that of a quantity. */
const QUANTITIES: Readonly<Partial<Record<LimitState["name"], string>>> = {
  "fuse current": "current through the fuse",
  "tether current": "current through the tether",
  "least supply voltage": "supply voltage",
  cavitation: "rotation rate, for cavitation,",
  ventilation: "rotation rate, for drawing air,",
};

/** The quantity that a limit is held against, in words: "supply current". */
export const limitedInWords = (name: LimitState["name"]): string => QUANTITIES[name] ?? name;

const isLeast = ({ name }: Pick<LimitState, "name">) => name === "least supply voltage";

/** Stated limits that a point lies past; half of the supply's open-circuit voltage is nobody's rating and has its own warning. */
export function passedLimits(limits: readonly LimitState[]): LimitState[] {
  return limits.filter(
    (state) =>
      state.name !== "supply voltage" && (isLeast(state) ? state.actual < state.limit : state.actual > state.limit),
  );
}

/** "at most 20.0 A", "at least 9.00 V". */
export function allowedInWords({ name, limit, unit }: Pick<LimitState, "name" | "limit" | "unit">): string {
  return `at ${isLeast({ name }) ? "least" : "most"} ${limitAmount(limit, unit)}`;
}

/** The units of limits that people read in another one. */
const SHOWN: Readonly<Record<string, ShownUnit>> = {
  K: { symbol: "°C", factor: 1, offset: CELSIUS_ZERO },
  "rev/s": { symbol: "rpm", factor: 1 / 60 },
};

const shownUnit = (unit: string): ShownUnit => SHOWN[unit] ?? { symbol: unit, factor: 1 };

/** An amount of a limit (SI) in the unit that people read: °C and rpm. */
export function limitAmount(value: number, unit: string): string {
  const { symbol, factor, offset = 0 } = shownUnit(unit);
  return `${formatNumber(value / factor - offset)} ${symbol}`;
}

/** What a limit is held against at a point, with its 95 % interval where the inputs state doubts. */
export function actualInWords(state: LimitState, uncertainties: OperatingPoint["uncertainties"]): string {
  const doubt = doubtOf(state.name, uncertainties);
  if (doubt === undefined || doubt.standardUncertainty < 1e-4 * Math.abs(doubt.value))
    return limitAmount(state.actual, state.unit);
  return formatUncertain(doubt, shownUnit(state.unit));
}

/** Motor power is a product that has no interval of its own, so it is told without. */
function doubtOf(name: LimitState["name"], all: OperatingPoint["uncertainties"]): Uncertain | undefined {
  switch (name) {
    case "motor current":
    case "controller current":
      return all?.motorCurrent;
    case "winding temperature":
      return all?.windingTemperature;
    case "supply current":
    case "fuse current":
    case "tether current":
      return all?.supplyCurrent;
    case "least supply voltage":
    case "supply voltage":
      return all?.supplyVoltage;
    case "cavitation":
    case "ventilation":
      return all?.rotationRate;
    case "motor power":
      return undefined;
  }
}

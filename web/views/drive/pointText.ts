import type { OPERATING_POINT_NUMBERS, OperatingPoint } from "../../../shared/model/drive.ts";
import { formatQuantity, formatUncertain, type ShownUnit } from "../../../shared/quantity/format.ts";
import { AMPERE, CELSIUS, MILLINEWTON_METRE, NEWTON, PERCENT, RPM, VOLT, WATT } from "../bench/shownUnits.ts";

export type PointQuantity = keyof typeof OPERATING_POINT_NUMBERS;

const NEWTON_PER_WATT: ShownUnit = { symbol: "N/W", factor: 1 };

/** The numbers of an operating point in the order people ask for them. */
export const POINT_QUANTITIES: readonly {
  readonly key: PointQuantity;
  readonly name: string;
  /** Shorter name, where an axis of a picture has no room for the whole. */
  readonly axis?: string;
  readonly symbol: string;
  readonly unit: ShownUnit;
}[] = [
  { key: "thrust", name: "Thrust of one thruster", symbol: "T", unit: NEWTON },
  { key: "rotationRate", name: "Rotation rate", symbol: "n", unit: RPM },
  { key: "torque", name: "Propeller torque", symbol: "Q", unit: MILLINEWTON_METRE },
  { key: "motorCurrent", name: "Motor current", symbol: "I_m", unit: AMPERE },
  { key: "motorVoltage", name: "Motor voltage", symbol: "U_m", unit: VOLT },
  {
    key: "supplyCurrent",
    name: "Current from the supply, all thrusters and hotel load",
    axis: "Current from the supply",
    symbol: "I_s",
    unit: AMPERE,
  },
  { key: "supplyVoltage", name: "Supply voltage under load", symbol: "U", unit: VOLT },
  { key: "windingTemperature", name: "Winding temperature, steady", symbol: "T_w", unit: CELSIUS },
  { key: "electricalPower", name: "Electrical power of one thruster", symbol: "P_e", unit: WATT },
  { key: "shaftPower", name: "Shaft power", symbol: "P", unit: WATT },
  { key: "efficiency", name: "Shaft power over electrical power", symbol: "eta", unit: PERCENT },
  { key: "thrustPerPower", name: "Thrust over electrical power", symbol: "T/P_e", unit: NEWTON_PER_WATT },
];

/** One number of a point with its unit, and its 95 % half-width where the inputs had doubts. */
export function pointText(point: OperatingPoint, key: PointQuantity, isHeatKnown = true): string {
  if (key === "windingTemperature" && !isHeatKnown) return "not worked out";
  const { unit } = POINT_QUANTITIES.find((one) => one.key === key)!;
  const doubt = point.uncertainties?.[key];
  if (doubt === undefined || doubt.standardUncertainty === 0) return formatQuantity(point[key], unit);
  const half = Math.abs(doubt.interval95[1] - doubt.value);
  // Voltages hardly depend on the propeller: digits down to that doubt would pretend that the pack is known as well.
  const least = 1e-3 * Math.abs(doubt.value);
  return half < least ? atMost(doubt.value, least, unit) : formatUncertain(doubt, unit);
}

/** "9.05 ± under 0.01 V": no digits below the next power of ten above the doubt, so that both stand in one unit. */
function atMost(value: number, doubt: number, unit: ShownUnit): string {
  const decimals = Math.max(0, -Math.ceil(Math.log10(doubt / unit.factor)));
  const shown = value / unit.factor - (unit.offset ?? 0);
  return `${shown.toFixed(decimals).replace("-", "\u2212")} ± under ${(10 ** -decimals).toFixed(decimals)}\u202f${unit.symbol}`;
}

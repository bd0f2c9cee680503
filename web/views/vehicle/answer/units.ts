import { formatQuantity, type ShownUnit } from "../../../../shared/quantity/format.ts";
import { formatTold, hasInterval, type Told } from "../../../../shared/quantity/told.ts";
import { requireUnit } from "../../../../shared/quantity/unit.ts";

/** Units in which the vehicle's numbers are printed. */
export { METRE_PER_SECOND } from "../../bench/shownUnits.ts";
export const KILOMETRE = requireUnit("km", "length");
export const MINUTE = requireUnit("min", "time");
export const AMPERE_HOUR = requireUnit("Ah", "charge");
export const WATT_HOUR = requireUnit("Wh", "energy");
export const DEGREE: ShownUnit = { symbol: "°", factor: Math.PI / 180 };

/** Where a current comes from, in whole degrees: such angles are chosen, not measured. */
export const fromText = (angle: number) => `${Math.round(angle / DEGREE.factor)}°`;

/** What is smaller than this is the rounding of a search, whatever the quantity: newtons, metres, radians. */
const ROUNDING = 1e-9;

/** A number or what stands for none. */
export const shown = (si: number | null, unit: ShownUnit, digits = 3): string =>
  si === null ? "–" : formatQuantity(Math.abs(si) < ROUNDING ? 0 : si, unit, digits);

/** Class of a cell with a number; one without an interval says why on lines of its own. */
export const numberClass = (value: Told | null): string =>
  value === null || hasInterval(value) ? "number" : "number vehicle-bare";

export const shownUncertain = (value: Told | null, unit: ShownUnit): string => {
  if (value === null) return "–";
  const isZero = hasInterval(value) && Math.abs(value.value) < ROUNDING && value.standardUncertainty < ROUNDING;
  return isZero ? formatQuantity(0, unit) : formatTold(value, unit);
};

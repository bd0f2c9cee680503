import { requireUnit } from "../../../shared/quantity/unit.ts";
import type { Dimension } from "../../../shared/quantity/units.data.ts";

const shown = (symbol: string, dimension: Dimension) => requireUnit(symbol, dimension);

/** Units in which these screens print each kind of number. Rotation rates are printed in turns a minute, as builders say them. */
export const NEWTON = shown("N", "force");
export const KILOGRAM_FORCE = shown("kgf", "force");
export const RPM = shown("rpm", "rotationRate");
export const MILLINEWTON_METRE = shown("mN·m", "torque");
export const NEWTON_METRE = shown("N·m", "torque");
export const VOLT = shown("V", "voltage");
export const AMPERE = shown("A", "current");
export const WATT = shown("W", "power");
export const SECOND = shown("s", "time");
export const MILLIMETRE = shown("mm", "length");
export const METRE = shown("m", "length");
export const METRE_PER_SECOND = shown("m/s", "speed");
export const PERCENT = shown("%", "fraction");
export const CELSIUS = shown("°C", "temperature");
export const MEGAPASCAL = shown("MPa", "pressure");
/** A ratio that has no dimension of its own in the table of units. */
export const NEWTON_PER_WATT = { symbol: "N/W", factor: 1 } as const;

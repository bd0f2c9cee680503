import { CELSIUS_ZERO } from "../quantity/constants.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";

/** Closed range of temperature, °C. */
export interface CelsiusRange {
  readonly low: number;
  readonly high: number;
}

/** Rounding of the sum with 273.15 must not push 0 °C out of a range that begins there. */
const ROUNDING = 1e-9;

/**
 * Temperature in °C of a temperature in K, if it lies in `range`.
 * Throws OutOfDomain `fluid.temperature-out-of-range`, told in °C as people measure it.
 */
export function celsiusWithin(temperature: number, { low, high }: CelsiusRange, fluid: string): number {
  const celsius = temperature - CELSIUS_ZERO;
  if (celsius >= low - ROUNDING && celsius <= high + ROUNDING) return celsius;
  throw new OutOfDomain({
    code: "fluid.temperature-out-of-range",
    found: `${fluid} of ${Number.isFinite(celsius) ? formatNumber(celsius, 4) : "unknown"} °C`,
    needed: `${low} to ${high} °C`,
    mend: "",
  });
}

import type { FluidState } from "../model/fluid.ts";
import { CELSIUS_ZERO } from "../quantity/constants.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { CIPM_RANGE } from "./air.ts";
import { freezingPoint } from "./seaWater.ts";

/**
 * What a reader should know of a state whose properties are computed all the same: water that would be ice, and
 * formulas carried on beyond the range they were made for. Empty where nothing needs saying.
 */
export function fluidWarnings(state: FluidState, where = "fluid"): Warning[] {
  const celsius = state.temperature - CELSIUS_ZERO;
  switch (state.kind) {
    case "fresh":
      return [];
    case "sea":
      return celsius < 0 ? coldSea(celsius, state.salinity, where) : [];
    case "air":
      return airOutsideCipm(celsius, state.pressure, where);
  }
}

function coldSea(celsius: number, salinity: number, where: string): Warning[] {
  const freezing = freezingPoint(salinity);
  const found = `sea water of salinity ${formatNumber(salinity)} at ${formatNumber(celsius)} °C`;
  if (celsius < freezing) {
    return [
      warning({
        code: "fluid.below-freezing",
        where,
        found: `${found} would freeze`,
        needed: `at least ${formatNumber(freezing)} °C`,
        mend: "Check temperature and salinity",
      }),
    ];
  }
  return [
    warning({
      code: "fluid.viscosity-extrapolated",
      where,
      found: `The viscosity of ${found} is carried on from a formula made for 0 °C and above`,
      needed: "",
      mend: "Expect it to be right to about 2 %",
    }),
  ];
}

function airOutsideCipm(celsius: number, pressure: number, where: string): Warning[] {
  const { celsius: c, pressure: p } = CIPM_RANGE;
  if (celsius >= c.low && celsius <= c.high && pressure >= p.low && pressure <= p.high) return [];
  return [
    warning({
      code: "fluid.air-extrapolated",
      where,
      found:
        `Air of ${formatNumber(celsius)} °C and ${formatNumber(pressure / 100, 4)} hPa lies outside what the density ` +
        `formula was made for (${c.low} to ${c.high} °C, ${p.low / 100} to ${p.high / 100} hPa)`,
      needed: "",
      mend: "The density is carried on and should still be right to 0.1 %",
    }),
  ];
}

import { CELSIUS_ZERO, MOLAR_GAS_CONSTANT_CIPM_2007 } from "../quantity/constants.ts";
import { within } from "../quantity/domain.ts";
import { type CelsiusRange, celsiusWithin } from "./celsius.ts";

export interface MoistAir {
  /** Temperature, K. */
  readonly temperature: number;
  /** Absolute pressure, Pa. */
  readonly pressure: number;
  /** Relative humidity, 0 to 1. */
  readonly humidity: number;
}

/** Where CIPM-2007 was made for; outside it `fluidWarnings` speaks. */
export const CIPM_RANGE = { celsius: { low: 15, high: 27 }, pressure: { low: 60_000, high: 110_000 } } as const;

/** How far the equation is carried on: it is physical, and any garage or mountain lies inside. */
const RANGE: CelsiusRange = { low: -10, high: 45 };
const PRESSURE = { low: 50_000, high: 120_000 };

/** Molar masses of dry air with 400 µmol/mol of carbon dioxide and of water, kg/mol; CIPM-2007. */
const DRY_AIR = 28.96546e-3;
const WATER = 18.01528e-3;

/**
 * Density of moist air, kg/m³.
 *
 *   ρ = p M_a / (Z R T) [1 - x_v (1 - M_v/M_a)],   x_v = h f p_sv / p
 *
 * Source   CIPM-2007: Picard, Davis, Gläser & Fujii, Metrologia 45 (2008) 149.
 * Assumes  400 µmol/mol of carbon dioxide; 100 more raise the density by 4e-5 relative.
 * Range    -10 to 45 °C and 500 to 1200 hPa; the equation is made for 15 to 27 °C and 600 to 1100 hPa.
 * Error    22e-6 relative for the equation inside its own range; the inputs matter more.
 * Throws   OutOfDomain.
 *
 * @example airDensity({ temperature: 293.15, pressure: 101325, humidity: 0.5 }) // 1.199314 kg/m³
 */
export function airDensity(air: MoistAir): number {
  const { t, T, p, h } = checked(air);
  const x = (h * enhancement(p, t) * saturation(T)) / p;
  const Z =
    1 -
    (p / T) *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t ** 2 +
        (5.707e-6 - 2.051e-8 * t) * x +
        (1.9898e-4 - 2.376e-6 * t) * x ** 2) +
    (p / T) ** 2 * (1.83e-11 - 0.765e-8 * x ** 2);
  return ((p * DRY_AIR) / (Z * MOLAR_GAS_CONSTANT_CIPM_2007 * T)) * (1 - x * (1 - WATER / DRY_AIR));
}

/**
 * Dynamic viscosity of air, Pa·s, from its temperature in K; pressure and humidity change it by less than 1 %.
 *
 *   μ = 1.458e-6 T^1.5 / (T + 110.4)
 *
 * Source   Sutherland's law with the constants of ISO 2533:1975 (ICAO Doc 7488).
 * Range    -10 to 45 °C here; the law serves from -170 to 1600 °C.
 * Error    1 % relative.
 * Throws   OutOfDomain `fluid.temperature-out-of-range`.
 *
 * @example airViscosity(288.15) // 1.7894e-5 Pa·s
 */
export function airViscosity(temperature: number): number {
  const T = celsiusWithin(temperature, RANGE, "air") + CELSIUS_ZERO;
  return (1.458e-6 * T ** 1.5) / (T + 110.4);
}

/**
 * Partial pressure of the water vapour in moist air, Pa: relative humidity times the saturation pressure of water.
 *
 *   p_v = h p_sv,   p_sv = exp(A T² + B T + C + D/T)
 *
 * Source   CIPM-2007, eq. A1.1; its enhancement factor (0.4 %) is left out.
 * Range, throws as `airDensity`.
 *
 * @example airVapourPressure({ temperature: 293.15, pressure: 101325, humidity: 0.5 }) // 1169.6 Pa
 */
export function airVapourPressure(air: MoistAir): number {
  const { T, h } = checked(air);
  return h * saturation(T);
}

/** Saturation pressure of water, Pa, CIPM-2007 eq. A1.1. */
function saturation(T: number): number {
  return Math.exp(1.2378847e-5 * T ** 2 - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
}

/** How much air in the room raises the saturation pressure, CIPM-2007 eq. A1.2. */
function enhancement(p: number, t: number): number {
  return 1.00062 + 3.14e-8 * p + 5.6e-7 * t ** 2;
}

function checked({ temperature, pressure, humidity }: MoistAir): { t: number; T: number; p: number; h: number } {
  const t = celsiusWithin(temperature, RANGE, "air");
  const p = within(pressure, PRESSURE.low, PRESSURE.high, "air pressure", "Pa");
  return { t, T: t + CELSIUS_ZERO, p, h: within(humidity, 0, 1, "relative humidity", "") };
}

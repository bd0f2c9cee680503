import { within } from "../quantity/domain.ts";
import { type CelsiusRange, celsiusWithin } from "./celsius.ts";
import { saturationPressure } from "./freshWater.ts";
import { polynomial } from "./polynomial.ts";
import {
  DENSITY_S,
  DENSITY_S_2,
  DENSITY_S_3_2,
  FREEZING,
  PURE_WATER_DENSITY,
  VISCOSITY_A,
  VISCOSITY_B,
} from "./seaWater.data.ts";

export interface SeaWater {
  /** Temperature, K (ITS-90). */
  readonly temperature: number;
  /** Practical salinity, a plain number (about grams of salt in a kilogram of water). */
  readonly salinity: number;
}

const RANGE: CelsiusRange = { low: -2, high: 40 };
const GREATEST_SALINITY = 42;
/** Absolute over practical salinity of sea water of reference composition, g/kg; Millero et al., Deep-Sea Research I 55 (2008) 50. */
const ABSOLUTE_SALINITY = 35.16504 / 35;

/**
 * Density of sea water at one atmosphere, kg/m³.
 *
 *   ρ = ρ_w(t) + A(t) S + B(t) S^1.5 + C S²,   t on IPTS-68, 1.00024 times that on ITS-90
 *
 * Source   EOS-80: Fofonoff & Millard, Unesco Technical Papers in Marine Science 44 (1983).
 * Assumes  sea pressure 0: at 10 m depth the density is 0.0045 % higher.
 * Range    practical salinity 0 to 42, -2 to 40 °C.
 * Error    0.01 kg/m³ against TEOS-10.
 * Throws   OutOfDomain.
 *
 * @example seaWaterDensity({ temperature: 288.15, salinity: 35 }) // 1025.972 kg/m³
 */
export function seaWaterDensity(water: SeaWater): number {
  const { t, S } = checked(water);
  const t68 = 1.00024 * t;
  return (
    polynomial(PURE_WATER_DENSITY, t68) +
    polynomial(DENSITY_S, t68) * S +
    polynomial(DENSITY_S_3_2, t68) * S ** 1.5 +
    DENSITY_S_2 * S * S
  );
}

/**
 * Dynamic viscosity of sea water at one atmosphere, Pa·s.
 *
 *   μ = μ_w(t) [1 + A(t) S + B(t) S²],   S in kg/kg
 *
 * Source   Sharqawy, Lienhard & Zubair, Desalination and Water Treatment 16 (2010) 354, eqs 22 and 23.
 * Range    practical salinity 0 to 42, -2 to 40 °C; the source begins at 0 °C, below is carried on and told by
 *          `fluidWarnings`.
 * Error    1.5 % relative, as stated in the source.
 * Throws   OutOfDomain.
 *
 * @example seaWaterViscosity({ temperature: 288.15, salinity: 35 }) // 1.2203e-3 Pa·s
 */
export function seaWaterViscosity(water: SeaWater): number {
  const { t, S } = checked(water);
  const salt = (S * ABSOLUTE_SALINITY) / 1000;
  const pure = 4.2844e-5 + 1 / (0.157 * (t + 64.993) ** 2 - 91.296);
  return pure * (1 + polynomial(VISCOSITY_A, t) * salt + polynomial(VISCOSITY_B, t) * salt * salt);
}

/**
 * Pressure at which sea water boils, Pa.
 *
 *   p = p_fresh / (1 + 0.57357 S/(1000 - S)),   S in g/kg
 *
 * Source   Raoult's law as in Sharqawy, Lienhard & Zubair, Desalination and Water Treatment 16 (2010) 354.
 * Range    practical salinity 0 to 42, -2 to 40 °C.
 * Error    0.1 % relative.
 * Throws   OutOfDomain.
 *
 * @example seaWaterVapourPressure({ temperature: 288.15, salinity: 35 }) // 1670.8 Pa
 */
export function seaWaterVapourPressure(water: SeaWater): number {
  const salt = checked(water).S * ABSOLUTE_SALINITY;
  return saturationPressure(water.temperature) / (1 + (0.57357 * salt) / (1000 - salt));
}

/**
 * Temperature at which sea water freezes at one atmosphere, °C, for a practical salinity.
 *
 *   t_f = a S + b S^1.5 + c S²
 *
 * Source   Millero, in Fofonoff & Millard, Unesco Technical Papers in Marine Science 44 (1983), p. 30.
 * Range    practical salinity 0 to 42 (the source measured 4 to 40).
 * Error    0.004 °C.
 * Throws   OutOfDomain.
 */
export function freezingPoint(salinity: number): number {
  const S = within(salinity, 0, GREATEST_SALINITY, "practical salinity", "");
  const [a, b, c] = FREEZING;
  return a * S + b * S ** 1.5 + c * S * S;
}

function checked({ temperature, salinity }: SeaWater): { t: number; S: number } {
  return {
    t: celsiusWithin(temperature, RANGE, "sea water"),
    S: within(salinity, 0, GREATEST_SALINITY, "practical salinity", ""),
  };
}

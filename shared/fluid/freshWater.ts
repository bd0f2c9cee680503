import { CELSIUS_ZERO } from "../quantity/constants.ts";
import { type CelsiusRange, celsiusWithin } from "./celsius.ts";
import { SATURATION, VISCOSITY, VOLUME_A, VOLUME_B, VOLUME_CONSTANT, WATER_GAS_CONSTANT } from "./freshWater.data.ts";

/** From the ice point to well above any test tank; the release itself allows -20 to 110 °C. */
const LIQUID: CelsiusRange = { low: 0, high: 60 };
/** Sea water stays liquid a little below the ice point, and its vapour pressure rests on that of pure water there. */
const SATURATED: CelsiusRange = { low: -2, high: 60 };

/** Temperature and pressure that the release's α, β and v are scaled with. */
const SCALE_TEMPERATURE = 10;
const SCALE_PRESSURE = 1e5;

/**
 * Density of pure liquid water at 0.1 MPa, kg/m³, from its temperature in K.
 *
 *   1/ρ = v = (R T_R / p_0) [a_5 + Σ a_i α^n_i + Σ b_i β^m_i],   α = T_R/(593 - T), β = T_R/(T - 232)
 *
 * Source   IAPWS SR6-08(2011), eq. 2.
 * Assumes  0.1 MPa: at 10 m depth the density is 0.005 % higher. Tap water is up to 0.1 % denser by what it holds.
 * Range    0 to 60 °C.
 * Error    below 1e-6 relative against IAPWS-95.
 * Throws   OutOfDomain `fluid.temperature-out-of-range`.
 *
 * @example freshWaterDensity(298.15) // 997.0470 kg/m³
 */
export function freshWaterDensity(temperature: number): number {
  const T = liquid(temperature, LIQUID);
  const alpha = SCALE_TEMPERATURE / (593 - T);
  const beta = SCALE_TEMPERATURE / (T - 232);
  const sum = VOLUME_CONSTANT + powerSum(VOLUME_A, alpha) + powerSum(VOLUME_B, beta);
  return SCALE_PRESSURE / (WATER_GAS_CONSTANT * SCALE_TEMPERATURE * sum);
}

/**
 * Dynamic viscosity of pure liquid water at 0.1 MPa, Pa·s, from its temperature in K.
 *
 *   μ = 10⁻⁶ Σ a_i (T / 300 K)^b_i
 *
 * Source   IAPWS SR6-08(2011), eq. 7.
 * Range    0 to 60 °C.
 * Error    1 % relative.
 * Throws   OutOfDomain `fluid.temperature-out-of-range`.
 *
 * @example freshWaterViscosity(298.15) // 8.89997e-4 Pa·s
 */
export function freshWaterViscosity(temperature: number): number {
  return 1e-6 * powerSum(VISCOSITY, liquid(temperature, LIQUID) / 300);
}

/**
 * Pressure at which pure water boils, Pa, from its temperature in K.
 *
 *   p = 10⁶ [2C / (-B + sqrt(B² - 4AC))]⁴,   A, B, C quadratic in θ = T + n_9/(T - n_10)
 *
 * Source   IAPWS R7-97(2012), eq. 30.
 * Range    -2 to 60 °C; below 0 °C the formula is carried on for undercooled water, as sea water needs it.
 * Error    0.03 % relative.
 * Throws   OutOfDomain `fluid.temperature-out-of-range`.
 *
 * @example saturationPressure(300) // 3536.58941 Pa
 */
export function saturationPressure(temperature: number): number {
  const T = liquid(temperature, SATURATED);
  const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = SATURATION;
  const theta = T + n9 / (T - n10);
  const A = theta ** 2 + n1 * theta + n2;
  const B = n3 * theta ** 2 + n4 * theta + n5;
  const C = n6 * theta ** 2 + n7 * theta + n8;
  return 1e6 * ((2 * C) / (-B + Math.sqrt(B * B - 4 * A * C))) ** 4;
}

function liquid(temperature: number, range: CelsiusRange): number {
  return celsiusWithin(temperature, range, "fresh water") + CELSIUS_ZERO;
}

function powerSum(terms: readonly (readonly [coefficient: number, power: number])[], x: number): number {
  return terms.reduce((sum, [coefficient, power]) => sum + coefficient * x ** power, 0);
}

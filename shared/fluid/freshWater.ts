import { within } from "../quantity/domain.ts";
import { CELSIUS_ZERO } from "../quantity/constants.ts";
import {
  SATURATION,
  VISCOSITY,
  VOLUME_A,
  VOLUME_B,
  VOLUME_CONSTANT,
  WATER_GAS_CONSTANT,
} from "./freshWater.data.ts";

/** Liquid water that a thruster may be run in: from the ice point to well above any test tank, K. */
export const FRESH_WATER_RANGE = { low: CELSIUS_ZERO, high: CELSIUS_ZERO + 60 } as const;

/**
 * Density of pure liquid water at 0.1 MPa, kg/m³, from its temperature in K.
 *
 * Source   IAPWS SR6-08(2011), eq. 2.
 * Assumes  0.1 MPa: at 10 m depth the density is 0.005 % higher. Tap water is up to 0.1 % denser by what is dissolved.
 * Range    273.15 to 333.15 K here; the release allows 253.15 to 383.15 K.
 * Error    1e-6 relative (0 to 60 °C), as stated in the release.
 * Throws   OutOfDomain outside the range.
 *
 * @example freshWaterDensity(298.15) // 997.0470 kg/m³
 */
export function freshWaterDensity(temperature: number): number {
  const T = inRange(temperature);
  const alpha = 10 / (593 - T);
  const beta = 10 / (T - 232);
  const sum = VOLUME_CONSTANT + powerSum(VOLUME_A, alpha) + powerSum(VOLUME_B, beta);
  const v = ((WATER_GAS_CONSTANT * 10) / 1e5) * sum;
  return 1 / v;
}

/**
 * Dynamic viscosity of pure liquid water at 0.1 MPa, Pa·s, from its temperature in K.
 *
 * Source   IAPWS SR6-08(2011), eq. 7.
 * Range    273.15 to 333.15 K here; the release allows 253.15 to 383.15 K.
 * Error    1 % relative, as stated in the release.
 * Throws   OutOfDomain outside the range.
 *
 * @example freshWaterViscosity(298.15) // 8.89997e-4 Pa·s
 */
export function freshWaterViscosity(temperature: number): number {
  return 1e-6 * powerSum(VISCOSITY, inRange(temperature) / 300);
}

/**
 * Saturation pressure of pure water, Pa, from its temperature in K.
 *
 * Source   IAPWS R7-97(2012), eq. 30.
 * Range    273.15 to 333.15 K here; the formula holds to the critical point.
 * Error    0.03 % relative, as stated in the release.
 * Throws   OutOfDomain outside the range.
 *
 * @example saturationPressure(300) // 3536.58941 Pa
 */
export function saturationPressure(temperature: number): number {
  const T = inRange(temperature);
  const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = SATURATION;
  const theta = T + n9 / (T - n10);
  const A = theta ** 2 + n1 * theta + n2;
  const B = n3 * theta ** 2 + n4 * theta + n5;
  const C = n6 * theta ** 2 + n7 * theta + n8;
  return 1e6 * ((2 * C) / (-B + Math.sqrt(B * B - 4 * A * C))) ** 4;
}

function inRange(temperature: number): number {
  return within(temperature, FRESH_WATER_RANGE.low, FRESH_WATER_RANGE.high, "water temperature", "K");
}

function powerSum(terms: readonly (readonly [number, number])[], x: number): number {
  return terms.reduce((sum, [coefficient, power]) => sum + coefficient * x ** power, 0);
}

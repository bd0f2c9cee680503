import { finite } from "../quantity/domain.ts";

/** Relative rise of the resistance of annealed copper per kelvin at 20 °C, 1/K. IEC 60028:1925, International Standard of Resistance for Copper (0.00393). */
const COPPER_TEMPERATURE_COEFFICIENT = 0.003_93;

/**
 * Rise of the mean temperature of a copper winding, K, whose resistance rose by the part `resistanceRise`.
 *
 *   ΔT = (R/R_0 − 1) / α,   α = 0.00393 1/K at 20 °C
 *
 * Source   IEC 60028:1925; the resistance method of IEC 60034-1, 8.6.2.
 * Assumes  a cold winding near 20 °C; at 40 °C α is 7 % smaller.
 * Throws   OutOfDomain for a rise that is not finite.
 *
 * @example windingTemperatureRise(0.393) // 100 K
 */
export function windingTemperatureRise(resistanceRise: number): number {
  return finite(resistanceRise, "relative rise of the resistance", "1") / COPPER_TEMPERATURE_COEFFICIENT;
}

/** Annealed copper, the conductor of windings, leads and tethers. */

/** Resistivity at 20 °C, Ω·m: 1/58 Ω·mm²/m. IEC 60028:1925, International Standard of Resistance for Copper. */
export const COPPER_RESISTIVITY = 1e-6 / 58;

/** Relative rise of the resistance per kelvin at 20 °C, 1/K. IEC 60028:1925 (0.00393). */
export const COPPER_TEMPERATURE_COEFFICIENT = 0.003_93;

/** 20 °C, K, to which both belong. */
export const COPPER_REFERENCE_TEMPERATURE = 293.15;

/**
 * Resistance of copper at `temperature` (K) over that at 20 °C.
 *
 *   R/R_20 = 1 + 0.00393 (T − 293.15 K)
 *
 * Source   IEC 60028:1925.
 * Assumes  constant mass, temperatures at which copper conductors work.
 *
 * @example copperResistanceRatio(353.15) // 1.2358
 */
export function copperResistanceRatio(temperature: number): number {
  return 1 + COPPER_TEMPERATURE_COEFFICIENT * (temperature - COPPER_REFERENCE_TEMPERATURE);
}

import { nonNegative, positive } from "../../quantity/domain.ts";

export interface KellerPropeller {
  /** Thrust of the blades, N. */ readonly thrust: number;
  readonly blades: number;
  /** Diameter over the blade tips, m. */ readonly diameter: number;
  /** Pressure at the shaft less vapour pressure, Pa. */ readonly pressureOverVapour: number;
  /** k. */ readonly allowance: number;
}

/** Allowances for uneven inflow and the ships they were stated for. Source as `kellerAreaRatio`. */
export const KELLER_ALLOWANCES = [
  { allowance: 0, meaning: "even inflow: fast vessel with two shafts, a thruster in free water" },
  { allowance: 0.1, meaning: "other vessels with two shafts" },
  { allowance: 0.2, meaning: "one shaft behind a hull" },
] as const;

/**
 * Least expanded area ratio against cavitation.
 *
 *   A_E/A_0 = (1.3 + 0.3 Z) T / ((p_0 - p_v) D²) + k
 *
 * Source   J. auf'm Keller, Enige aspecten bij het ontwerpen van scheepsschroeven, Schip en Werf 33 (1966); in Holtrop
 *          & Mennen, An approximate power prediction method, International Shipbuilding Progress 29 (1982) 166.
 * Assumes  ship propellers at their design speed: the rule holds no tip speed, so at bollard it can be the milder of
 *          two.
 * Range    all greater than 0, the allowance 0 to 0.2.
 * Throws   OutOfDomain for other input.
 */
export function kellerAreaRatio({ thrust, blades, diameter, pressureOverVapour, allowance }: KellerPropeller): number {
  const T = positive(thrust, "thrust", "N");
  const D = positive(diameter, "diameter", "m");
  const p = positive(pressureOverVapour, "pressure over the vapour pressure", "Pa");
  const k = nonNegative(allowance, "allowance", "");
  return ((1.3 + 0.3 * positive(blades, "number of blades", "")) * T) / (p * D * D) + k;
}

import { COPPER_TEMPERATURE_COEFFICIENT, copperResistanceRatio } from "../quantity/copper.ts";
import { finite, nonNegative } from "../quantity/domain.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";

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

/**
 * Relative rise of a copper resistance per kelvin, 1/K, referred to its value at `temperature` (K).
 *
 *   α(T_0) = α_20 / (1 + α_20 (T_0 − 293.15 K)),   α_20 = 0.00393 1/K
 *
 * Source   IEC 60028:1925: R is linear in T, so only the value it is divided by changes.
 *
 * @example copperCoefficientAt(313.15) // 0.003644 1/K
 */
export function copperCoefficientAt(temperature: number): number {
  return COPPER_TEMPERATURE_COEFFICIENT / copperResistanceRatio(temperature);
}

/** What heats and cools a winding. */
export interface WindingInSurroundings {
  /** R_0, Ω. */ readonly resistance: number;
  /** T_0, temperature that R_0 belongs to, K. */ readonly resistanceTemperature: number;
  /** T_w, K. */ readonly surroundings: number;
  /** R_th, from winding to surroundings, K/W. */ readonly thermalResistance: number;
}

/** Resistance, Ω, at the temperature of the surroundings (K), of a winding of `resistance` (Ω) at its own. Source as `copperCoefficientAt`. */
export function coldResistance(
  { resistanceTemperature, surroundings }: Omit<WindingInSurroundings, "resistance">,
  resistance: number,
): number {
  return resistance * (1 + copperCoefficientAt(resistanceTemperature) * (surroundings - resistanceTemperature));
}

/** Rise of the resistance per watt of heat, h = α R_th R_0, Ω/W, of a winding of `resistance` (Ω). */
export function resistancePerHeat(
  { resistanceTemperature, thermalResistance }: Omit<WindingInSurroundings, "resistance">,
  resistance: number,
): number {
  return copperCoefficientAt(resistanceTemperature) * thermalResistance * resistance;
}

/**
 * Steady resistance of a winding that heats itself, Ω; infinite where no steady temperature exists. Positional, for inner
 * loops: resistance at the temperature of the surroundings (Ω), its rise per watt (Ω/W), other heat (W), current (A).
 *
 *   R = R_w + h (I² R + P),   so R = (R_w + h P)/(1 − h I²),   h = α R_th R_0
 *
 * At h I² = 1 each kelvin brings its own heat: the temperature runs away.
 *
 * Source   the steady balance of `steadyWinding`, solved for R; any text on heat transfer for R_th.
 */
export function heatedResistance(cold: number, perHeat: number, otherHeat: number, current: number): number {
  const held = 1 - perHeat * current * current;
  return held > 0 ? (cold + perHeat * otherHeat) / held : Number.POSITIVE_INFINITY;
}

/** Current, A, from which on no steady winding temperature exists: 1/sqrt(α R_th R_0); infinite without heating. */
export function runawayCurrent(winding: WindingInSurroundings): number {
  return 1 / Math.sqrt(resistancePerHeat(winding, winding.resistance));
}

export interface SteadyWinding {
  /** T, K. */ readonly temperature: number;
  /** R_m(T), Ω. */ readonly resistance: number;
  /** I² R_m(T), W. */ readonly loss: number;
}

/**
 * Steady temperature of a copper winding that carries `current` (A), next to a core and friction loss (W).
 *
 *   T = T_w + R_th (I² R_m(T) + P_f),   R_m(T) = R_0 (1 + α (T − T_0)),   α referred to T_0
 *
 * Both are linear in T: closed form.
 *
 * Source   heat balance with one thermal resistance; IEC 60028:1925 for copper.
 * Assumes  the whole winding at one temperature; loss in the water of a flooded motor does not pass through the winding.
 * Range    currents below `runawayCurrent`.
 * Throws   OutOfDomain `motor.thermal-runaway` at and above it, and for input that is not physical.
 *
 * @example steadyWinding({ resistance: 0.1, resistanceTemperature: 293.15, surroundings: 293.15, thermalResistance: 0 }, { current: 20, otherLoss: 0 }).loss // 40 W
 */
export function steadyWinding(
  winding: WindingInSurroundings,
  { current, otherLoss }: { readonly current: number; readonly otherLoss: number },
): SteadyWinding {
  nonNegative(winding.resistance, "winding resistance", "Ω");
  nonNegative(winding.thermalResistance, "thermal resistance", "K/W");
  nonNegative(otherLoss, "core and friction loss", "W");
  const cold = nonNegative(coldResistance(winding, winding.resistance), "resistance in the surroundings", "Ω");
  const resistance = heatedResistance(
    cold,
    resistancePerHeat(winding, winding.resistance),
    otherLoss,
    finite(current, "current", "A"),
  );
  if (!Number.isFinite(resistance)) throw runaway(winding, current);
  const loss = current * current * resistance;
  return { temperature: winding.surroundings + winding.thermalResistance * (loss + otherLoss), resistance, loss };
}

function runaway(winding: WindingInSurroundings, current: number): OutOfDomain {
  const most = formatNumber(runawayCurrent(winding));
  return new OutOfDomain({
    code: "motor.thermal-runaway",
    where: "motor current",
    found: `At ${formatNumber(current)} A the winding has no steady temperature: from ${most} A on each kelvin brings more heat than it carries off`,
    needed: `less than ${most} A for longer than moments`,
    mend: "Cool the motor better, gear it lower, or go by the maker's continuous rating",
  });
}

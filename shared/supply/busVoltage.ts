import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";

export interface Supply {
  /** U_oc, open-circuit voltage, V. */ readonly openCircuitVoltage: number;
  /** R_s, resistance of pack, tether and leads together, Ω. */ readonly resistance: number;
}

/**
 * Greatest power a supply can give, U_oc²/(4 R_s), W, at half the open-circuit voltage; infinite without resistance.
 *
 * Source   maximum power transfer, any circuits text.
 */
export function greatestSupplyPower({ openCircuitVoltage, resistance }: Supply): number {
  return openCircuitVoltage ** 2 / (4 * resistance);
}

/**
 * Voltage of a supply that delivers a given power, V; null where it collapses. Positional and without checks, for inner
 * loops: open-circuit voltage (V), resistance (Ω, 0 or more), power (W).
 *
 *   U² − U_oc U + R_s P = 0,   U = (U_oc + sqrt(U_oc² − 4 R_s P))/2
 *
 * Of the two roots the one above U_oc/2 is taken: it is where a load that is switched on arrives.
 *
 * Source   Kirchhoff's voltage law; maximum power transfer, any circuits text.
 * Assumes  a linear source: constant open-circuit voltage and resistance at this state of charge and temperature.
 *
 * @example voltageUnderPower(16, 0.15, 100) // 15 V
 */
export function voltageUnderPower(openCircuitVoltage: number, resistance: number, power: number): number | null {
  const discriminant = openCircuitVoltage * openCircuitVoltage - 4 * resistance * power;
  return discriminant < 0 ? null : (openCircuitVoltage + Math.sqrt(discriminant)) / 2;
}

/** The refusal for a load, told in words, that is more than the supply can carry. */
export function supplyCollapse(supply: Supply, load: string): OutOfDomain {
  return new OutOfDomain({
    code: "supply.collapse",
    where: "supply",
    found: `The supply collapses under ${load}: the most that ${formatNumber(supply.openCircuitVoltage)} V behind ${formatNumber(supply.resistance)} Ω can give is ${formatNumber(greatestSupplyPower(supply))} W`,
    needed: "a load below that",
    mend: "Use a pack or lead of lower resistance, or ask for less power",
  });
}

import type { Pack } from "../model/parts/pack.ts";
import { CELSIUS_ZERO } from "../quantity/constants.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { cellVoltage } from "./chargeCurve.ts";

/** How a pack stands. */
export interface PackCondition {
  /** Share of the charge that is left; absent: as when its voltage was stated. */ readonly charge?: number;
  /** Temperature, K; 20 °C if absent. */ readonly temperature?: number;
}

export interface PackState {
  /** U_oc, V. */ readonly openCircuitVoltage: number;
  /** Ω. */ readonly resistance: number;
  readonly uncertainties: {
    /** V. */ readonly openCircuitVoltage: number;
    /** Ω. */ readonly resistance: number;
  };
  readonly warnings: readonly Warning[];
}

/** Temperature, K, that the stated resistance is taken to belong to, and the fall that doubles it. */
const COLD = { from: CELSIUS_ZERO + 20, doubling: 25 } as const;
/** Standard uncertainty of the growth of the resistance in the cold, of that growth. Common practice, no source. */
const COLD_DOUBT = 0.4;
/** Standard uncertainty of a change of voltage that a common curve gives, of that change. Common practice, no source. */
const CURVE_DOUBT = 0.1;
/** Distance of the stated voltage from the curve, V a cell, from which another chemistry is likely. */
const OTHER_CHEMISTRY = 0.25;
/** Below this, K, a pack without cells stated is likely weaker than its numbers. */
const COOL = CELSIUS_ZERO + 10;

/**
 * Open-circuit voltage and resistance of a pack at its charge and temperature.
 *
 *   U_oc = U_stated + n_s (OCV(s) − OCV(s_stated)),   R = R_stated 2^((20 °C − t)/25 K) below 20 °C
 *
 * The resistance about doubles from 25 to 0 °C (common practice, no source); a gain above 20 °C is not counted on.
 *
 * Source   OCV as `cellVoltage`.
 * Assumes  cells alike and rested; resistance that does not change with the charge, though near empty it rises. A
 *          resistance that holds leads too grows as a whole: the cold side is told too high by their part.
 * Range    charge 0 to 1; below freezing the law is carried on, and flagged. Without cells the numbers are as stated.
 * Error    the growth in the cold to 40 % of itself, the change of voltage by a common curve to 10 % of itself (standard
 *          uncertainties; common practice, no source); both are in `uncertainties`.
 * Throws   as `cellVoltage`.
 */
export function packState(pack: Pack, condition: PackCondition = {}): PackState {
  const { openCircuitVoltage, resistance, cells, uncertainties = {} } = pack;
  const stated = { voltage: uncertainties.openCircuitVoltage ?? 0, resistance: uncertainties.resistance ?? 0 };
  if (cells === undefined) {
    return {
      ...{ openCircuitVoltage, resistance },
      uncertainties: { openCircuitVoltage: stated.voltage, resistance: stated.resistance },
      warnings: withoutCells(condition),
    };
  }
  const { charge = cells.statedCharge, temperature = COLD.from } = condition;
  const atStated = cellVoltage(cells.statedCharge, cells.curve);
  const change = cells.series * (cellVoltage(charge, cells.curve) - atStated);
  const growth = coldGrowth(temperature);
  return {
    openCircuitVoltage: openCircuitVoltage + change,
    resistance: resistance * growth,
    uncertainties: {
      openCircuitVoltage: Math.hypot(stated.voltage, cells.curve === undefined ? CURVE_DOUBT * change : 0),
      resistance: Math.hypot(stated.resistance * growth, resistance * COLD_DOUBT * (growth - 1)),
    },
    warnings: [...otherChemistry(openCircuitVoltage / cells.series, atStated), ...freezing(temperature, growth)],
  };
}

/** R over R at 20 °C; 1 above. */
function coldGrowth(temperature: number): number {
  return temperature < COLD.from ? 2 ** ((COLD.from - temperature) / COLD.doubling) : 1;
}

function withoutCells({ charge, temperature }: PackCondition): Warning[] {
  if (charge === undefined && (temperature === undefined || temperature >= COOL)) return [];
  return [
    warning({
      code: "supply.no-cells",
      where: "pack.cells",
      found: `The cells of the pack are not stated, so that its ${charge === undefined ? "resistance does not grow in the cold" : "voltage does not follow the charge"}`,
      needed: "cells in series and in parallel, and the charge that the stated voltage belongs to",
      mend: "State them with the pack; for a source on the surface nothing is missing",
    }),
  ];
}

function otherChemistry(stated: number, byCurve: number): Warning[] {
  if (Math.abs(stated - byCurve) <= OTHER_CHEMISTRY) return [];
  return [
    warning({
      code: "supply.cell-voltage",
      where: "pack.openCircuitVoltage",
      found: `The stated voltage is ${formatNumber(stated)} V a cell where the curve has ${formatNumber(byCurve)} V at that charge`,
      needed: `a voltage within ${OTHER_CHEMISTRY} V of the curve`,
      mend: "Check the number of cells and the charge it was stated at; for another chemistry give its own curve",
    }),
  ];
}

function freezing(temperature: number, growth: number): Warning[] {
  if (temperature >= CELSIUS_ZERO) return [];
  return [
    warning({
      code: "supply.cold-pack",
      where: "temperature",
      found: `At ${formatNumber(temperature - CELSIUS_ZERO)} °C the resistance of the cells is taken as ${formatNumber(growth, 2)} times that at 20 °C, a rule carried on below freezing`,
      needed: "0 °C or more, where the rule is usual practice",
      mend: "Measure the sag of the cold pack; go by the maker's data, and do not charge lithium cells below freezing",
    }),
  ];
}

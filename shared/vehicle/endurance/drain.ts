import type { CutOff } from "../../model/vehicle/enduranceAnswer.ts";
import { voltageUnderPower } from "../../supply/busVoltage.ts";
import type { Battery } from "./battery.ts";
import { type PowerParts, type PowerTable, partsAt, powerAt, powerOf } from "./powerTable.ts";

/** What a demand draws at every charge at which it can be done. */
export interface Drain {
  /** Powers on the bus against the open-circuit voltage. */ readonly table: PowerTable;
  /** Least share of the charge at which it can be done; that of the battery's floor or above. */ readonly least: number;
  /** Why it can not be done below. */ readonly by: CutOff;
  readonly converged: boolean;
}

/** A battery under a demand, at one charge. */
export interface Draining {
  /** U_oc, V. */ readonly openCircuitVoltage: number;
  /** U, V. */ readonly voltage: number;
  /** I, A. */ readonly current: number;
  /** P, W. */ readonly power: number;
  readonly parts: PowerParts;
}

/**
 * Voltage and current of the bus at a share of the charge, from the power of the demand there.
 *
 *   U = (U_oc + sqrt(U_oc² − 4 R_s P))/2,   I = P/U
 */
export function drainingAt({ openCircuitVoltage, resistance }: Battery, { table }: Drain, share: number): Draining {
  const U_oc = openCircuitVoltage(share);
  const parts = partsAt(table, U_oc);
  const power = powerOf(parts);
  const voltage = loaded(U_oc, resistance, power);
  return { openCircuitVoltage: U_oc, voltage, current: power / voltage, power, parts };
}

/** The current alone, A. */
export function currentAt({ openCircuitVoltage, resistance }: Battery, { table }: Drain, share: number): number {
  const U_oc = openCircuitVoltage(share);
  const power = powerAt(table, U_oc);
  return power / loaded(U_oc, resistance, power);
}

/** At the very edge of a collapse rounding may pass it: the voltage is half there. */
const loaded = (openCircuitVoltage: number, resistance: number, power: number) =>
  voltageUnderPower(openCircuitVoltage, resistance, power) ?? openCircuitVoltage / 2;

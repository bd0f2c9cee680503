import type { Reduction } from "../../../shared/model/reduction.ts";
import { formatUncertain } from "../../../shared/quantity/format.ts";
import { placeInWords } from "./plateausModel.ts";
import { NEWTON } from "./shownUnits.ts";

export interface TareRow {
  readonly name: string;
  readonly where: string;
  /** Reading of the scale there, calibrated. */
  readonly reading: string;
}

export function tareRows({ tare }: Reduction, hasClock: boolean): TareRow[] {
  return tare.windows.map(({ start, end, thrust }, index) => ({
    name: `Tare ${index + 1}`,
    where: placeInWords({ start, end }, hasClock),
    reading: formatUncertain(thrust, NEWTON),
  }));
}

/** Why a window can not be added: its readings would count twice; empty when it can. */
export function windowGap(windows: Reduction["tare"]["windows"], span: { start: number; end: number }): string {
  if (span.end < span.start) return "The end must come after the start.";
  const index = windows.findIndex((one) => span.start <= one.end && span.end >= one.start);
  return index < 0 ? "" : `It overlaps tare ${index + 1}: move its edge instead.`;
}

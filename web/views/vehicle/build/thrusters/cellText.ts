import { formatNumber } from "../../../../../shared/quantity/format.ts";
import { requireUnit } from "../../../../../shared/quantity/unit.ts";
import type { Dimension } from "../../../../../shared/quantity/units.data.ts";
import { type Allowed, type ReadText, readText } from "../../../../forms/quantityText.ts";

/** How the cells of one column are written: a bare number is in the unit of its head. */
export interface CellUnit {
  readonly dimension: Dimension;
  readonly unit: string;
}

/** An SI value as it stands in a cell, without its unit. */
export function cellText(si: number, { dimension, unit }: CellUnit): string {
  const text = formatNumber(si / requireUnit(unit, dimension).factor, 6).replace("\u2212", "-");
  return text.includes(".") && !text.includes("e") ? text.replace(/\.?0+$/, "") : text;
}

/** What was written into a cell: "120" in the unit of the column, or "12 cm". */
export function readCell(text: string, { dimension, unit }: CellUnit, allowed: Allowed = {}): ReadText {
  const bare = /^[+\-\u2212]?\d*[.,]?\d+(e[+-]?\d+)?$/i.test(text.trim());
  return readText(bare && unit !== "1" ? `${text.trim()} ${unit}` : text, dimension, allowed);
}

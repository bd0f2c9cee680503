import { leafRefusal } from "../model/parts/leafRefusal.ts";
import { formatNumber } from "../quantity/format.ts";
import { fromSi } from "../quantity/parseQuantity.ts";
import { requireUnit } from "../quantity/unit.ts";
import { siOfDecimal } from "./exactNumber.ts";
import type { TableField } from "./tableFields.ts";

/** A unit that the numbers of a column may be in. */
export interface UnitReading {
  readonly unit: string;
  /** What the numbers come to then, a sentence. */
  readonly implies: string;
  /** All of them are of usual size. */
  readonly usual: boolean;
}

/** Supply at which a speed constant is told as a speed, V. */
const TOLD_AT = 12;

/**
 * Units in which all of these numbers are values that the part can have; all that there are where none fits.
 * `numbers`: as written, without unit.
 */
export function unitReadings(field: TableField, numbers: readonly string[]): UnitReading[] {
  const { units, written } = field;
  if (written === null || written.dimension === "number") return [];
  const all = (units ?? [written.unit]).map((unit) => readingIn(field, unit, numbers));
  const possible = all.filter(({ allowed }) => allowed);
  return (possible.length > 0 ? possible : all).map(({ unit, implies, usual }) => ({ unit, implies, usual }));
}

function readingIn(
  field: TableField,
  unit: string,
  numbers: readonly string[],
): UnitReading & { readonly allowed: boolean } {
  const dimension = field.written!.dimension;
  const values = numbers.map((text) =>
    siOfDecimal(text.replace(",", ".").replaceAll("\u2212", "-"), requireUnit(unit, dimension)),
  );
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const usual = field.usual === undefined || (low >= field.usual[0] && high <= field.usual[1]);
  return {
    unit,
    implies: `${rangeText(field, low, high)}${speedText(field, low, high)}: ${verdict(field, usual)}`,
    usual,
    allowed: values.every((value) => leafRefusal(field.schema, value) === null),
  };
}

function verdict({ usual: range, ...field }: TableField, isUsual: boolean): string {
  if (range === undefined) return "possible.";
  if (isUsual) return "usual.";
  return `unusual; most are ${rangeText(field, range[0], range[1])}.`;
}

function rangeText({ written }: Pick<TableField, "written">, low: number, high: number): string {
  const unit = requireUnit(written!.unit, written!.dimension);
  const [a, b] = [low, high].map((value) => formatNumber(fromSi(value, unit)));
  return `${a === b ? a : `${a} to ${b}`} ${unit.symbol}`;
}

function speedText({ key }: TableField, low: number, high: number): string {
  if (key !== "speedConstant") return "";
  const [a, b] = [low, high].map((value) => formatNumber((value * TOLD_AT * 60) / (2 * Math.PI)));
  return `, ${a === b ? a : `${a} to ${b}`} rpm without load at ${TOLD_AT} V`;
}

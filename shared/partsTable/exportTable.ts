import Papa from "papaparse";
import { valueAt } from "../model/parts/partValues.ts";
import { requireUnit } from "../quantity/unit.ts";
import { decimalOfSi } from "./exactNumber.ts";
import { guardedText } from "./guardedText.ts";
import { textOfList } from "./listText.ts";
import { headOf, type TableField, type TableKind, tableFields, unitOfHead } from "./tableFields.ts";

type Plain = Readonly<Record<string, unknown>>;

/**
 * Parts of one kind as comma-separated text (RFC 4180): a head with units, a row for each part, and a column for each
 * value that any of them has. Read again by `previewTable` it gives the same parts, bit for bit. Texts that a
 * spreadsheet would run as a formula get an apostrophe in front.
 */
export function exportTable(kind: TableKind, parts: readonly Plain[]): string {
  const fields = tableFields(kind).filter(
    ({ key, optional }) => (!optional && !key.includes(".")) || parts.some((part) => valueAt(part, key) !== undefined),
  );
  const rows = parts.map((part) => fields.map((field) => cellOf(field, valueAt(part, field.key))));
  return `\uFEFF${Papa.unparse([fields.map(headOf), ...rows], { newline: "\r\n" })}\r\n`;
}

function cellOf(field: TableField, value: unknown): string {
  if (value === undefined) return "";
  if (value === null) return "none";
  switch (field.type) {
    case "text":
      return guardedText(String(value));
    case "yesNo":
      return value ? "yes" : "no";
    case "list":
    case "document":
      return guardedText(textOfList(field.key, value));
    default:
      return numberText(field, value as number);
  }
}

/** A number in the unit of the head; with its own unit where that one can not hold it exactly. */
function numberText(field: TableField, value: number): string {
  const unit = unitOfHead(field);
  if (unit === "" || field.written === null) return String(value);
  return decimalOfSi(value, requireUnit(unit, field.written.dimension)) ?? `${value} ${field.unit}`;
}

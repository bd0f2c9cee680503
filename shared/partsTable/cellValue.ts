import { parseQuantity } from "../quantity/parseQuantity.ts";
import { InputProblem } from "../quantity/problem.ts";
import { DIMENSION_NAMES, findUnit, requireUnit } from "../quantity/unit.ts";
import { siOfDecimal } from "./exactNumber.ts";
import { unguardedText } from "./guardedText.ts";
import { listOfText } from "./listText.ts";
import type { TableField } from "./tableFields.ts";

const NOTHING = new Set(["", "-", "–", "—", "?", "n/a", "na", "nan"]);
const NUMBER = /^[+\-\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+\-\u2212]?\d+)?$/i;
/** "1,250" is one and a quarter to some and twelve hundred and fifty to others. */
const EITHER = /^[+\-\u2212]?\d{1,3},\d{3}$/;
const PRICE_MARK = /^(?:[\p{Sc}]|[A-Z]{3}\b)\s*|\s*(?:[\p{Sc}]|[A-Z]{3})$/gu;
const YES = new Set(["yes", "y", "true", "1", "x"]);
const NO = new Set(["no", "n", "false", "0"]);

export interface CellReading {
  /** Unit of a number that stands without one; empty where none is needed. */
  readonly unit: string;
  /** Other cells of the table show that a comma is a decimal mark. */
  readonly decimalComma: boolean;
}

/** Whether a cell says nothing. */
export const isBlank = (cell: string) => NOTHING.has(cell.toLowerCase());

/** Whether a cell is the name of no number: words, which a head and a name are made of. */
export const isWords = (cell: string) => !isBlank(cell) && !/^[+\-\u2212]?[.,]?\d/.test(cell);

/** A number alone, without a unit of its own. */
export const isBareNumber = (cell: string) => NUMBER.test(cell);

/** Whether a comma in this cell can only be a decimal mark. */
export const showsDecimalComma = (cell: string) => NUMBER.test(cell) && cell.includes(",") && !EITHER.test(cell);

/**
 * The value in a cell, SI, unchecked by the schema of the part. A number may carry a unit of its own.
 * Throws InputProblem `parts.either-number`, `parts.not-yes-or-no`, `parts.list-form` or `quantity.*`.
 */
export function cellValue(field: TableField, cell: string, reading: CellReading): unknown {
  if (field.nullable && /^(none|no)$/i.test(cell)) return null;
  switch (field.type) {
    case "text":
      return unguardedText(cell);
    case "yesNo":
      return yesOrNo(cell);
    case "list":
    case "document":
      return listOfText(field.key, unguardedText(cell));
    default:
      return numberIn(field, cell, reading);
  }
}

function numberIn({ key, written, unit: kept }: TableField, cell: string, { unit, decimalComma }: CellReading): number {
  const text = key === "price" ? cell.replace(PRICE_MARK, "") : cell;
  if (EITHER.test(text) && !decimalComma) throw eitherNumber(text);
  if (written === null || written.dimension === "number") return plainNumber(text, kept);
  if (!NUMBER.test(text)) return parseQuantity(text, written.dimension);
  if (unit === "") throw noUnit(text, DIMENSION_NAMES[written.dimension]);
  return siOfDecimal(decimalPoint(text), requireUnit(unit, written.dimension));
}

/** A number that has one unit only, which may stand behind it: "1500 µs", "3:1" is no number. */
function plainNumber(text: string, unit: string): number {
  const bare = unit !== "" && unit !== "1" && text.endsWith(unit) ? text.slice(0, -unit.length).trim() : text;
  if (NUMBER.test(bare)) return Number(decimalPoint(bare));
  return parseQuantity(bare, "number");
}

const decimalPoint = (text: string) => text.replace(",", ".").replaceAll("\u2212", "-");

function yesOrNo(cell: string): boolean {
  const word = cell.toLowerCase();
  if (YES.has(word)) return true;
  if (NO.has(word)) return false;
  throw new InputProblem({
    code: "parts.not-yes-or-no",
    where: "",
    found: `"${cell}" is neither yes nor no`,
    needed: "yes or no",
    mend: "Write one of them, or leave it empty",
  });
}

function eitherNumber(text: string): InputProblem {
  const [whole, rest] = text.split(",");
  return new InputProblem({
    code: "parts.either-number",
    where: "",
    found: `"${text}" can be ${whole}${rest} or ${whole}.${rest}`,
    needed: "a number without thousands marks",
    mend: `Write ${whole}${rest} or ${whole}.${rest}`,
  });
}

function noUnit(text: string, dimension: string): InputProblem {
  return new InputProblem({
    code: "parts.no-unit",
    where: "",
    found: `"${text}" has no unit`,
    needed: dimension,
    mend: "Choose the unit of the column",
  });
}

/** Whether the head of a column names a unit that the field can have. */
export function unitNamed(field: TableField, text: string): string | null {
  const bare = text.trim();
  if (field.written === null || field.written.dimension === "number") return bare === field.unit ? "" : null;
  return findUnit(bare, field.written.dimension)?.symbol ?? null;
}

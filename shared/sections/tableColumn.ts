import type { LogTable } from "../log/logTable.ts";
import { toSi } from "../quantity/parseQuantity.ts";
import { InputProblem } from "../quantity/problem.ts";
import { DIMENSION_NAMES, requireUnit, symbolsOf } from "../quantity/unit.ts";
import type { Dimension } from "../quantity/units.data.ts";

/** A kind of column that a table may hold, by the words people write over it. */
export interface ColumnKind {
  /** What it is, for messages. */ readonly text: string;
  readonly header: RegExp;
  /** `number` needs no unit. */ readonly dimension: Dimension;
  /** A header with unit, for messages. */ readonly example: string;
}

/** "r/R", "c/D", "t/c": one quantity over another, not a quantity and its unit. */
const RATIO = /^\S+\s*\/\s*[RDc]$/;

/** Index of the first column of a kind; -1 if there is none. */
export function columnOf({ shape }: LogTable, { header: pattern, dimension }: ColumnKind): number {
  return shape.columns.findIndex(({ name, header }) => {
    const whole = header.trim();
    if (dimension === "number") return pattern.test(whole) || (!RATIO.test(whole) && pattern.test(name.trim()));
    return !RATIO.test(whole) && pattern.test(name.trim());
  });
}

/**
 * The numbers of the first column of a kind, SI; undefined if there is none.
 * Throws InputProblem `sections.gap` naming the line, or `sections.no-unit`, `quantity.wrong-dimension`.
 */
export function readColumn(table: LogTable, kind: ColumnKind): number[] | undefined {
  const column = columnOf(table, kind);
  if (column < 0) return undefined;
  const { header, unit } = table.shape.columns[column]!;
  const where = `${table.fileName}, column "${header}"`;
  // A header that is a unit by itself ("t", "f", "r") is the letter of the quantity here.
  const written = unit === header.trim() ? null : unit;
  if (written === null && kind.dimension !== "number") throw noUnit(where, kind);
  const measured = kind.dimension === "number" ? null : requireUnit(written!, kind.dimension, where);
  return Array.from(table.columns[column]!, (value, row) => {
    if (Number.isNaN(value)) throw gap(`${table.fileName}, line ${table.lineNumbers[row]}, column "${header}"`);
    return measured ? toSi(value, measured) : value;
  });
}

/** As `readColumn`, of the first of several kinds that is there. Throws `sections.no-column` if none is. */
export function requireColumn(table: LogTable, kinds: readonly ColumnKind[]): { kind: ColumnKind; values: number[] } {
  for (const kind of kinds) {
    const values = readColumn(table, kind);
    if (values) return { kind, values };
  }
  throw noColumn(table, kinds);
}

function noColumn({ fileName, shape }: LogTable, kinds: readonly ColumnKind[]): InputProblem {
  const headers = shape.columns.map(({ header }) => header).filter((header) => header !== "");
  return new InputProblem({
    code: "sections.no-column",
    where: fileName,
    found:
      headers.length === 0
        ? "The table has no header"
        : `No column for ${kinds[0]!.text} among "${headers.join('", "')}"`,
    needed: `a column of ${kinds.map(({ text }) => text).join(" or ")}`,
    mend: `Write over it ${kinds.map(({ example }) => `"${example}"`).join(" or ")}`,
  });
}

function noUnit(where: string, { text, dimension, example }: ColumnKind): InputProblem {
  return new InputProblem({
    code: "sections.no-unit",
    where,
    found: `The header of ${text} has no unit`,
    needed: `${DIMENSION_NAMES[dimension]} in ${symbolsOf(dimension).slice(0, 6).join(", ")}`,
    mend: `Write it in brackets, for example "${example}"`,
  });
}

function gap(where: string): InputProblem {
  return new InputProblem({
    code: "sections.gap",
    where,
    found: "There is no number",
    needed: "a number in each cell",
    mend: "Fill it in or take the row out",
  });
}

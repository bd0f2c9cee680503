import { leafRefusal } from "../model/parts/leafRefusal.ts";
import { InputProblem, type Problem } from "../quantity/problem.ts";
import { cellValue, isBlank } from "./cellValue.ts";
import type { TakenColumn } from "./guessColumns.ts";
import type { TableField } from "./tableFields.ts";
import type { TextRow } from "./tableText.ts";

/** What the cells of a row say of a part. */
export interface RowValues {
  readonly row: number;
  readonly values: readonly (readonly [TableField, unknown])[];
  /** Paths of values that stand in the row and can not be read. */
  readonly unread: readonly string[];
  /** "Header: cell" of the columns that hold no value of the part. */
  readonly others: readonly string[];
  readonly problems: readonly Problem[];
}

export interface RowReading {
  readonly columns: readonly TakenColumn[];
  readonly decimalComma: boolean;
}

/** The values in the cells of a row, and what is wrong in any of them. */
export function rowValues({ line, cells }: TextRow, { columns, decimalComma }: RowReading): RowValues {
  const values: [TableField, unknown][] = [];
  const problems: Problem[] = [];
  const [others, unread]: [string[], string[]] = [[], []];
  for (const column of columns) {
    const { taken, header, unit } = column;
    const cell = cells[column.column] ?? "";
    if (taken === null) {
      if (cell !== "") others.push(`${header}: ${cell}`);
      continue;
    }
    if (taken.type === "text" ? cell === "" : isBlank(cell)) continue;
    const where = `line ${line}, column "${header}"`;
    try {
      const value = cellValue(taken, cell, { unit, decimalComma });
      const refused = value === null ? null : leafRefusal(taken.schema, value);
      if (refused === null) {
        values.push([taken, value]);
        continue;
      }
      problems.push(notAllowed(where, cell, refused));
    } catch (thrown) {
      if (!(thrown instanceof InputProblem)) throw thrown;
      problems.push({ ...thrown.problem, where });
    }
    unread.push(taken.key);
  }
  if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== ""))
    problems.push(moreCells(line, cells.length, columns.length));
  return { row: line, values, unread, others, problems };
}

function notAllowed(where: string, cell: string, refused: string): Problem {
  return {
    code: "parts.not-allowed",
    where,
    found: `"${cell}" can not be`,
    needed: refused.replace(/^Needed: /, "").replace(/\.$/, ""),
    mend: "",
  };
}

function moreCells(line: number, cells: number, heads: number): Problem {
  return {
    code: "parts.more-cells",
    where: `line ${line}`,
    found: `${cells} cells under ${heads} heads`,
    needed: "a head for each cell",
    mend: "A cell that holds the mark between cells needs quotes",
  };
}

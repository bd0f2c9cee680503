import { unitCell } from "../log/headerText.ts";
import { InputProblem } from "../quantity/problem.ts";
import { isBlank, isWords } from "./cellValue.ts";
import { headMatches } from "./headMatch.ts";
import type { TableField } from "./tableFields.ts";
import { noRows, type TextRow, type TextTable } from "./tableText.ts";

/** The head of a table and the rows under it. */
export interface FoundHead {
  readonly heads: readonly string[];
  readonly body: readonly TextRow[];
}

/** Lines above the head: a title, a date. */
const SEARCHED = 10;

/**
 * The row whose cells name most values of the part, with a row of units under it joined to it.
 * Throws InputProblem `parts.no-head` where no row names any, `parts.no-rows` where nothing stands below.
 */
export function foundHead({ rows }: TextTable, fields: readonly TableField[], name: string): FoundHead {
  const named = rows
    .slice(0, SEARCHED)
    .map(({ cells }) => cells.filter((cell) => headMatches(cell, fields).length > 0).length);
  const most = Math.max(...named);
  if (most === 0) throw noHead(name, rows[0]!.cells, fields);
  const at = named.indexOf(most);
  const heads = rows[at]!.cells;
  const next = rows[at + 1];
  const hasUnits = next !== undefined && isRowOfUnits(next.cells);
  const body = rows.slice(at + (hasUnits ? 2 : 1));
  if (body.length === 0) throw noRows(name);
  return { heads: hasUnits ? heads.map((head, i) => withUnit(head, next.cells[i] ?? "")) : heads, body };
}

function isRowOfUnits(cells: readonly string[]): boolean {
  const told = cells.filter((cell) => !isBlank(cell));
  return told.length > 0 && told.every((cell) => isWords(cell) && unitCell(cell) !== undefined);
}

function withUnit(head: string, cell: string): string {
  const unit = unitCell(cell);
  return unit ? `${head} (${unit})` : head;
}

function noHead(name: string, cells: readonly string[], fields: readonly TableField[]): InputProblem {
  const first = cells.filter((cell) => cell !== "").slice(0, 4);
  const wanted = fields.filter(({ optional }) => !optional).map(({ head }) => head);
  return new InputProblem({
    code: "parts.no-head",
    where: name,
    found: `No row names what its columns hold; the first begins with "${first.join('", "')}"`,
    needed: `a row of heads such as ${wanted.slice(0, 4).join(", ")}`,
    mend: "Write it as the first row",
  });
}

import Papa from "papaparse";
import { settleEncoding } from "../log/encoding.ts";
import { InputProblem } from "../quantity/problem.ts";

/** A row of a delimited table, as text. */
export interface TextRow {
  /** Line on which it begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface TextTable {
  readonly delimiter: string;
  readonly rows: readonly TextRow[];
}

const DELIMITERS = ["\t", ";", ",", "|"];
/** More parts than any builder keeps, and what a page can still show. */
const MOST_ROWS = 5000;

/** Text of a file in whatever encoding it came. Throws InputProblem `log.binary` where it is none. */
export function textOfBytes(bytes: Uint8Array, fileName: string): string {
  const { encoding, markLength } = settleEncoding(bytes, fileName);
  return new TextDecoder(encoding).decode(bytes.subarray(markLength));
}

/**
 * The cells of delimited text: commas, semicolons, tabs or bars, quotes as in RFC 4180, so that a cell may hold line
 * breaks. The mark is taken that makes the most cells of rows of one width. Empty rows are left out.
 * Throws InputProblem `parts.no-rows`, `parts.too-long`.
 */
export function textTable(text: string, name: string): TextTable {
  const bare = text.replace(/^\uFEFF/, "");
  const tables = DELIMITERS.filter((mark) => bare.includes(mark)).map((delimiter) => cut(bare, delimiter));
  const best = tables.sort((a, b) => worth(b) - worth(a))[0] ?? cut(bare, ",");
  if (best.rows.length === 0) throw noRows(name);
  if (best.rows.length > MOST_ROWS) throw tooLong(name, best.rows.length);
  return best;
}

function cut(text: string, delimiter: string): TextTable {
  const { data } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  let line = 1;
  const rows = data.map((cells) => {
    const row = { line, cells: cells.map((cell) => cell.trim()) };
    line += 1 + cells.reduce((breaks, cell) => breaks + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0);
    return row;
  });
  return { delimiter, rows: rows.filter(({ cells }) => cells.some((cell) => cell !== "")) };
}

function worth({ rows }: TextTable): number {
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  return Math.max(0, ...[...counts].filter(([width]) => width > 1).map(([width, count]) => count * (width - 1)));
}

export function noRows(name: string): InputProblem {
  return new InputProblem({
    code: "parts.no-rows",
    where: name,
    found: "There is no row of a part",
    needed: "a head with the names of the columns, then a row for each part",
    mend: "Copy the head too, or bring another file",
  });
}

function tooLong(name: string, rows: number): InputProblem {
  return new InputProblem({
    code: "parts.too-long",
    where: name,
    found: `The table has ${rows} rows`,
    needed: `${MOST_ROWS} rows at most`,
    mend: "Split it",
  });
}

/** Readings typed or pasted cell by cell: a head row and rows of text, kept as the person wrote them. */
export interface TypedTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** What a scale, a tachometer and a meter give; every head can be changed. */
export const EMPTY_TABLE: TypedTable = {
  heads: ["rpm", "thrust (gf)", "voltage (V)", "current (A)"],
  rows: Array.from({ length: 5 }, () => ["", "", "", ""]),
};

export function withHead(table: TypedTable, column: number, text: string): TypedTable {
  return { ...table, heads: table.heads.with(column, text) };
}

export function withCell(table: TypedTable, row: number, column: number, text: string): TypedTable {
  const cells = table.rows[row];
  return cells === undefined ? table : { ...table, rows: table.rows.with(row, cells.with(column, text)) };
}

export function withRowAdded(table: TypedTable): TypedTable {
  return { ...table, rows: [...table.rows, table.heads.map(() => "")] };
}

export function withColumnAdded({ heads, rows }: TypedTable): TypedTable {
  return { heads: [...heads, ""], rows: rows.map((row) => [...row, ""]) };
}

/**
 * A block from a spreadsheet laid over the table from the given cell on; the table grows to hold it.
 * `row` -1 is the head row. Pasting words over the first row of numbers replaces the heads.
 */
export function withPasted(table: TypedTable, row: number, column: number, text: string): TypedTable {
  const block = blockOf(text);
  const [first] = block;
  const hasHeads =
    row === 0 && first !== undefined && block.length > 1 && first.every((cell) => !startsLikeNumber(cell));
  const top = hasHeads ? -1 : row;
  const width = Math.max(table.heads.length, ...block.map((cells) => column + cells.length));
  const height = Math.max(table.rows.length, top + block.length);
  const at = (r: number, c: number): string =>
    block[r - top]?.[c - column] ?? (r < 0 ? table.heads[c] : table.rows[r]?.[c]) ?? "";
  const line = (r: number) => Array.from({ length: width }, (_, c) => at(r, c));
  return { heads: line(-1), rows: Array.from({ length: height }, (_, r) => line(r)) };
}

/** Whether pasted text is a block of cells and not one value. */
export function isBlock(text: string): boolean {
  return /[\t\n]/.test(text.trim());
}

/** The table as a text of tab-separated lines; empty rows and columns are left away. */
export function tableText({ heads, rows }: TypedTable): string {
  const columns = heads.map((_, column) => column).filter((column) => rows.some((row) => filled(row[column])));
  const line = (cells: readonly string[]) => columns.map((column) => (cells[column] ?? "").trim()).join("\t");
  return [heads, ...rows.filter((row) => row.some(filled))].map(line).join("\n").concat("\n");
}

/** What is still missing before the table can be kept; empty when nothing is. */
export function tableGap({ heads, rows }: TypedTable): string {
  const used = rows.filter((row) => row.some(filled));
  if (used.length < 3) return "Fill in three rows or more: one a reading.";
  const nameless = heads.findIndex((head, column) => !filled(head) && used.some((row) => filled(row[column])));
  return nameless < 0 ? "" : `Name column ${nameless + 1}, with its unit.`;
}

function blockOf(text: string): string[][] {
  const lines = text.replace(/\r\n?/g, "\n").replace(/\n+$/, "").split("\n");
  return lines.map((cells) => cells.split("\t").map((cell) => cell.trim()));
}

function startsLikeNumber(cell: string): boolean {
  return /^[+\-\u2212]?[.,]?\d/.test(cell);
}

function filled(cell: string | undefined): boolean {
  return cell !== undefined && cell.trim() !== "";
}

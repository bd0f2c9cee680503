import { InputProblem } from "../quantity/problem.ts";
import type { ColumnNature } from "./columnKinds.ts";
import type { Cut, CutRow } from "./delimiterChoice.ts";
import { splitHeader } from "./headerText.ts";
import { rolesNamed } from "./headerWords.ts";
import type { HeadLine } from "./headLines.ts";

/** More columns than any thrust stand has; a picture or a matrix, not a log. */
const MOST_COLUMNS = 256;

/** A table too narrow or too wide, or all of text. */
export function refuseWidth(width: number, natures: readonly ColumnNature[], fileName: string): void {
  if (width === 1) {
    throw new InputProblem({
      code: "log.one-column",
      where: fileName,
      found: "there is one number on each line",
      needed: "two or more columns, such as time and thrust, with a comma, semicolon, tab or blanks between them",
      mend: "Export the log with all its channels; where each reading has a line of its own, have the logger print those of one moment on one line",
    });
  }
  if (width > MOST_COLUMNS) {
    throw new InputProblem({
      code: "log.too-many-columns",
      where: fileName,
      found: `there are ${width} cells on a line`,
      needed: `at most ${MOST_COLUMNS} columns, one row of readings a line`,
      mend: "Turn the table so that each channel is a column",
    });
  }
  if (natures.every(({ kind }) => kind === "text")) throw noNumbers(fileName, []);
}

/** Most rows of a table that lies on its side. */
const MOST_CHANNELS = 12;

/** Names of quantities down the first column and readings along the rows: the table lies on its side. */
export function refuseLyingTable(natures: readonly ColumnNature[], rows: readonly CutRow[], fileName: string): void {
  if (natures[0]!.kind !== "text" || rows.length > MOST_CHANNELS) return;
  const roles = new Set(rows.flatMap(({ cells }) => rolesNamed(splitHeader(cells[0]!).name)[0]?.role ?? []));
  if (roles.size < 2) return;
  throw new InputProblem({
    code: "log.rows-are-channels",
    where: `${fileName}, line ${rows[0]!.line}`,
    found: `the first cells of ${rows.length} rows name quantities ("${rows
      .map(({ cells }) => cells[0]!.trim())
      .join('", "')
      .slice(0, 60)}"): the channels lie in rows`,
    needed: "a column for each channel, and a row for each reading",
    mend: "Turn the table in a spreadsheet (paste it transposed) and export it again",
  });
}

/** Fewest rows of each instrument. */
const FEWEST_TURNS = 3;

/** "SCALE,0.1,345" and "ESC,0.1,2300" in turn: the same column means another thing from row to row. */
export function refuseTaggedRows(natures: readonly ColumnNature[], rows: readonly CutRow[], fileName: string): void {
  if (natures[0]!.kind !== "text") return;
  const counts = new Map<string, number>();
  for (const { cells } of rows) counts.set(cells[0]!.trim(), (counts.get(cells[0]!.trim()) ?? 0) + 1);
  const tags = [...counts].filter(([tag, count]) => count >= FEWEST_TURNS && rolesNamed(tag).length > 0);
  const roles = new Set(tags.map(([tag]) => rolesNamed(tag)[0]!.role));
  if (roles.size < 2 || counts.size > MOST_CHANNELS) return;
  throw new InputProblem({
    code: "log.rows-of-instruments",
    where: `${fileName}, line ${rows[0]!.line}`,
    found: `rows begin with ${tags.map(([tag]) => `"${tag}"`).join(" and ")} in turn: each instrument has rows of its own, with its own meaning of the columns`,
    needed: "a column for each reading, or one file for each instrument",
    mend: "Sort the rows into two files by their first word and give them as two logs of one run",
  });
}

/** "0,00,1500,12,34": with the comma in both uses nobody can tell the cells apart. */
export function refuseCommaTwice(cut: Cut, firstDataLine: number, fileName: string): void {
  if (cut.marks.delimiter !== ",") return;
  const at = cut.rows.findIndex((row) => row.line === firstDataLine);
  const above = cut.rows[at - 1];
  const isWhole = cut.rows[at]!.cells.every((cell) => /^\s*[+-]?\d*\s*$/.test(cell));
  const names = above?.cells.filter((cell) => cell.trim() !== "").length ?? 0;
  if (!above || !isWhole || names < 1 || names >= cut.width || cut.width > 2 * names) return;
  throw new InputProblem({
    code: "log.comma-twice",
    where: `${fileName}, line ${firstDataLine}`,
    found: `${names} names stand above ${cut.width} cells: the comma seems to be the decimal mark and the mark between cells`,
    needed: "another mark between cells, or a decimal point",
    mend: "Export with semicolons or tabs between cells",
  });
}

/** Nothing but blanks. */
export function emptyFile(fileName: string): InputProblem {
  return new InputProblem({
    code: "log.empty",
    where: fileName,
    found: "the file holds no text",
    needed: "rows of numbers",
    mend: "If the logger was still writing, close it and copy the file again",
  });
}

/** What a person stated leaves no row of numbers. */
export function fitsNothing(fileName: string): InputProblem {
  return new InputProblem({
    code: "log.reading-fits-nothing",
    where: fileName,
    found: "read as you chose, no row of numbers is left",
    needed: "marks and lines that fit the text",
    mend: "Go back to what the reader finds by itself, or choose other marks",
  });
}

/** No line is a row of numbers. */
export function noNumbers(fileName: string, lines: readonly HeadLine[]): InputProblem {
  const first = lines.find(({ text }) => text.trim() !== "");
  const shown = first ? `; line ${first.line} reads "${first.text.trim().slice(0, 40)}"` : "";
  return new InputProblem({
    code: "log.no-numbers",
    where: fileName,
    found: `no row of numbers was found${shown}`,
    needed: "a table with one row of readings a line",
    mend: /^[[{]/.test(first?.text.trim() ?? "")
      ? 'If this is JSON, it is cut off or holds no list of readings: write one object a line, such as {"t": 0.1, "thrust": 2.5}, or export as CSV'
      : "Check that this is the log and not its settings or a web page",
  });
}

import type { LogShape } from "../model/log.ts";
import type { LogReading } from "../model/reading.ts";
import { InputProblem } from "../quantity/problem.ts";
import { isUnclearNumber, type Marks } from "./cellText.ts";
import { affixedNumber, type ColumnNature, natureOf } from "./columnKinds.ts";
import { type Cut, type CutRow, chooseCut, cutLines } from "./delimiterChoice.ts";
import type { Encoding } from "./encoding.ts";
import { type FoundHeader, findHeader, namesInCells, statedHeader } from "./headerSearch.ts";
import { splitHeader, unitRatio } from "./headerText.ts";
import { commentMarkOf, type HeadLine, headLines, isRuleOrBlank, withoutCommentMark } from "./headLines.ts";
import {
  emptyFile,
  fitsNothing,
  noNumbers,
  refuseCommaTwice,
  refuseLyingTable,
  refuseTaggedRows,
  refuseWidth,
} from "./layoutRefusals.ts";
import { type NamesInRows, namesInRows } from "./namesInRows.ts";
import type { RepairLedger } from "./repairLedger.ts";
import { provenThousands } from "./thousands.ts";

/** Everything about a log that is settled on its first lines. */
export interface Layout {
  readonly shape: LogShape;
  readonly natures: readonly ColumnNature[];
  /** Cells of the header as they are split in the body, to know it again when the logger restarts. */
  readonly headerCells: readonly string[];
  /** How the cells of the body are read. */
  readonly marks: Marks;
}

/** The first lines of a log. */
export interface Head {
  readonly text: string;
  readonly encoding: Encoding;
  readonly fileName: string;
  /** What a person decided about it. */
  readonly reading: LogReading;
}

/**
 * Settles the layout on the head of a log and notes what had to be repaired there.
 * Throws InputProblem `log.rows-are-channels`, `log.rows-of-instruments`, `log.empty`, `log.no-numbers`, `log.one-column`, `log.too-many-columns`, `log.comma-twice`, and
 * `log.reading-fits-nothing` where what a person stated does not fit the text.
 */
export function settleLayout({ text, encoding, fileName, reading }: Head, ledger: RepairLedger): Layout {
  const lines = headLines(text);
  if (lines.every((line) => line.text.trim() === "")) throw emptyFile(fileName);
  const body = bodyLines(lines, reading, ledger);
  const found = chooseCut(body, reading);
  const isStated = reading.decimalMark !== undefined || reading.thousands !== undefined;
  const proven = found && !isStated ? provenThousands(found) : null;
  const cut = proven ? cutLines(body, proven) : found;
  if (!cut) throw Object.keys(reading).length > 0 ? fitsNothing(fileName) : noNumbers(fileName, lines);
  const wide = withoutTrailingColumn(cut);
  const rows = cut.rows.filter((row) => row.cells.length === cut.width && numbersIn(row, cut.marks) > 0);
  if (rows.length === 0) throw noNumbers(fileName, lines);
  const natures = Array.from({ length: wide }, (_, column) => natureOf(column, rows, cut.marks));
  refuseWidth(wide, natures, fileName);
  const firstDataLine = firstRowOfNumbers(cut, natures).line;
  const above = { lines, firstDataLine, width: wide, delimiter: cut.marks.delimiter };
  const header = headerOf(above, reading, fileName);
  if (!header && Object.keys(reading).length === 0) refuseCommaTwice(cut, firstDataLine, fileName);
  if (!header) refuseLyingTable(natures, rows, fileName);
  if (!header) refuseTaggedRows(natures, rows, fileName);
  const inRows = header ? null : namesInRows(natures, rows);
  noteHead({ lines, cut, header, firstDataLine, natures, inRows }, ledger);
  const shape: LogShape = {
    encoding,
    delimiter: cut.marks.delimiter,
    decimalMark: cut.marks.decimalMark,
    headerLine: header?.line ?? null,
    unitsLine: header?.units?.line ?? null,
    firstDataLine,
    commentMark: firstCommentMark(lines, cut.marks.delimiter),
    columns: describeColumns(header, inRows, natures, rows[0]!),
  };
  const headerRow = cut.rows.find((row) => row.line === header?.line);
  const headerCells = (headerRow?.cells ?? header?.names ?? []).map(foldCell);
  return { shape, natures, headerCells, marks: cut.marks };
}

/** The lines among which rows of numbers are looked for; comment lines without their marks where they are to be read. */
function bodyLines(lines: readonly HeadLine[], reading: LogReading, ledger: RepairLedger): HeadLine[] {
  const first = Math.max(reading.firstDataLine ?? 1, (reading.headerLine ?? 0) + 1);
  const body = lines.filter(({ line }) => line >= first);
  if (!ledger.refuses("log.comment")) return body;
  return body.map(({ text, line }) => ({ line, text: withoutCommentMark(text, reading.delimiter ?? "") }));
}

function headerOf(above: Parameters<typeof findHeader>[0], reading: LogReading, fileName: string): FoundHeader | null {
  if (reading.headerLine === undefined) return findHeader(above);
  if (reading.headerLine === null) return null;
  const stated = statedHeader(above, reading.headerLine);
  if (stated) return stated;
  throw new InputProblem({
    code: "log.reading-fits-nothing",
    where: `${fileName}, line ${reading.headerLine}`,
    found: `the line that was named as the header does not hold ${above.width} names`,
    needed: "a line with a name for each column, above the rows of numbers",
    mend: "Name another line, or go back to what the reader finds by itself",
  });
}

/** Header cells are compared without case and outer blanks. */
export function foldCell(cell: string): string {
  return cell.trim().toLowerCase();
}

/** Columns that hold anything: a last one that is always empty comes from a delimiter at the end of each line. */
function withoutTrailingColumn({ rows, width }: Cut): number {
  if (width < 2) return width;
  const last = rows.filter((row) => row.cells.length === width).map((row) => row.readings[width - 1]!);
  return last.every((reading) => reading.kind === "empty") ? width - 1 : width;
}

/** The first row that has a number, of full width, with nothing but numbers where the columns hold numbers. */
function firstRowOfNumbers({ rows, width, marks }: Cut, natures: readonly ColumnNature[]): CutRow {
  const hasNumbers = (row: CutRow) => row.cells.length === width && numbersIn(row, marks) > 0;
  const fits = (row: CutRow) =>
    hasNumbers(row) &&
    natures.every(({ kind, affix }, column) => kind === "text" || affix || row.readings[column]!.kind !== "text");
  const isMostlyNumbers = (row: CutRow) =>
    row.cells.length === width &&
    numbersIn(row, marks) * 2 > row.readings.filter(({ kind }) => kind !== "empty").length;
  let at = rows.findIndex(fits);
  if (at < 0) at = rows.findIndex(hasNumbers);
  // A damaged cell in the very first row must not turn that row into a header.
  while (at > 0 && isMostlyNumbers(rows[at - 1]!)) at--;
  return rows[at]!;
}

/** How many cells hold numbers, clock times or numbers with text around them. */
function numbersIn({ cells, readings }: CutRow, marks: Marks): number {
  const isNumber = (kind: string, cell: string) =>
    kind === "number" || kind === "clock" || (kind === "text" && affixedNumber(cell, marks) !== undefined);
  return readings.filter(({ kind }, column) => isNumber(kind, cells[column]!)).length;
}

function firstCommentMark(lines: readonly HeadLine[], delimiter: string): string | null {
  for (const { text } of lines) {
    const mark = commentMarkOf(text, delimiter);
    if (mark) return mark;
  }
  return null;
}

function describeColumns(
  header: FoundHeader | null,
  inRows: NamesInRows | null,
  natures: readonly ColumnNature[],
  firstRow: CutRow,
): LogShape["columns"] {
  const inCells = header ? [] : namesInCells(firstRow);
  return natures.map(({ kind, affix }, column) => {
    const text = header?.names[column] ?? (inCells[column] || inRows?.names[column] || "");
    const { name, unit } = splitHeader(text);
    const ofCells = affix && affix.suffix !== "" ? affix.suffix : null;
    const above = header?.units?.cells[column] ?? unit;
    const written = ofCells && disagree(above, ofCells) ? ofCells : (above ?? ofCells ?? inRows?.units[column] ?? null);
    return { header: text, name, unit: kind === "clock" ? "s" : written };
  });
}

/** The instrument itself writes the unit behind its numbers; the header was typed once. */
function disagree(above: string | null, ofCells: string): boolean {
  return above !== null && unitRatio(ofCells, above) !== undefined && unitRatio(ofCells, above) !== 1;
}

interface SettledHead {
  readonly lines: readonly HeadLine[];
  readonly cut: Cut;
  readonly header: FoundHeader | null;
  readonly firstDataLine: number;
  readonly natures: readonly ColumnNature[];
  readonly inRows: NamesInRows | null;
}

function noteHead({ lines, cut, header, firstDataLine, natures, inRows }: SettledHead, ledger: RepairLedger): void {
  const named = new Set([header?.line, header?.units?.line, header?.groupLine]);
  for (const { line, text } of lines) {
    if (line >= firstDataLine) break;
    if (named.has(line)) continue;
    if (commentMarkOf(text, cut.marks.delimiter)) ledger.note("log.comment", line);
    else if (!isRuleOrBlank(text)) ledger.note("log.preamble", line);
  }
  const isNamed = natures.some(({ affix }) => affix !== null && affix.prefix !== "") || inRows?.names.some(Boolean);
  if (!header && !isNamed) ledger.note("log.no-header", firstDataLine);
  if (header?.groupLine) ledger.note("log.header-rows", header.groupLine);
  if (header?.short) ledger.note("log.header-short", header.line, { example: header.names[0]! });
  natures.forEach(({ kind, affix, example }, column) => {
    if (inRows?.words.has(column)) ledger.note("log.names-in-rows", firstDataLine, { example });
    else if (kind === "text" && !isUnclearNumber(example))
      ledger.note("log.text-column", firstDataLine, { column, example });
    if (kind === "clock") ledger.note("log.clock", firstDataLine, { column, example });
    if (affix) ledger.note("log.affix", firstDataLine, { column, example });
    const above = header?.units?.cells[column] ?? splitHeader(header?.names[column] ?? "").unit;
    if (affix && disagree(above, affix.suffix))
      ledger.note("log.unit-disagrees", firstDataLine, { column, example: affix.suffix });
  });
}

import { type CellReading, isUnclearNumber, type Marks } from "./cellText.ts";
import type { ElapsedTime } from "./clockTime.ts";
import { affixedNumber } from "./columnKinds.ts";
import { unitCell, unitRatio } from "./headerText.ts";
import { commentMarkOf, isRuleOrBlank, withoutCommentMark } from "./headLines.ts";
import { foldCell, type Layout } from "./layout.ts";
import { namedOrderOf } from "./namedOrder.ts";
import { readCells } from "./otherDecimals.ts";
import type { ReadingState } from "./readingState.ts";
import type { RepairLedger } from "./repairLedger.ts";
import type { RowStore } from "./rowStore.ts";
import { BLANKS, type SplitLine, splitLines } from "./splitCells.ts";

const PREVIEW_ROWS = 8;

/** Reads any line cell by cell, decides whether it is a row, and notes every repair. */
export class CellReader {
  /** Text of the first rows. */
  readonly preview: string[][] = [];
  /** Rows before which the header stood again. */
  readonly restarts: number[] = [];
  private readonly layout: Layout;
  private readonly marks: Marks;
  private readonly store: RowStore;
  private readonly decimals: Int32Array;
  private readonly ledger: RepairLedger;
  private readonly elapsed: readonly ElapsedTime[];
  private readonly values: Float64Array;
  private readonly namedOrder: ReturnType<typeof namedOrderOf>;
  /** The row in hand holds text in a number's place, and such rows are not wanted. */
  private hasRefusedText = false;

  constructor(layout: Layout, { store, decimals, elapsed, ledger }: ReadingState) {
    this.layout = layout;
    this.marks = layout.marks;
    this.store = store;
    this.decimals = decimals;
    this.ledger = ledger;
    this.elapsed = elapsed;
    this.values = new Float64Array(store.width);
    this.namedOrder = namedOrderOf(layout.natures);
  }

  /** Reads `lines`, the first of which is line `firstLine` of the file; `cut`: the last one has no line end. */
  read(lines: readonly string[], firstLine: number, cut: boolean): void {
    const read = this.ledger.refuses("log.comment") ? this.withoutMarks(lines, firstLine) : lines;
    splitLines(read, this.marks.delimiter).forEach((split, i) => {
      this.readLine(read[i]!, split, firstLine + i, cut && i === read.length - 1);
    });
  }

  /** Comment lines a person wants to be read. */
  private withoutMarks(lines: readonly string[], firstLine: number): string[] {
    return lines.map((line, i) => {
      const bare = withoutCommentMark(line, this.marks.delimiter);
      if (bare !== line) this.ledger.note("log.comment", firstLine + i);
      return bare;
    });
  }

  private readLine(text: string, { cells: written, openQuote }: SplitLine, line: number, cut: boolean): void {
    if (isRuleOrBlank(text)) return;
    if (commentMarkOf(text, this.marks.delimiter)) {
      this.ledger.note("log.comment", line);
      return;
    }
    if (this.isHeader(written)) {
      this.ledger.note("log.repeated-header", line);
      const isRestart = !this.ledger.refuses("log.repeated-header");
      if (isRestart && this.restarts.at(-1) !== this.store.rows) this.restarts.push(this.store.rows);
      return;
    }
    const ordered = cut ? null : (this.namedOrder?.(written) ?? null);
    if (ordered) this.ledger.note("log.cells-by-name", line);
    const cells = ordered ?? written;
    const { readings, otherDecimal } = readCells(cells, this.marks, {
      other: !this.ledger.refuses("log.other-decimals"),
      isNumeric: (column) => this.layout.natures[column]?.kind !== "text",
    });
    if (readings.every(({ kind }) => kind === "empty") || this.isUnitsRow(cells, line)) return;
    const isRow = this.isRow(cells, readings);
    if (otherDecimal !== null && (isRow || this.ledger.refuses("log.other-decimals"))) {
      this.ledger.note("log.other-decimals", line, { example: otherDecimal });
    }
    if (!isRow) {
      this.ledger.note("log.text-line", line, { example: text });
      return;
    }
    if (openQuote) this.ledger.note("log.open-quote", line);
    this.addRow(cells, readings, line, cut);
  }

  private isHeader(cells: readonly string[]): boolean {
    const { headerCells } = this.layout;
    return (
      headerCells.length > 1 &&
      cells.length >= headerCells.length &&
      headerCells.every((cell, i) => cell === foldCell(cells[i]!))
    );
  }

  /** The row of units under a repeated header. */
  private isUnitsRow(cells: readonly string[], line: number): boolean {
    const { columns, unitsLine } = this.layout.shape;
    if (unitsLine === null || this.restarts.at(-1) !== this.store.rows || line <= unitsLine) return false;
    return columns.every(({ unit }, c) => (unitCell(cells[c] ?? "") ?? null) === unit);
  }

  /** A row has a number where numbers belong; text in such a place is forgiven in a line of the right width only. */
  private isRow(cells: readonly string[], readings: readonly CellReading[]): boolean {
    let [numbers, texts] = [0, 0];
    this.layout.natures.forEach(({ kind, affix }, c) => {
      const reading = readings[c];
      if (kind === "text" || !reading) return;
      if (reading.kind === "number" || (reading.kind === "clock" && kind === "clock")) numbers++;
      else if (reading.kind === "text" && affix && affixedNumber(cells[c]!, this.marks)) numbers++;
      else if (reading.kind === "text" || reading.kind === "clock") texts++;
    });
    const wide = cells.length >= this.store.width;
    const isFirstKnown = readings[0]!.kind !== "text";
    return numbers > 0 && (texts === 0 || (wide && (numbers > texts || (numbers === texts && isFirstKnown))));
  }

  private addRow(cells: string[], readings: readonly CellReading[], line: number, cut: boolean): void {
    const { width } = this.store;
    const written = Math.min(cells.length, width);
    const surplus = cells.length > width && readings.slice(width).some(({ kind }) => kind !== "empty");
    if (surplus) this.ledger.note("log.long-row", line);
    else if (cells.length > width && this.marks.delimiter !== BLANKS) this.ledger.note("log.trailing-delimiter", line);
    if (cells.length < width) this.ledger.note("log.short-row", line);
    const isLastCut = cut && cells.length < width;
    if (isLastCut) this.ledger.note("log.cut-line", line);
    const isCut = isLastCut && !this.ledger.refuses("log.cut-line");
    if (this.isLeftOut(cells, surplus)) return;
    this.hasRefusedText = false;
    for (let c = 0; c < width; c++) {
      const isKnown = c < written && !(isCut && c === written - 1);
      this.values[c] = isKnown ? this.valueOf(c, cells[c]!, readings[c]!, line) : Number.NaN;
    }
    if (this.hasRefusedText) return;
    this.store.add(this.values, line);
    if (this.preview.length < PREVIEW_ROWS) this.preview.push(cells.slice(0, width).map((cell) => cell.trim()));
  }

  /** A row of the wrong width that a person does not want in part. */
  private isLeftOut(cells: readonly string[], surplus: boolean): boolean {
    const isShort = cells.length < this.store.width;
    return (isShort && this.ledger.refuses("log.short-row")) || (surplus && this.ledger.refuses("log.long-row"));
  }

  private valueOf(column: number, cell: string, reading: CellReading, line: number): number {
    const { kind, affix } = this.layout.natures[column]!;
    if (kind === "text") {
      if (isUnclearNumber(cell)) this.ledger.note("log.unclear-mark", line, { column, example: cell });
      return Number.NaN;
    }
    if (reading.kind === "number" && kind === "number") {
      if (reading.grouped) this.ledger.note("log.thousands", line, { column, example: cell });
      this.decimals[column] = Math.max(this.decimals[column]!, reading.decimals);
      return reading.value;
    }
    if (reading.kind === "clock" && kind === "clock") {
      this.decimals[column] = Math.max(this.decimals[column]!, reading.clock.decimals);
      return this.elapsed[column]!.secondsAt(reading.clock);
    }
    if (affix) {
      const affixed = affixedNumber(cell, this.marks);
      if (affixed && affixed.affix.prefix === affix.prefix) {
        const ratio = unitRatio(affixed.affix.suffix, affix.suffix);
        if (ratio === 1) return this.valueOf(column, cell, affixed.number, line);
        if (ratio !== undefined) {
          this.ledger.note("log.unit-in-cell", line, { column, example: cell });
          return ratio * this.valueOf(column, cell, affixed.number, line);
        }
      }
    }
    this.noteMissing(column, cell, reading, line);
    return Number.NaN;
  }

  private noteMissing(column: number, cell: string, reading: CellReading, line: number): void {
    if (reading.kind === "empty") this.ledger.note("log.empty-cell", line, { column });
    else if (reading.kind === "missing") this.ledger.note("log.missing-cell", line, { column, example: cell });
    else if (isUnclearNumber(cell)) this.ledger.note("log.unclear-mark", line, { column, example: cell });
    else {
      this.ledger.note("log.text-cell", line, { column, example: cell });
      this.hasRefusedText ||= this.ledger.refuses("log.text-cell");
    }
  }
}

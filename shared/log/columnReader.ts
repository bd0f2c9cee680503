import { type ElapsedTime, readClock } from "./clockTime.ts";
import type { ColumnKind } from "./columnKinds.ts";
import type { Layout } from "./layout.ts";
import type { ReadingState } from "./readingState.ts";
import type { RepairLedger } from "./repairLedger.ts";
import type { RowStore } from "./rowStore.ts";
import { BLANKS } from "./splitCells.ts";

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
const TAB = 9;
const SPACE = 32;
const QUOTE = 34;
const PLUS = 43;
const MINUS = 45;
const ZERO = 48;
/** The longest text of a clock time, blanks included. */
const LONGEST_CLOCK = 48;
const EXPONENT = 101;
const LOWER_CASE = 32;

/** Integers below this one are exact in a double. */
const EXACT = 2 ** 53;

/** Powers of ten that are exact in a double, 10^0 to 10^22. */
const POWERS = Float64Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));

/**
 * Reads plainly regular rows straight from bytes into columns, and stops at the first line that is not one: text in a
 * number's place, quoted text, a row too short or too long, more decimals than seen before. Such lines are for the cell
 * reader, which reads every line that this one reads to the same last bit.
 *
 * A number whose digits make an integer below 2^53 and whose power of ten is at most 22 is one correctly rounded
 * division or product of two exact doubles (Clinger, How to read floating point numbers accurately, PLDI 1990,
 * section 3). Any other number is left to the language's own conversion.
 */
export class ColumnReader {
  /** Where the last call stopped: the start of the first line that it did not read. */
  at = 0;
  /** Line number of that line. */
  line = 1;
  /** Rows read in all. */
  rows = 0;
  private readonly kinds: readonly ColumnKind[];
  private readonly delimiter: number;
  private readonly decimalMark: number;
  private readonly canRead: boolean;

  private readonly store: RowStore;
  private readonly ledger: RepairLedger;
  /** Most decimals written in each column so far. */
  private readonly decimals: Int32Array;
  private readonly elapsed: readonly ElapsedTime[];
  /** Empty cells by column, and the line of the first. */
  private readonly empties: { count: number; line: number }[];
  private readonly trailing = { count: 0, line: 0 };

  constructor({ shape, natures }: Layout, { store, decimals, elapsed, ledger }: ReadingState) {
    this.store = store;
    this.decimals = decimals;
    this.elapsed = elapsed;
    this.ledger = ledger;
    this.kinds = natures.map(({ kind }) => kind);
    this.empties = natures.map(() => ({ count: 0, line: 0 }));
    this.delimiter = shape.delimiter.charCodeAt(0);
    this.decimalMark = shape.decimalMark.charCodeAt(0);
    this.canRead = isRegular({ shape, natures });
  }

  /**
   * Reads whole lines from `from` on; `to` stands behind a line end. Sets `at` and `line`.
   * One long loop on purpose: a call for each cell would cost more than reading its digits.
   */
  read(bytes: Uint8Array, from: number, to: number, firstLine: number): void {
    this.at = from;
    this.line = firstLine;
    if (!this.canRead) return;
    const { store, decimals, kinds, delimiter, decimalMark } = this;
    const width = kinds.length;
    const isBlanks = delimiter === SPACE;
    let [position, line] = [from, firstLine];
    let block = store.block();
    let { columns, lines } = block;
    let row = store.used;
    let size = lines.length;

    nextLine: while (position < to) {
      if (row === size) {
        store.used = row;
        block = store.block();
        ({ columns, lines } = block);
        row = store.used;
        size = lines.length;
      }
      let p = position;
      let byte = bytes[p]!;
      let [numbers, empty] = [0, 0];
      let trailing = false;
      for (let c = 0; c < width; c++) {
        const cellStart = p;
        while (byte === SPACE || (byte === TAB && delimiter !== TAB)) byte = bytes[++p]!;
        let value = Number.NaN;
        if (kinds[c] !== "number") {
          const textStart = p;
          while (byte !== delimiter && byte !== LINE_FEED && byte !== CARRIAGE_RETURN && !(isBlanks && byte === TAB)) {
            if (byte === QUOTE) break nextLine;
            byte = bytes[++p]!;
          }
          if (kinds[c] === "clock") {
            value = this.readClockCell(bytes, textStart, p, c);
            if (Number.isNaN(value)) break nextLine;
            numbers++;
          }
        } else {
          const isQuoted = byte === QUOTE;
          if (isQuoted) {
            if (p !== cellStart && !isBlanks) break nextLine;
            byte = bytes[++p]!;
          }
          const start = p;
          const isNegative = byte === MINUS;
          if (isNegative || byte === PLUS) byte = bytes[++p]!;
          const digitsStart = p;
          let mantissa = 0;
          let digit = byte - ZERO;
          while (digit >= 0 && digit <= 9) {
            mantissa = mantissa * 10 + digit;
            byte = bytes[++p]!;
            digit = byte - ZERO;
          }
          let digits = p - digitsStart;
          let scale = 0;
          if (byte === decimalMark && (byte !== delimiter || isQuoted)) {
            const fractionStart = p + 1;
            byte = bytes[++p]!;
            digit = byte - ZERO;
            while (digit >= 0 && digit <= 9) {
              mantissa = mantissa * 10 + digit;
              byte = bytes[++p]!;
              digit = byte - ZERO;
            }
            scale = p - fractionStart;
            digits += scale;
          }
          if (digits > 0) {
            if ((byte | LOWER_CASE) === EXPONENT) {
              byte = bytes[++p]!;
              const isSmaller = byte === MINUS;
              if (isSmaller || byte === PLUS) byte = bytes[++p]!;
              const exponentStart = p;
              let exponent = 0;
              digit = byte - ZERO;
              while (digit >= 0 && digit <= 9) {
                exponent = exponent * 10 + digit;
                byte = bytes[++p]!;
                digit = byte - ZERO;
              }
              // Four digits are beyond any double: the cell reader says so.
              if (p === exponentStart || p - exponentStart > 3) break nextLine;
              scale -= isSmaller ? -exponent : exponent;
            }
            if (scale > decimals[c]!) break nextLine;
            if (mantissa < EXACT && scale <= 22 && scale >= -22) {
              value = scale >= 0 ? mantissa / POWERS[scale]! : mantissa * POWERS[-scale]!;
              if (isNegative) value = -value;
            } else {
              value = slowNumber(bytes, start, p, decimalMark);
              if (!Number.isFinite(value)) break nextLine;
            }
            numbers++;
          } else {
            if (p !== start || isBlanks || isQuoted) break nextLine;
            empty++;
          }
          if (isQuoted) {
            if (byte !== QUOTE) break nextLine;
            byte = bytes[++p]!;
          }
        }
        columns[c]![row] = value;
        if (isBlanks) {
          if (c < width - 1 && byte !== SPACE && byte !== TAB) break nextLine;
          continue;
        }
        while (byte === SPACE || (byte === TAB && delimiter !== TAB)) byte = bytes[++p]!;
        if (c < width - 1) {
          if (byte !== delimiter) break nextLine;
          byte = bytes[++p]!;
        }
      }
      if (byte === delimiter && !isBlanks) {
        trailing = true;
        byte = bytes[++p]!;
      }
      while (byte === SPACE || (byte === TAB && delimiter !== TAB)) byte = bytes[++p]!;
      if (byte === CARRIAGE_RETURN) {
        p++;
        if (p < to && bytes[p] === LINE_FEED) p++;
      } else if (byte === LINE_FEED) p++;
      else break;
      if (numbers === 0) break;
      if (trailing && this.trailing.count++ === 0) this.trailing.line = line;
      if (empty > 0) this.noteEmpty(columns, row, line);
      lines[row] = line;
      row++;
      this.rows++;
      line++;
      position = p;
    }
    store.used = row;
    this.at = position;
    this.line = line;
  }

  /** Hands the counts of empty cells to the ledger: once, because a note for each of millions would take longer than reading. */
  finish(): void {
    this.empties.forEach(({ count, line }, column) => {
      if (count > 0) this.ledger.note("log.empty-cell", line, { column, times: count });
    });
    const { count, line } = this.trailing;
    if (count > 0) this.ledger.note("log.trailing-delimiter", line, { times: count });
  }

  private noteEmpty(columns: readonly Float64Array[], row: number, line: number): void {
    for (let c = 0; c < columns.length; c++) {
      if (this.kinds[c] !== "number" || !Number.isNaN(columns[c]![row]!)) continue;
      const empties = this.empties[c]!;
      if (empties.count++ === 0) empties.line = line;
    }
  }

  /** Seconds since the first row; NaN for what the cell reader has to look at. */
  private readClockCell(bytes: Uint8Array, start: number, end: number, column: number): number {
    if (end - start > LONGEST_CLOCK) return Number.NaN;
    const clock = readClock(asciiText(bytes, start, end).trim());
    if (!clock || clock.decimals > this.decimals[column]!) return Number.NaN;
    return this.elapsed[column]!.secondsAt(clock);
  }
}

/**
 * Numbers among text and drawn tables are in every line what this reader can not take. Text in the first column may
 * carry a comment mark, and text between blanks other kinds of blank.
 */
function isRegular({ shape, natures }: Pick<Layout, "shape" | "natures">): boolean {
  if (shape.delimiter === "|" || natures[0]?.kind === "text") return false;
  if (shape.delimiter === BLANKS && natures.some(({ kind }) => kind === "text")) return false;
  return natures.every(({ affix }) => affix === null);
}

/** The language's own conversion, for numbers of very many digits or very large exponents. */
function slowNumber(bytes: Uint8Array, start: number, end: number, decimalMark: number): number {
  return Number(asciiText(bytes, start, end).replace(String.fromCharCode(decimalMark), "."));
}

/** Each byte as the letter of the same number: right for ASCII, and nothing that could pass for it otherwise. */
function asciiText(bytes: Uint8Array, start: number, end: number): string {
  let text = "";
  for (let i = start; i < end; i++) text += String.fromCharCode(bytes[i]!);
  return text;
}

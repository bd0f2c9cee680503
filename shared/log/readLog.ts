import { InputProblem } from "../quantity/problem.ts";
import { CellReader } from "./cellReader.ts";
import { columnName } from "./columnName.ts";
import { ColumnReader } from "./columnReader.ts";
import { type SettledEncoding, settleEncoding } from "./encoding.ts";
import { type Layout, settleLayout } from "./layout.ts";
import type { LogTable } from "./logTable.ts";
import { RepairLedger } from "./repairLedger.ts";
import { RowStore } from "./rowStore.ts";

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/** Bytes on which the encoding is settled. */
const HEAD = 65_536;
/** Bytes read at a time; the longest line a log may have. Blocks are the same whatever chunks the bytes come in. */
const BLOCK = 262_144;
/** Lines that go through the cell reader before the column reader is asked again. */
const FIRST_BATCH = 16;
const LARGEST_BATCH = 4096;
/** Regular rows in a row after which the next irregular line is taken for a lone one. */
const LONG_RUN = 4;
/** A byte of memory that was never written or erased. */
const PADDING = { zero: 0x00, erased: 0xff };

/**
 * Reads a delimited log that comes in chunks of any size. Only numbers are kept; of the text, one block at a time.
 *
 * The head settles encoding and layout. After that, regular rows go through `ColumnReader` and all other lines through
 * `CellReader`. Memory: 8 bytes a number, 4 bytes a row, and 256 kB.
 * `push` and `end` throw InputProblem `log.*` where the bytes are no log.
 */
export class LogReader {
  private readonly fileName: string;
  private readonly ledger = new RepairLedger();
  private readonly head = new Uint8Array(HEAD);
  private headLength = 0;
  private encoding: SettledEncoding | null = null;
  private toUtf8: ((bytes: Uint8Array, last: boolean) => Uint8Array) | null = null;
  /** One byte more than a block, for the line end that the last line may lack. */
  private readonly block = new Uint8Array(BLOCK + 1);
  private filled = 0;
  private body: Body | null = null;

  constructor(fileName: string) {
    this.fileName = fileName;
  }

  /** Takes the next bytes of the file. They are copied; the caller may use the chunk again. */
  push(chunk: Uint8Array): void {
    if (this.encoding) {
      this.take(chunk, false);
      return;
    }
    const part = chunk.subarray(0, HEAD - this.headLength);
    this.head.set(part, this.headLength);
    this.headLength += part.length;
    if (this.headLength < HEAD) return;
    this.begin(false);
    this.take(chunk.subarray(part.length), false);
  }

  /** The table, when all bytes have been pushed. */
  end(): LogTable {
    if (this.encoding) this.take(new Uint8Array(0), true);
    else this.begin(true);
    this.readBlock(true);
    return this.body!.table(this.fileName);
  }

  private begin(last: boolean): void {
    const head = this.head.subarray(0, this.headLength);
    this.encoding = settleEncoding(head, this.fileName);
    const { encoding, markLength } = this.encoding;
    if (encoding.startsWith("utf-16")) this.toUtf8 = utf8From(encoding);
    this.take(head.subarray(markLength), last);
  }

  private take(bytes: Uint8Array, last: boolean): void {
    const text = this.toUtf8?.(bytes, last) ?? bytes;
    for (let at = 0; at < text.length; ) {
      const part = text.subarray(at, at + BLOCK - this.filled);
      this.block.set(part, this.filled);
      this.filled += part.length;
      at += part.length;
      if (this.filled === BLOCK) this.readBlock(false);
    }
  }

  /** Reads the whole lines of the block and moves the rest to its front. */
  private readBlock(last: boolean): void {
    this.leaveOutPadding();
    let isCut = false;
    if (last && this.filled > 0 && !isLineEnd(this.block[this.filled - 1]!)) {
      this.block[this.filled++] = LINE_FEED;
      isCut = true;
    }
    const to = last ? this.filled : endOfWholeLines(this.block, this.filled);
    if (to === 0 && this.filled === BLOCK) throw lineTooLong(this.fileName, this.body?.line ?? 1);
    if (to > 0 || last) {
      this.body ??= this.openBody(to);
      this.body.read(this.block, to, isCut);
    }
    this.block.copyWithin(0, to, this.filled);
    this.filled -= to;
  }

  private openBody(to: number): Body {
    const { encoding } = this.encoding!;
    const decoder = new TextDecoder(encoding === "windows-1252" ? encoding : "utf-8");
    const head = this.block.subarray(0, Math.min(HEAD, to));
    const whole = to > HEAD ? head.subarray(0, endOfWholeLines(head, head.length) || HEAD) : head;
    const layout = settleLayout(decoder.decode(whole), encoding, this.fileName, this.ledger);
    return new Body(layout, decoder, this.ledger);
  }

  private leaveOutPadding(): void {
    const { block, filled } = this;
    const hasErased = this.encoding!.encoding === "utf-8" && block.subarray(0, filled).includes(PADDING.erased);
    const first = block.subarray(0, filled).indexOf(PADDING.zero);
    if (first < 0 && !hasErased) return;
    let [kept, line, firstLine] = [0, this.body?.line ?? 1, 0];
    for (let i = 0; i < filled; i++) {
      const byte = block[i]!;
      if (byte === PADDING.zero || (hasErased && byte === PADDING.erased)) {
        firstLine ||= line;
        continue;
      }
      if (byte === LINE_FEED || (byte === CARRIAGE_RETURN && block[i + 1] !== LINE_FEED)) line++;
      block[kept++] = byte;
    }
    this.ledger.note("log.padding", firstLine, { times: filled - kept });
    this.filled = kept;
  }
}

/** The lines below the header, block after block. */
class Body {
  /** Number of the next line. */
  line = 1;
  private readonly layout: Layout;
  private readonly decoder: TextDecoder;
  private readonly ledger: RepairLedger;
  private readonly store: RowStore;
  private readonly decimals: Int32Array;
  private readonly columnReader: ColumnReader;
  private readonly cellReader: CellReader;
  private batch = FIRST_BATCH;

  constructor(layout: Layout, decoder: TextDecoder, ledger: RepairLedger) {
    this.layout = layout;
    this.decoder = decoder;
    this.ledger = ledger;
    const width = layout.shape.columns.length;
    this.store = new RowStore(width);
    this.decimals = new Int32Array(width).fill(UNSEEN);
    this.columnReader = new ColumnReader(layout, this.store, this.decimals, ledger);
    this.cellReader = new CellReader(layout, this.store, this.decimals, ledger);
  }

  /** Reads the whole lines of `bytes` up to `to`; `cut`: the last of them came without its line end. */
  read(bytes: Uint8Array, to: number, cut: boolean): void {
    let at = this.skipHead(bytes, to);
    if (cut) at = this.readRegular(bytes, at, startOfLastLine(bytes, to));
    else at = this.readRegular(bytes, at, to);
    if (at < to) this.readCells(bytes, at, to, cut);
  }

  table(fileName: string): LogTable {
    const { shape } = this.layout;
    const rows = this.store.rows;
    const { columns, lineNumbers } = this.store.finish();
    return {
      fileName,
      shape,
      rows,
      columns,
      lineNumbers,
      resolutions: [...this.decimals].map((decimals) => (decimals === UNSEEN ? null : Number(`1e${-decimals}`))),
      restarts: this.cellReader.restarts.filter((row) => row > 0 && row < rows),
      repairs: this.ledger.repairs((column) => columnName(shape, column)),
      preview: this.cellReader.preview,
      columnReaderRows: this.columnReader.rows,
    };
  }

  /** Lines above the first row were judged when the layout was settled. */
  private skipHead(bytes: Uint8Array, to: number): number {
    let at = 0;
    while (this.line < this.layout.shape.firstDataLine && at < to) {
      at = endOfLine(bytes, at, to);
      this.line++;
    }
    return at;
  }

  /** Reads on with both readers in turn; a log that is irregular throughout goes to the cell reader in large batches. */
  private readRegular(bytes: Uint8Array, from: number, to: number): number {
    let at = from;
    while (at < to) {
      if (this.batch !== FIRST_BATCH || this.store.rows > 0) {
        const before = this.columnReader.rows;
        this.columnReader.read(bytes, at, to, this.line);
        ({ at, line: this.line } = this.columnReader);
        const isLongRun = this.columnReader.rows - before >= LONG_RUN;
        this.batch = isLongRun ? 1 : Math.min(2 * this.batch, LARGEST_BATCH);
      }
      if (at < to) at = this.readCells(bytes, at, to, false, this.batch);
    }
    return at;
  }

  private readCells(bytes: Uint8Array, from: number, to: number, cut: boolean, most = LARGEST_BATCH): number {
    let at = from;
    let count = 0;
    while (at < to && count < most) {
      at = endOfLine(bytes, at, to);
      count++;
    }
    const lines = this.decoder.decode(bytes.subarray(from, at)).split(/\r\n|\n|\r/);
    lines.pop();
    this.cellReader.read(lines, this.line, cut && at === to);
    this.line += count;
    return at;
  }
}

/** Decimals of a column in which no number was read. */
const UNSEEN = -1000;

function utf8From(encoding: string): (bytes: Uint8Array, last: boolean) => Uint8Array {
  const decoder = new TextDecoder(encoding);
  const encoder = new TextEncoder();
  return (bytes, last) => encoder.encode(decoder.decode(bytes, { stream: !last }));
}

function isLineEnd(byte: number): boolean {
  return byte === LINE_FEED || byte === CARRIAGE_RETURN;
}

/** Where the last whole line ends; a carriage return at the very end may be half of a line end. */
function endOfWholeLines(bytes: Uint8Array, length: number): number {
  const feed = bytes.subarray(0, length).lastIndexOf(LINE_FEED);
  const carriage = bytes.subarray(0, Math.max(0, length - 1)).lastIndexOf(CARRIAGE_RETURN);
  return Math.max(feed, carriage) + 1;
}

/** Start of the line after the one that starts at `from`. */
function endOfLine(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  while (at < to && !isLineEnd(bytes[at]!)) at++;
  return bytes[at] === CARRIAGE_RETURN && at + 1 < to && bytes[at + 1] === LINE_FEED ? at + 2 : Math.min(at + 1, to);
}

function startOfLastLine(bytes: Uint8Array, to: number): number {
  let at = to - 1;
  while (at > 0 && !isLineEnd(bytes[at - 1]!)) at--;
  return at;
}

function lineTooLong(fileName: string, line: number): InputProblem {
  return new InputProblem({
    code: "log.line-too-long",
    where: `${fileName}, line ${line}`,
    found: `the line is longer than ${BLOCK / 1024} kB`,
    needed: "one row of readings a line",
    mend: "Check that this is a log with line breaks",
  });
}

/** Reads a whole log, or a table that was typed or pasted: `readLog(new TextEncoder().encode(text), name)`. */
export function readLog(bytes: Uint8Array, fileName: string): LogTable {
  const reader = new LogReader(fileName);
  reader.push(bytes);
  return reader.end();
}

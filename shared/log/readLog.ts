import type { LogReading } from "../model/reading.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Encoding, type SettledEncoding, settleEncoding } from "./encoding.ts";
import { settleLayout } from "./layout.ts";
import { CARRIAGE_RETURN, endOfWholeLines, isLineEnd, LINE_FEED } from "./lineEnds.ts";
import { LogBody } from "./logBody.ts";
import type { LogTable } from "./logTable.ts";
import { RepairLedger } from "./repairLedger.ts";

/** Bytes on which the encoding is settled. */
const HEAD = 65_536;
/** Bytes read at a time; the longest line a log may have. Blocks are the same whatever chunks the bytes come in. */
const BLOCK = 262_144;
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
  private readonly reading: LogReading;
  private readonly ledger: RepairLedger;
  private readonly head = new Uint8Array(HEAD);
  private headLength = 0;
  private encoding: SettledEncoding | null = null;
  private toUtf8: ((bytes: Uint8Array, last: boolean) => Uint8Array) | null = null;
  /** One byte more than a block, for the line end that the last line may lack. */
  private readonly block = new Uint8Array(BLOCK + 1);
  private filled = 0;
  private body: LogBody | null = null;

  private readonly expectedBytes: number;

  /**
   * `expectedBytes`: size of the file, where it is known; the columns are then made in one piece.
   * `reading`: what a person decided about the text; the rest is settled on its first lines.
   */
  constructor(fileName: string, expectedBytes = 0, reading: LogReading = {}) {
    this.fileName = fileName;
    this.reading = reading;
    this.ledger = new RepairLedger(reading.refusedRepairs);
    this.expectedBytes = expectedBytes;
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
    this.encoding = settleEncoding(head, this.fileName, this.reading.encoding);
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
      if (this.body) this.body.read(this.block, to, isCut);
      else {
        this.body = this.openBody(to);
        this.body.read(this.block, to, isCut);
        this.body.expect(this.expectedBytes / to);
      }
    }
    this.block.copyWithin(0, to, this.filled);
    this.filled -= to;
  }

  private openBody(to: number): LogBody {
    const { encoding } = this.encoding!;
    const decoder = new TextDecoder(encoding === "windows-1252" ? encoding : "utf-8");
    const decode = (bytes: Uint8Array) => decoder.decode(bytes);
    const head = this.block.subarray(0, Math.min(HEAD, to));
    const whole = to > HEAD ? head.subarray(0, endOfWholeLines(head, head.length) || HEAD) : head;
    const { fileName, reading } = this;
    const layout = settleLayout({ text: decode(whole), encoding, fileName, reading }, this.ledger);
    return new LogBody(layout, decode, this.ledger);
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

function utf8From(encoding: Encoding): (bytes: Uint8Array, last: boolean) => Uint8Array {
  const decoder = new TextDecoder(encoding);
  const encoder = new TextEncoder();
  return (bytes, last) => encoder.encode(decoder.decode(bytes, { stream: !last }));
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
export function readLog(bytes: Uint8Array, fileName: string, reading: LogReading = {}): LogTable {
  const reader = new LogReader(fileName, bytes.length, reading);
  reader.push(bytes);
  return reader.end();
}

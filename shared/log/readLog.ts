import type { LogReading } from "../model/reading.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Encoding, type SettledEncoding, settleEncoding } from "./encoding.ts";
import { jsonRows, looksLikeJson } from "./jsonRows.ts";
import { settleLayout } from "./layout.ts";
import { CARRIAGE_RETURN, endOfWholeLines, isLineEnd, LINE_FEED } from "./lineEnds.ts";
import { LogBody } from "./logBody.ts";
import type { LogTable } from "./logTable.ts";
import { RepairLedger } from "./repairLedger.ts";

/** Bytes on which the encoding is settled. */
const HEAD = 65_536;
/** Bytes read at a time; the longest line a log may have. Blocks are the same whatever chunks the bytes come in. */
const BLOCK = 262_144;
/** Longest JSON text, which can only be read as a whole. */
const LONGEST_JSON = 64 * 2 ** 20;
/** A byte of memory that was never written or erased. */
const PADDING = { zero: 0x00, erased: 0xff };

/**
 * Reads a delimited log that comes in chunks of any size. Only numbers are kept; of the text, one block at a time.
 *
 * The head settles encoding and layout. After that, regular rows go through `ColumnReader` and all other lines through
 * `CellReader`. Memory: 8 bytes a number, 4 bytes a row, and 256 kB. One JSON text is held whole until its end is there.
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
  /** What came of a file that may be one JSON text; null for any other. */
  private json: { readonly pieces: Uint8Array[]; length: number } | null = null;

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
    if (this.json) this.readJson(this.json.pieces);
    this.readBlock(true);
    return this.body!.table(this.fileName);
  }

  private begin(last: boolean): void {
    const head = this.head.subarray(0, this.headLength);
    this.encoding = settleEncoding(head, this.fileName, this.reading.encoding);
    const { encoding, markLength } = this.encoding;
    const isWide = encoding.startsWith("utf-16");
    if (isWide) this.toUtf8 = utf8From(encoding);
    const text = head.subarray(markLength);
    if (looksLikeJson(new TextDecoder(encoding).decode(text))) this.json = { pieces: [], length: 0 };
    this.take(text, last);
  }

  private take(bytes: Uint8Array, last: boolean): void {
    const text = this.toUtf8?.(bytes, last) ?? bytes;
    if (this.json) this.keepJson(this.json, text);
    else this.takeText(text);
  }

  private keepJson(json: { readonly pieces: Uint8Array[]; length: number }, text: Uint8Array): void {
    json.length += text.length;
    if (json.length > LONGEST_JSON) throw jsonTooLong(this.fileName);
    json.pieces.push(text.slice());
  }

  /** Goes on with the rows of the JSON text; with the text as it stands where it holds none. */
  private readJson(pieces: readonly Uint8Array[]): void {
    this.json = null;
    const { encoding } = this.encoding!;
    const decoder = new TextDecoder(encoding === "windows-1252" ? encoding : "utf-8");
    const found = jsonRows(pieces.map((piece) => decoder.decode(piece, { stream: true })).join(""));
    if (!found) {
      for (const piece of pieces) this.takeText(piece);
      return;
    }
    this.ledger.note("log.json", 1, { times: found.records });
    if (encoding === "windows-1252") this.encoding = { encoding: "utf-8", markLength: 0 };
    this.takeText(new TextEncoder().encode(found.text));
  }

  private takeText(text: Uint8Array): void {
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

function jsonTooLong(fileName: string): InputProblem {
  return new InputProblem({
    code: "log.json-too-long",
    where: fileName,
    found: `the file is one JSON text of more than ${LONGEST_JSON / 2 ** 20} MB`,
    needed: "a text that can be read line by line",
    mend: "Have the logger write one object a line, or export as CSV: those may be of any length",
  });
}

/** Reads a whole log, or a table that was typed or pasted: `readLog(new TextEncoder().encode(text), name)`. */
export function readLog(bytes: Uint8Array, fileName: string, reading: LogReading = {}): LogTable {
  const reader = new LogReader(fileName, bytes.length, reading);
  reader.push(bytes);
  return reader.end();
}

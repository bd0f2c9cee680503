import { CellReader } from "./cellReader.ts";
import { carryOnClocks } from "./clockRollover.ts";
import { columnName } from "./columnName.ts";
import { ColumnReader } from "./columnReader.ts";
import { readHoursAndMinutes } from "./hoursAndMinutes.ts";
import { joinedRows } from "./interleavedRows.ts";
import type { Layout } from "./layout.ts";
import { endOfLine, startOfLastLine } from "./lineEnds.ts";
import type { LogTable } from "./logTable.ts";
import { type ReadingState, readingState, UNSEEN } from "./readingState.ts";
import type { RepairLedger } from "./repairLedger.ts";

/** Lines that go through the cell reader before the column reader is asked again. */
const FIRST_BATCH = 16;
const LARGEST_BATCH = 4096;
/** Regular rows in a row after which the next irregular line is taken for a lone one. */
const LONG_RUN = 4;
/** Later lines may be shorter than the first: room beyond the foreseen number of rows. */
const RESERVE = 1.25;

/** Reads the lines below the header, block after block, with the column reader and the cell reader in turn. */
export class LogBody {
  /** Number of the next line. */
  line = 1;
  private readonly layout: Layout;
  private readonly decode: (bytes: Uint8Array) => string;
  private readonly state: ReadingState;
  private readonly columnReader: ColumnReader;
  private readonly cellReader: CellReader;
  private batch = FIRST_BATCH;

  constructor(layout: Layout, decode: (bytes: Uint8Array) => string, ledger: RepairLedger) {
    this.layout = layout;
    this.decode = decode;
    this.state = readingState(layout.shape.columns.length, ledger);
    this.columnReader = new ColumnReader(layout, this.state);
    this.cellReader = new CellReader(layout, this.state);
  }

  /** The whole file is `ratio` times as long as what was read so far. */
  expect(ratio: number): void {
    if (ratio > 1) this.state.store.reserve(Math.ceil(this.state.store.rows * ratio * RESERVE));
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
    const { store, decimals, ledger } = this.state;
    const read = store.finish();
    const started = this.cellReader.restarts.filter((row) => row > 0 && row < read.lineNumbers.length);
    this.columnReader.finish();
    readHoursAndMinutes(this.layout, read, ledger);
    carryOnClocks({ ...read, restarts: started }, ledger);
    const { columns, lineNumbers, restarts } = joinedRows({ ...read, restarts: started }, shape.columns, ledger);
    return {
      fileName,
      shape,
      rows: lineNumbers.length,
      columns,
      lineNumbers,
      resolutions: [...decimals].map((count) => (count === UNSEEN ? null : Number(`1e${-count}`))),
      restarts,
      repairs: ledger.repairs((column) => columnName(shape, column)),
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
      if (this.batch !== FIRST_BATCH || this.state.store.rows > 0) {
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
    const lines = this.decode(bytes.subarray(from, at)).split(/\r\n|\n|\r/);
    lines.pop();
    this.cellReader.read(lines, this.line, cut && at === to);
    this.line += count;
    return at;
  }
}

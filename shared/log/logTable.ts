import type { LogShape, Repair } from "../model/log.ts";

/** A delimited log as numbers: one array a column, one entry a row, all of the same length. */
export interface LogTable {
  readonly fileName: string;
  readonly shape: LogShape;
  readonly rows: number;
  /**
   * Numbers as written in the file, in the file's units; NaN marks a missing cell. A column may be a part of a longer
   * buffer: use the array, not its `buffer`.
   */
  readonly columns: readonly Float64Array[];
  /** Line of the file that each row stands on, from 1. */
  readonly lineNumbers: Uint32Array;
  /** Smallest decimal step written in each column (0.01 where "12.34" occurs); null where no number was read. */
  readonly resolutions: readonly (number | null)[];
  /** Rows, from 0, before which the logger started again. */
  readonly restarts: readonly number[];
  readonly repairs: readonly Repair[];
  /** The first rows of numbers as text. */
  readonly preview: string[][];
  /** How many rows came through the column reader over bytes; the others were read cell by cell. */
  readonly columnReaderRows: number;
}

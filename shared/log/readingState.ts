import { ElapsedTime } from "./clockTime.ts";
import type { RepairLedger } from "./repairLedger.ts";
import { RowStore } from "./rowStore.ts";

/** What the column reader and the cell reader share, so that it does not matter which of them reads a line. */
export interface ReadingState {
  readonly store: RowStore;
  /** Most decimals written in each column so far; `UNSEEN` where there was no number yet. */
  readonly decimals: Int32Array;
  /** Clock of each column. */
  readonly elapsed: readonly ElapsedTime[];
  readonly ledger: RepairLedger;
}

/** Decimals of a column in which no number was read. */
export const UNSEEN = -1000;

/** What is known before the first row of a log of so many columns. */
export function readingState(width: number, ledger: RepairLedger): ReadingState {
  return {
    store: new RowStore(width),
    decimals: new Int32Array(width).fill(UNSEEN),
    elapsed: Array.from({ length: width }, () => new ElapsedTime()),
    ledger,
  };
}

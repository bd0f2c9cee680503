import { formatNumber } from "../quantity/format.ts";
import type { RepairLedger } from "./repairLedger.ts";

/** The part of a table that a rollover is found in. */
export interface RowsInOrder {
  readonly columns: readonly Float64Array[];
  readonly lineNumbers: Uint32Array;
  /** Rows before which the logger started again; a clock that falls back there did not run over. */
  readonly restarts: readonly number[];
}

interface Rollover {
  readonly row: number;
  readonly size: number;
}

/**
 * Numbers after which a counter of a small computer starts at zero again: 16 and 32 bits, as they are or written in
 * units of a thousand or a million counts (micros()/1000, millis()/1000, micros()/1e6). Common practice, no source.
 */
const SIZES = [2 ** 16, 2 ** 32].flatMap((counts) => [counts, counts / 1e3, counts / 1e6]);

/** Rows at most that the logger may have missed around a rollover. */
const MOST_MISSED = 50;
/** The missed part may be no more than this share of the whole count, so that few restarts can pass for a rollover. */
const MOST_MISSED_SHARE = 0.02;
/** A clock rises from nearly every row to the next. */
const RISING = 0.9;

/**
 * Carries counters on that ran over, in place, and notes each as `log.clock-rollover`.
 *
 * A column is such a counter where it rises nearly always and falls only from just below a number at which counters
 * run over to just above zero (or, for a signed counter, from half of it to minus half). A clock that falls from
 * anywhere else was started again; that is for the timeline to tell.
 *
 * @example 4294967290, 4294967295, 4 (ms, 5 apart) becomes 4294967290, 4294967295, 4294967300
 */
export function carryOnClocks(table: RowsInOrder, ledger: RepairLedger): void {
  table.columns.forEach((values, column) => {
    const rollovers = rolloversOf(values, new Set(table.restarts));
    for (const { row } of rollovers) {
      const example = `${formatNumber(lastBefore(values, row), 10)} to ${formatNumber(values[row]!, 10)}`;
      ledger.note("log.clock-rollover", table.lineNumbers[row]!, { column, example });
    }
    if (!ledger.refuses("log.clock-rollover")) carryOn(values, rollovers);
  });
}

function rolloversOf(values: Float64Array, restarts: ReadonlySet<number>): Rollover[] {
  const falls: number[] = [];
  const rises: number[] = [];
  let [pairs, rising] = [0, 0];
  let last = Number.NaN;
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    if (!Number.isNaN(last)) {
      pairs++;
      if (value > last) {
        rising++;
        if (rises.length < 2001) rises.push(value - last);
      } else if (value < last) {
        falls.push(row);
        // A clock does not fall every few rows; most columns are given up here after a few of them.
        if (falls.length > 20 && falls.length > (1 - RISING) * pairs) return [];
      }
    }
    last = value;
  }
  if (falls.length === 0 || rising < RISING * pairs) return [];
  const step = Float64Array.from(rises).sort()[rises.length >> 1]!;
  return falls.flatMap((row) => {
    const size = restarts.has(row) ? undefined : sizeOf(lastBefore(values, row), values[row]!, step);
    return size === undefined ? [] : [{ row, size }];
  });
}

/** The number at which the counter ran over from `before` to `after`; undefined where it did not. */
function sizeOf(before: number, after: number, step: number): number | undefined {
  return SIZES.find((size) => {
    const near = Math.min(MOST_MISSED * step, MOST_MISSED_SHARE * size);
    const low = after < 0 ? -size / 2 : 0;
    const missed = after + size - before;
    // A value rounded to the decimals of the file may stand a hair beyond the end of the count.
    return missed > 0 && missed <= near && after >= low - step && after - low <= near;
  });
}

function lastBefore(values: Float64Array, row: number): number {
  let at = row - 1;
  while (at > 0 && Number.isNaN(values[at]!)) at--;
  return values[at]!;
}

function carryOn(values: Float64Array, rollovers: readonly Rollover[]): void {
  let shift = 0;
  rollovers.forEach(({ row, size }, i) => {
    shift += size;
    const to = rollovers[i + 1]?.row ?? values.length;
    for (let at = row; at < to; at++) values[at] = values[at]! + shift;
  });
}

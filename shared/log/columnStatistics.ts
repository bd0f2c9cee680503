import type { LogTable } from "./logTable.ts";

/** What the numbers of one column look like, seen on a sample of its rows. */
export interface ColumnStatistics {
  /** Numbers in the sample. */
  readonly count: number;
  readonly low: number;
  readonly high: number;
  readonly median: number;
  /** Share of neighbouring pairs that rise. */
  readonly rising: number;
  /** Share of neighbouring pairs that fall. */
  readonly falling: number;
  /** Share of neighbouring pairs that are equal. */
  readonly resting: number;
  /** Median of the rises. */
  readonly step: number;
  readonly allWhole: boolean;
}

/** Pairs of neighbouring rows looked at in each column. */
const SAMPLE = 20_000;

/** Statistics of each column of `table`, on pairs of neighbouring rows spread evenly over the log. */
export function columnStatistics(table: LogTable): ColumnStatistics[] {
  const stride = Math.max(1, Math.floor(table.rows / SAMPLE));
  return table.columns.map((column) => statisticsOf(column, stride));
}

function statisticsOf(column: Float64Array, stride: number): ColumnStatistics {
  const values: number[] = [];
  const rises: number[] = [];
  let [rising, falling, resting] = [0, 0, 0];
  for (let i = 0; i < column.length; i += stride) {
    const value = column[i]!;
    if (Number.isNaN(value)) continue;
    values.push(value);
    const step = i + 1 < column.length ? column[i + 1]! - value : Number.NaN;
    if (step > 0) {
      rising++;
      rises.push(step);
    } else if (step < 0) falling++;
    else if (step === 0) resting++;
  }
  const pairs = Math.max(1, rising + falling + resting);
  const sorted = Float64Array.from(values).sort();
  return {
    count: values.length,
    low: sorted[0] ?? Number.NaN,
    high: sorted.at(-1) ?? Number.NaN,
    median: sorted[sorted.length >> 1] ?? Number.NaN,
    rising: rising / pairs,
    falling: falling / pairs,
    resting: resting / pairs,
    step: Float64Array.from(rises).sort()[rises.length >> 1] ?? Number.NaN,
    allWhole: values.every(Number.isInteger),
  };
}

import type { LogTable } from "../log/logTable.ts";
import { LONGEST_NOTEBOOK } from "../log/notebook.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { type Channel, valueAt } from "./channels.ts";
import { identityOf, remembered } from "./remembered.ts";

/** When each row was taken, and where the logger started again. */
export interface Timeline {
  /**
   * `clock`: seconds of the log. `rows`: a long log without time, rows counted instead of seconds.
   * `readings`: a hand-written table, each row one steady reading.
   */
  readonly kind: "clock" | "rows" | "readings";
  /** Time of each row, never falling: seconds, or the row number where there is no clock. */
  readonly times: Float64Array;
  /** Rows at which a stretch of unbroken logging starts; the first is 0. */
  readonly segmentStarts: readonly number[];
  /** Median time from row to row. */
  readonly step: number;
  readonly warnings: readonly Warning[];
}

/** Loggers sample faster than this; people with a pencil do not. s */
const SLOWEST_LOGGER = 4;

/**
 * Time of every row in one sequence that never falls back. Where the logger starts again, or its counter runs over,
 * the clock goes on one step after the last row before, so that no plateau or tare line can reach across.
 */
export function timelineOf(table: LogTable, time: Channel | undefined): Timeline {
  if (table.rows === 0) throw noRows(table);
  if (time === undefined) return withoutClock(table);
  const { fileName, restarts, lineNumbers, rows } = table;
  const { scale, shift, header } = time;
  const dependsOn = [fileName, restarts, identityOf(lineNumbers), rows, scale, shift, header];
  return remembered(time.raw, { stage: "timeline", dependsOn }, () => withClock(table, time));
}

function withClock(table: LogTable, time: Channel): Timeline {
  const whole = isWhole(table, time);
  const { times, steps, outOfOrder } = whole ? standing(time.raw) : filledTimes(table, time);
  const step = medianStep(steps);
  const segmentStarts = whole ? [0] : unroll(times, table.restarts, step);
  const warnings = [...restartWarnings(table, segmentStarts), ...orderWarnings(table, outOfOrder, time)];
  if (table.rows <= LONGEST_NOTEBOOK && step > SLOWEST_LOGGER) {
    warnings.push(slowRows(table, step));
    return { kind: "readings", times, segmentStarts, step, warnings };
  }
  return { kind: "clock", times, segmentStarts, step, warnings };
}

/** First row whose time is `seconds` or later. */
export function rowAt({ times }: Timeline, seconds: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}

function withoutClock(table: LogTable): Timeline {
  const times = Float64Array.from({ length: table.rows }, (_, row) => row);
  const segmentStarts = [0, ...table.restarts.filter((row) => row > 0)];
  if (table.rows <= LONGEST_NOTEBOOK) return { kind: "readings", times, segmentStarts, step: 1, warnings: [] };
  const told = warning({
    code: "bench.no-time",
    where: table.fileName,
    found: `${table.rows} rows and no time column: steady stretches were found by counting rows`,
    needed: "a time column, to know how long each plateau lasted and how fast the zero drifted",
    mend: "If a column holds the time, mark it as time",
  });
  return { kind: "rows", times, segmentStarts, step: 1, warnings: [told] };
}

/** Times in seconds; a missing cell takes the time of the row before it, a small step back likewise. */
function filledTimes(table: LogTable, time: Channel): { times: Float64Array; steps: number[]; outOfOrder: number[] } {
  const times = new Float64Array(table.rows);
  const steps: number[] = [];
  const outOfOrder: number[] = [];
  const stride = strideOf(table.rows);
  let last = Number.NaN;
  for (let row = 0; row < table.rows; row++) {
    const seconds = valueAt(time, row);
    if (row % stride === 0 && seconds > last) steps.push(seconds - last);
    if (seconds < last && last - seconds < SMALLEST_RESTART) outOfOrder.push(row);
    else if (!Number.isNaN(seconds)) last = seconds;
    times[row] = last;
  }
  const first = times.findIndex((seconds) => !Number.isNaN(seconds));
  if (first < 0) throw noTimes(table, time);
  times.fill(times[first]!, 0, first);
  return { times, steps, outOfOrder };
}

/** Rows at which the step is looked at. */
const strideOf = (rows: number) => Math.max(1, Math.floor(rows / 2000));

/** A column of seconds as it stands. */
function standing(times: Float64Array): { times: Float64Array; steps: number[]; outOfOrder: number[] } {
  const steps: number[] = [];
  const stride = strideOf(times.length);
  for (let row = stride; row < times.length; row += stride) {
    if (times[row]! > times[row - 1]!) steps.push(times[row]! - times[row - 1]!);
  }
  return { times, steps, outOfOrder: [] };
}

/** Seconds in every row, never falling, never started again: the column can serve as it stands, and is not copied. */
function isWhole({ restarts }: LogTable, { raw, scale, shift }: Channel): boolean {
  if (scale !== 1 || shift !== 0 || restarts.length > 0) return false;
  let last = -Infinity;
  for (let row = 0; row < raw.length; row++) {
    const seconds = raw[row]!;
    // Also false for a missing cell.
    if (!(seconds >= last)) return false;
    last = seconds;
  }
  return true;
}

/** A clock that falls back by less than this delivered two rows in the wrong order; it did not start again. s */
const SMALLEST_RESTART = 0.2;

function medianStep(steps: number[]): number {
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? 1;
}

/** A header that stands again within so many steps was printed on a new page: no logger starts again so fast. */
const PAGE_BREAK = 3;

/** Shifts the times after each restart in place, and returns where the stretches start. */
function unroll(times: Float64Array, restarts: readonly number[], step: number): number[] {
  const told = new Set(restarts);
  const starts = [0];
  let shift = 0;
  let before = times[0]!;
  for (let row = 1; row < times.length; row++) {
    const raw = times[row]!;
    if (raw < before || (told.has(row) && raw - before > PAGE_BREAK * step)) {
      starts.push(row);
      shift = times[row - 1]! + step - raw;
    }
    before = raw;
    times[row] = raw + shift;
  }
  return starts;
}

function noRows(table: LogTable): InputProblem {
  return new InputProblem({
    code: "bench.no-rows",
    where: table.fileName,
    found: "the file holds no row of numbers",
    needed: "at least two steady readings at different rotation rates",
    mend: "Check that the whole log was saved",
  });
}

function noTimes(table: LogTable, time: Channel): InputProblem {
  return new InputProblem({
    code: "bench.no-times",
    where: `${table.fileName}, column ${time.header}`,
    found: "the column marked as time holds no number",
    needed: "a time in every row",
    mend: "Choose another time column, or mark this one as ignore",
  });
}

function restartWarnings(table: LogTable, starts: readonly number[]): Warning[] {
  if (starts.length === 1) return [];
  const lines = starts.slice(1, 6).map((row) => table.lineNumbers[row]);
  return [
    warning({
      code: "bench.time-restart",
      where: `${table.fileName}, line ${lines.join(", ")}`,
      found: `the clock of the log starts again ${starts.length === 2 ? "once" : `${starts.length - 1} times`}; the parts were set one after the other, and no plateau or tare was carried across`,
      needed: "",
      mend: "If the scale was zeroed again as well, each part needs its own rest at zero throttle",
    }),
  ];
}

function orderWarnings(table: LogTable, rows: readonly number[], time: Channel): Warning[] {
  if (rows.length === 0) return [];
  return [
    warning({
      code: "bench.time-out-of-order",
      where: `${table.fileName}, line ${table.lineNumbers[rows[0]!]}, column ${time.header}`,
      found: `${rows.length} rows carry a time slightly earlier than the row before; they were kept in the order of the file`,
      needed: "",
      mend: "",
    }),
  ];
}

function slowRows(table: LogTable, step: number): Warning {
  return warning({
    code: "bench.rows-as-readings",
    where: table.fileName,
    found: `rows are ${step.toPrecision(3)} s apart, so each was taken as one steady reading`,
    needed: "",
    mend: "A log sampled at least every second would show whether the readings were steady",
  });
}

import { rolesNamed } from "./headerWords.ts";
import type { RepairLedger } from "./repairLedger.ts";

/** The rows of a table as they were read. */
export interface ReadRows {
  readonly columns: readonly Float64Array[];
  readonly lineNumbers: Uint32Array;
  readonly restarts: readonly number[];
}

/** What a column is called in the file. */
interface Named {
  readonly header: string;
}

/** A column filled in more than this part of the rows that are kept stands on all of them. */
const EVERY_ROW = 0.9;
const WANTED: ReadonlySet<string> = new Set(["thrust", "rotationRate", "torque"]);
/** Part of the readings of the sparser column that may stand beside one of the other by chance. */
const SELDOM = 0.1;
/** Fewest readings of a column that is no list of events. */
const FEWEST = 20;
/**
 * Part of the readings of the fastest instrument that one without a name must have for its rows to be kept: a
 * thermometer has fewer, and nobody wants the rows of a thermometer.
 */
const SLOWEST = 1 / 15;

/**
 * Rows of instruments that each wrote at their own pace, every one on rows of its own: no row has both thrust and
 * rotation rate, and none could serve for a coefficient. The rows of the slowest instrument are kept, and each takes the
 * mean of the readings of the others from halfway to the row before to halfway to the row after. Columns that stand on
 * every row, such as the time, are taken as they are. Noted as `log.interleaved-rows`; the table as it came where
 * columns do stand side by side, or where a person refused.
 */
export function joinedRows(table: ReadRows, named: readonly Named[], ledger: RepairLedger): ReadRows {
  const { columns, lineNumbers } = table;
  const rows = lineNumbers.length;
  const counts = columns.map(countOf);
  const partly = counts.flatMap((count, column) => (count >= FEWEST && count < rows ? [column] : []));
  const most = Math.max(...partly.map((column) => counts[column]!));
  const sparse = partly.filter((column) => isWanted(named[column]!) ?? counts[column]! >= SLOWEST * most);
  const slowest = sparse
    .sort((a, b) => counts[a]! - counts[b]!)
    .find((column, i) => sparse.slice(i + 1).some((other) => areApart(columns[column]!, columns[other]!)));
  if (slowest === undefined) return table;
  const kept = lineNumbers.reduce<number[]>((known, _, row) => {
    if (!Number.isNaN(columns[slowest]![row]!)) known.push(row);
    return known;
  }, []);
  ledger.note("log.interleaved-rows", lineNumbers[kept[0]!]!, { column: slowest, times: rows - kept.length });
  if (ledger.refuses("log.interleaved-rows")) return table;
  const edges = windowsAround(kept, rows, table.restarts);
  return {
    columns: columns.map((values) => {
      const beside = Float64Array.from(kept, (row) => values[row]!);
      const isBeside = countOf(beside) >= EVERY_ROW * kept.length;
      return isBeside ? beside : Float64Array.from(edges, ([from, to]) => meanOf(values, from, to));
    }),
    lineNumbers: Uint32Array.from(kept, (row) => lineNumbers[row]!),
    restarts: table.restarts.map((restart) => kept.filter((row) => row < restart).length),
  };
}

function countOf(values: Float64Array): number {
  let count = 0;
  for (let row = 0; row < values.length; row++) if (!Number.isNaN(values[row]!)) count++;
  return count;
}

/** Whether the result rests on the column, by its name; undefined where the name does not say. */
function isWanted({ header }: Named): boolean | undefined {
  const role = rolesNamed(header)[0]?.role;
  return role === undefined ? undefined : WANTED.has(role);
}

/** Hardly a reading of the sparser one has one of the other beside it. */
function areApart(sparser: Float64Array, other: Float64Array): boolean {
  const most = SELDOM * countOf(sparser);
  let both = 0;
  for (let row = 0; row < sparser.length && both <= most; row++) {
    if (!Number.isNaN(sparser[row]!) && !Number.isNaN(other[row]!)) both++;
  }
  return both <= most;
}

/** Rows around each kept one, halfway to its neighbours, and never across a restart. */
function windowsAround(kept: readonly number[], rows: number, restarts: readonly number[]): [number, number][] {
  return kept.map((row, i) => {
    const before = kept[i - 1] ?? -1;
    const after = kept[i + 1] ?? rows;
    const start = restarts.findLast((restart) => restart <= row) ?? 0;
    const end = restarts.find((restart) => restart > row) ?? rows;
    const from = i === 0 ? 0 : Math.floor((before + row) / 2) + 1;
    const to = i === kept.length - 1 ? rows : Math.floor((row + after) / 2) + 1;
    return [Math.max(start, from), Math.min(end, to)];
  });
}

/** Mean of the readings that are there; NaN where there is none. */
function meanOf(values: Float64Array, from: number, to: number): number {
  let [sum, count] = [0, 0];
  for (let row = from; row < to; row++) {
    if (Number.isNaN(values[row]!)) continue;
    sum += values[row]!;
    count++;
  }
  return count === 0 ? Number.NaN : sum / count;
}

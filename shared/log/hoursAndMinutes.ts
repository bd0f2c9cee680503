import type { Layout } from "./layout.ts";
import { LONGEST_NOTEBOOK } from "./notebook.ts";
import type { RepairLedger } from "./repairLedger.ts";

/** People are up from this hour on; a stopwatch starts near zero. Common practice, no source. */
const EARLIEST_HOUR = 6;
const LATEST_HOUR = 23;

/**
 * "14:05" was read as minutes and seconds. In a table as short as a page of a notebook that begins at an hour of the day
 * it is hours and minutes: the times are made so, in place, and noted as `log.hours-and-minutes`.
 */
export function readHoursAndMinutes(
  { natures }: Pick<Layout, "natures">,
  { columns, lineNumbers }: { readonly columns: readonly Float64Array[]; readonly lineNumbers: Uint32Array },
  ledger: RepairLedger,
): void {
  if (lineNumbers.length === 0 || lineNumbers.length > LONGEST_NOTEBOOK) return;
  natures.forEach(({ kind, example }, column) => {
    const hour = Number(/^(\d{2}):\d{2}$/.exec(example)?.[1]);
    if (kind !== "clock" || !(hour >= EARLIEST_HOUR && hour <= LATEST_HOUR)) return;
    const seconds = columns[column]!;
    for (let row = 0; row < seconds.length; row++) seconds[row]! *= 60;
    ledger.note("log.hours-and-minutes", lineNumbers[0]!, { column, example });
  });
}

import type { LogTable } from "../log/logTable.ts";
import type { Alignment, AlignmentPicture, Companion } from "../model/alignment.ts";
import type { ColumnUse, Recipe } from "../model/recipe.ts";
import type { Warning } from "../quantity/warning.ts";
import { alignLogs, type LaidOver, onFirstClock } from "./alignLogs.ts";
import { channelsByRole } from "./channels.ts";
import { usualStep, valuesAt, withoutMissing } from "./steadyStep.ts";
import { timelineOf } from "./timeline.ts";

/** A log and the log that was recorded beside it. */
export interface TwoTables {
  readonly table: LogTable;
  readonly recipe: Recipe;
  readonly companionTable: LogTable;
  readonly companion: Pick<Companion, "columns" | "lag">;
}

/** One table with the channels of both logs, ready for reduction, and how they were laid over each other. */
export interface MergedLog {
  readonly table: LogTable;
  readonly recipe: Recipe;
  readonly alignment: Alignment;
  readonly warnings: readonly Warning[];
}

/**
 * The first log with the channels that only the second has, interpolated to the times of the first. Where the second
 * has a gap or is not there, cells are missing. Throws as alignLogs.
 */
export function mergedLog(tables: TwoTables): MergedLog {
  const { table, recipe, companionTable, companion } = tables;
  const { alignment } = laidOver(tables);
  const secondRecipe = recipeOfSecond(recipe, companion.columns);
  const second = channelsByRole(companionTable, secondRecipe);
  const first = channelsByRole(table, recipe);
  const times = timelineOf(table, first.get("time")).times;
  const secondTimes = onFirstClock(alignment, timelineOf(companionTable, second.get("time")).times);
  const added = companion.columns.filter(({ role }) => role !== "ignore" && role !== "time" && !first.has(role));
  const columns = added.map(({ column }) =>
    valuesAt(withoutMissing({ times: secondTimes, values: companionTable.columns[column]! }), times),
  );
  const from = table.columns.length;
  const uses = added.map((use, i): ColumnUse => ({ ...use, column: from + i }));
  return {
    table: {
      ...table,
      columns: [...table.columns, ...columns],
      resolutions: [...table.resolutions, ...added.map(({ column }) => companionTable.resolutions[column] ?? null)],
      shape: {
        ...table.shape,
        columns: [
          ...table.shape.columns,
          ...added.map(({ column }) => {
            const shown = companionTable.shape.columns[column]!;
            return { ...shown, header: `${shown.header || `column ${column + 1}`} (${companionTable.fileName})` };
          }),
        ],
      },
    },
    recipe: { ...recipe, columns: [...recipe.columns, ...uses] },
    alignment,
    warnings: [alignedWarning(alignment, companionTable), ...coverWarnings(columns, companionTable)],
  };
}

/** The two signals the lag was found on, over the time of the first, each from 0 to 1 over its range. */
export function alignmentPicture(tables: TwoTables, points: number): AlignmentPicture {
  const { alignment, first, second } = laidOver(tables);
  const [start, end] = [first.times[0] ?? 0, first.times.at(-1) ?? 0];
  const count = Math.max(2, Math.floor(points));
  const times = Float64Array.from({ length: count }, (_, i) => start + ((end - start) * i) / (count - 1));
  const moved = { ...second, times: onFirstClock(alignment, second.times) };
  return { alignment, times: [...times], first: curveOf(first, times), second: curveOf(moved, times) };
}

function curveOf(signal: LaidOver["first"], times: Float64Array): (number | null)[] {
  const known = withoutMissing(signal);
  const longest = Math.max(known.longest, 2 * usualStep(times));
  const values = valuesAt({ ...known, longest }, times);
  const shown = values.filter((value) => !Number.isNaN(value)).sort();
  const [low, high] = [shown[0] ?? 0, shown.at(-1) ?? 0];
  return [...values].map((value) => (Number.isNaN(value) ? null : high > low ? (value - low) / (high - low) : 0));
}

function laidOver({ table, recipe, companionTable, companion }: TwoTables): LaidOver {
  const second = { table: companionTable, recipe: recipeOfSecond(recipe, companion.columns) };
  return alignLogs({ first: { table, recipe }, second, lag: companion.lag });
}

/** The second log is read with what is known of the run. */
function recipeOfSecond(recipe: Recipe, columns: readonly ColumnUse[]): Recipe {
  return { ...recipe, columns: [...columns] };
}

function alignedWarning(alignment: Alignment, { fileName }: LogTable): Warning {
  return { code: "bench.logs-aligned", where: fileName, message: alignment.sentence };
}

function coverWarnings(columns: readonly Float64Array[], { fileName }: LogTable): Warning[] {
  const rows = columns[0]?.length ?? 0;
  const missing = columns.reduce((most, column) => Math.max(most, column.filter(Number.isNaN).length), 0);
  if (rows === 0 || missing === 0) return [];
  const share = (100 * missing) / rows;
  const message = `${fileName} does not cover ${share.toPrecision(2)} % of the rows of the log (${missing} of ${rows}): its channels are missing there.`;
  return [{ code: "bench.companion-gaps", where: fileName, message }];
}

import { columnName } from "../../log/columnName.ts";
import { headerWords } from "../../log/headerWords.ts";
import type { LogTable } from "../../log/logTable.ts";
import { readLog } from "../../log/readLog.ts";
import { unitOfStatedRole } from "../../log/statedRole.ts";
import type { LogReading } from "../../model/reading.ts";
import type { DragColumn, DragColumnUse, DragQuantity } from "../../model/vehicle/dragChannels.ts";
import { toSi } from "../../quantity/parseQuantity.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { requireUnit } from "../../quantity/unit.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { DRAG_QUANTITIES } from "./dragQuantities.data.ts";
import { type GuessedColumn, guessDragColumns, unitInHeader } from "./guessDragColumns.ts";

/** Columns of a log in SI, row by row without gaps. */
export interface DragChannels {
  readonly columns: { readonly [Q in DragQuantity]?: readonly number[] };
  readonly uses: readonly DragColumnUse[];
  /** Line of the file of each row, from 1. */
  readonly lineNumbers: readonly number[];
  readonly warnings: readonly Warning[];
}

export interface DragChannelOptions {
  /** Quantities that must be there. */
  readonly needed: readonly DragQuantity[];
  /** Columns that a person named; the rest is guessed. */
  readonly stated?: readonly DragColumn[];
  readonly fileName?: string;
  readonly reading?: LogReading;
}

/**
 * Time (s), speed (m/s), force (N), distance (m) and depth (m) out of a log or a pasted table, whatever its delimiter,
 * decimal mark and units. Columns that are not named are guessed from their headers and units, with the reason.
 * Rows in which a needed cell is missing are left out and counted in a warning.
 *
 * Source   `log/readLog.ts` reads the text; words of headers `dragQuantities.data.ts`.
 * Throws   InputProblem `log.*` for text that is no table, `vehicle.channel-missing`, `vehicle.channel-not-there`,
 *          `vehicle.channel-no-rows`, `quantity.wrong-dimension` and `quantity.unknown-unit`.
 */
export function dragChannels(text: string | Uint8Array | LogTable, options: DragChannelOptions): DragChannels {
  const { fileName = "log" } = options;
  const bytes = typeof text === "string" ? new TextEncoder().encode(text) : text;
  const table = bytes instanceof Uint8Array ? readLog(bytes, fileName, options.reading) : bytes;
  const found = chosenColumns(table, options);
  const uses = found.map((one) => useOf(table, one));
  const missing = options.needed.filter((quantity) => !uses.some((use) => use.quantity === quantity));
  if (missing.length > 0) throw notFound(table, missing);
  const kept = keptRows(table, uses, options.needed);
  if (kept.length === 0) throw noRows(table, options.needed);
  const present = uses.filter((use) => kept.every((row) => Number.isFinite(table.columns[use.column]![row]!)));
  return {
    columns: Object.fromEntries(present.map((use) => [use.quantity, inSi(table, use, kept)])),
    uses: present,
    lineNumbers: kept.map((row) => table.lineNumbers[row]!),
    warnings: [...unsureUses(table, present), ...leftOut(table, kept.length)],
  };
}

/** A stated column, or the guess where none is; a column that was stated is not guessed for another quantity. */
function chosenColumns(table: LogTable, { stated = [] }: DragChannelOptions): GuessedColumn[] {
  const named = stated.map(({ quantity, column, unit }) => ({
    ...{ quantity, column: columnIndex(table, column), reason: "A person named it.", sure: true },
    ...(unit === undefined ? {} : { unit }),
  }));
  const taken = new Set(named.map(({ column }) => column));
  const guessed = guessDragColumns(table, taken).filter(
    (guess) => !named.some(({ quantity }) => quantity === guess.quantity),
  );
  return [...named, ...guessed];
}

function columnIndex({ shape, fileName }: LogTable, column: number | string): number {
  const index =
    typeof column === "number"
      ? column
      : shape.columns.findIndex(({ header, name }) => header === column || headerWords(name) === headerWords(column));
  if (index >= 0 && index < shape.columns.length) return index;
  throw new InputProblem({
    code: "vehicle.channel-not-there",
    where: fileName,
    found: typeof column === "number" ? `there is no column ${column + 1}` : `no column is called "${column}"`,
    needed: `one of ${shape.columns.map((_, i) => columnName(shape, i)).join(", ")}`,
    mend: "Name a column that the file has",
  });
}

/** The unit: stated, in the header, or taken as SI, which is then not sure. A clock's unit is told by its numbers. */
function useOf(table: LogTable, { quantity, column, reason, sure, unit }: GuessedColumn): DragColumnUse {
  const { dimension } = DRAG_QUANTITIES[quantity];
  const where = columnName(table.shape, column);
  const written = unit ?? unitInHeader(table.shape.columns[column]!, dimension);
  if (written !== null) {
    return { quantity, column, reason, sure, unit: requireUnit(written, dimension, where).symbol };
  }
  if (quantity === "time") {
    const guess = unitOfStatedRole(table, column, "time");
    return {
      quantity,
      column,
      unit: guess.unit,
      reason: `${reason} Unit: ${guess.reason || guess.unit}.`,
      sure: sure && guess.sure,
    };
  }
  const si = requireUnit({ speed: "m/s", force: "N", distance: "m", depth: "m" }[quantity], dimension).symbol;
  return { quantity, column, unit: si, reason: `${reason} The header gives no unit: ${si} is assumed.`, sure: false };
}

function keptRows(table: LogTable, uses: readonly DragColumnUse[], needed: readonly DragQuantity[]): number[] {
  const columns = uses.filter(({ quantity }) => needed.includes(quantity)).map(({ column }) => table.columns[column]!);
  const rows = Array.from({ length: table.rows }, (_, row) => row);
  return rows.filter((row) => columns.every((values) => Number.isFinite(values[row]!)));
}

function inSi(table: LogTable, { quantity, column, unit }: DragColumnUse, rows: readonly number[]): number[] {
  const measured = requireUnit(unit, DRAG_QUANTITIES[quantity].dimension);
  return rows.map((row) => toSi(table.columns[column]![row]!, measured));
}

function unsureUses(table: LogTable, uses: readonly DragColumnUse[]): Warning[] {
  return uses
    .filter(({ sure }) => !sure)
    .map(({ quantity, column, unit, reason }) =>
      warning({
        code: "vehicle.channel-guessed",
        where: columnName(table.shape, column),
        found: `it is read as the ${DRAG_QUANTITIES[quantity].name} in ${unit}. ${reason}`,
        needed: "a header with quantity and unit",
        mend: "Say what the column is if this is wrong",
      }),
    );
}

function leftOut({ rows, fileName }: LogTable, kept: number): Warning[] {
  if (kept === rows) return [];
  return [
    warning({
      code: "vehicle.channel-rows-left-out",
      where: fileName,
      found: `${rows - kept} of ${rows} rows lack a number that is needed and are left out`,
      needed: "a number in each cell",
      mend: "",
    }),
  ];
}

const namesOf = (quantities: readonly DragQuantity[]) =>
  quantities.map((quantity) => DRAG_QUANTITIES[quantity].name).join(" and ");

function notFound({ shape, fileName }: LogTable, missing: readonly DragQuantity[]): InputProblem {
  return new InputProblem({
    code: "vehicle.channel-missing",
    where: fileName,
    found: `no column looks like ${namesOf(missing)}`,
    needed: `a column for ${namesOf(missing)}; there are ${shape.columns.map((_, i) => columnName(shape, i)).join(", ")}`,
    mend: "Say which column it is",
  });
}

function noRows({ fileName, rows }: LogTable, needed: readonly DragQuantity[]): InputProblem {
  return new InputProblem({
    code: "vehicle.channel-no-rows",
    where: fileName,
    found: `none of ${rows} rows has all of ${namesOf(needed)}`,
    needed: "rows in which all of them stand",
    mend: "Log them together, or fit means of steady stretches",
  });
}

import type { PartsTableChoices, PartsTablePreview, PartsTableRow } from "../model/partsTable.ts";
import type { StoredDocument } from "../model/stored.ts";
import { showsDecimalComma } from "./cellValue.ts";
import { foundHead } from "./foundHead.ts";
import { guessColumns, type TakenColumn } from "./guessColumns.ts";
import { openQuestions } from "./openQuestions.ts";
import { previewRows } from "./previewRows.ts";
import { rowValues } from "./rowValues.ts";
import { type TableKind, tableFields } from "./tableFields.ts";
import { type TextTable, textTable } from "./tableText.ts";

type Plain = Readonly<Record<string, unknown>>;

export interface PartsTableUse {
  readonly kind: TableKind;
  /** What the table is called in messages. */
  readonly name: string;
  readonly choices: PartsTableChoices;
  /** Parts of this kind that are there already. */
  readonly stored: readonly StoredDocument<unknown>[];
  /** Supply that motors are judged at, V. */
  readonly voltage?: number | undefined;
}

/**
 * What would become of a table of parts: how each column is taken and why, the part of each row or what keeps it from
 * being read, and what a person must decide before anything is imported. Nothing is settled silently.
 *
 * Throws   InputProblem `parts.no-head`, `parts.no-rows`, `parts.too-long` where the text is no table of parts.
 */
export function previewTable(text: string, use: PartsTableUse): PartsTablePreview {
  const { kind, name, choices } = use;
  const fields = tableFields(kind);
  const table = textTable(text, name);
  const head = foundHead(table, fields, name);
  const columns = guessColumns(head, fields, choices.columns);
  const decimalComma = usesDecimalComma(table);
  const read = head.body.map((row) => rowValues(row, { columns, decimalComma }));
  const stored = use.stored as readonly StoredDocument<Plain>[];
  const rows = previewRows(read, { kind, fields, choices, stored, voltage: use.voltage });
  return {
    columns: columns.map(({ taken: _taken, readings, ...column }) => ({
      ...column,
      readings: readings.map(({ unit, implies }) => ({ unit, implies })),
    })),
    rows: [...rows],
    leftOut: leftOut(columns, choices),
    told: told(table, decimalComma, rows),
    open: openQuestions({ columns, rows, fields, choices }),
  };
}

const usesDecimalComma = ({ delimiter, rows }: TextTable) =>
  delimiter !== "," ? rows.some(({ cells }) => cells.some(showsDecimalComma)) : false;

/** Headers of columns that hold something and go nowhere. */
function leftOut(columns: readonly TakenColumn[], { others }: PartsTableChoices): string[] {
  if (others === "note") return [];
  return columns.filter(({ taken, examples }) => taken === null && examples.length > 0).map(({ header }) => header);
}

function told(table: TextTable, decimalComma: boolean, rows: readonly PartsTableRow[]): string[] {
  const same = rows.filter(
    ({ act, storedId, changes, problems }) =>
      act === "skip" && storedId && changes.length === 0 && problems.length === 0,
  );
  return [
    ...(decimalComma ? ["A comma is read as the decimal mark."] : []),
    ...(table.delimiter === "|" ? ["Bars are read as the marks between cells."] : []),
    ...(same.length > 0
      ? [`${same.length === 1 ? "One row is" : `${same.length} rows are`} as the stored part: nothing to do there.`]
      : []),
  ];
}

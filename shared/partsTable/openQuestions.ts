import type { PartsTableChoices, PartsTableRow } from "../model/partsTable.ts";
import type { TakenColumn } from "./guessColumns.ts";
import type { TableField } from "./tableFields.ts";

interface Asked {
  readonly columns: readonly TakenColumn[];
  readonly rows: readonly PartsTableRow[];
  readonly fields: readonly TableField[];
  readonly choices: PartsTableChoices;
}

/** What must be decided before a table is imported, each a sentence; empty where it can be. */
export function openQuestions({ columns, rows, fields, choices }: Asked): string[] {
  const asking = rows.filter(({ act, problems }) => act === "ask" && problems.length === 0).length;
  const doubtful = rows.filter(({ open }) => open).length;
  const unread = rows.filter(({ problems }) => problems.length > 0).length;
  const kept = rows.length - unread;
  return [
    ...columns
      .filter(({ open }) => open)
      .map(({ header, readings }) => `The unit of "${header}": ${readings.map(({ unit }) => unit).join(" or ")}?`),
    ...twiceTaken(columns),
    ...missingColumns(columns, rows, fields),
    ...(asking > 0 ? [`${rowsText(asking)} a name that is taken: change the part, add another, or leave it out?`] : []),
    ...(doubtful > 0 ? [`${rowsText(doubtful)} values that look implausible: are they right?`] : []),
    ...(unread > 0 && choices.problems === "refuse"
      ? [
          `${unread === 1 ? "One row" : `${unread} rows`} can not be read: mend ${unread === 1 ? "it" : "them"}, or leave ${unread === 1 ? "it" : "them"} out.`,
        ]
      : []),
    ...(kept === 0 ? ["No row is left to import."] : []),
  ];
}

const rowsText = (count: number) => (count === 1 ? "One row has" : `${count} rows have`);

/** Two columns a person gave to the same value. */
function twiceTaken(columns: readonly TakenColumn[]): string[] {
  const taken = columns.filter(({ taken: field }) => field !== null);
  const again = taken.filter(({ field }, at) => taken.findIndex((other) => other.field === field) < at);
  return again.map(
    ({ header, taken: field }) => `"${header}" and another column are both taken as ${field!.head}: leave one out.`,
  );
}

function missingColumns(
  columns: readonly TakenColumn[],
  rows: readonly PartsTableRow[],
  fields: readonly TableField[],
): string[] {
  const needed = fields.filter(({ optional, key }) => !optional && !key.includes("."));
  const lacking = needed.filter(({ key }) => !columns.some(({ field }) => field === key));
  const isNew = rows.some(
    ({ act, problems }) => act === "add" && problems.some(({ code }) => code === "parts.missing"),
  );
  return isNew ? lacking.map(({ head }) => `No column is taken as the ${head}, which a new part needs.`) : [];
}

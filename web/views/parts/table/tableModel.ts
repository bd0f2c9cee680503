import { PartsTableChoices, type PartsTablePreview, type PartsTableRow } from "../../../../shared/model/partsTable.ts";
import { type PartsTableUse, previewTable } from "../../../../shared/partsTable/previewTable.ts";
import { tableFields } from "../../../../shared/partsTable/tableFields.ts";
import { InputProblem } from "../../../../shared/quantity/problem.ts";
import { symbolsOf } from "../../../../shared/quantity/unit.ts";
import { capitalised, counts, joined } from "../../../app/words.ts";
import { type FormKind, KIND_NAMES } from "../partsModel.ts";

/** What stands in the dialog: nothing yet, a table, or why the text is none. */
export type TableLook =
  | { readonly state: "empty" }
  | { readonly state: "refused"; readonly why: string }
  | { readonly state: "table"; readonly preview: PartsTablePreview };

export const NO_CHOICES: PartsTableChoices = PartsTableChoices.parse({});

/** The table as it stands with the choices made so far. */
export function tableLook(text: string, use: PartsTableUse): TableLook {
  if (text.trim() === "") return { state: "empty" };
  try {
    return { state: "table", preview: previewTable(text, use) };
  } catch (thrown) {
    if (thrown instanceof InputProblem) return { state: "refused", why: thrown.message };
    throw thrown;
  }
}

/** What a column can stand for, the value that it is left out first. */
export function fieldOptions(kind: FormKind): readonly { readonly value: string; readonly label: string }[] {
  return [
    { value: "", label: "nothing: left out" },
    ...tableFields(kind).map(({ key, head }) => ({ value: key, label: head })),
  ];
}

/** Units that a column can be in when it stands for `field`; empty where there is none to choose. */
export function unitOptions(kind: FormKind, field: string): readonly string[] {
  const written = tableFields(kind).find(({ key }) => key === field)?.written;
  if (!written || written.dimension === "number") return [];
  return symbolsOf(written.dimension);
}

/** A unit on a button or in a list. */
export const unitWords = (unit: string) => (unit === "1" ? "share of 1" : unit);

/** The choices with one column given to a value and a unit. */
export function withColumn(choices: PartsTableChoices, column: number, field: string, unit: string): PartsTableChoices {
  const others = choices.columns.filter((one) => one.column !== column);
  return { ...choices, columns: [...others, { column, field, unit }] };
}

type RowChoice = PartsTableChoices["rows"][number];

/** The choices with more decided about one row. */
export function withRow(choices: PartsTableChoices, row: number, change: Omit<RowChoice, "row">): PartsTableChoices {
  const now = choices.rows.find((one) => one.row === row) ?? { row };
  return { ...choices, rows: [...choices.rows.filter((one) => one.row !== row), { ...now, ...change }] };
}

/** Every open unit answered as proposed; those without a proposal stay open. */
export function withProposals(choices: PartsTableChoices, { columns }: PartsTablePreview): PartsTableChoices {
  return columns
    .filter(({ open, unit }) => open && unit !== "")
    .reduce((now, { column, field, unit }) => withColumn(now, column, field, unit), choices);
}

/** Rows that are shown before the others are asked for: those with something to decide or mend first of all. */
export function shownRows(rows: readonly PartsTableRow[], most: number): readonly PartsTableRow[] {
  const urgent = rows.filter(needsALook);
  const chosen = new Set([...urgent, ...rows.filter((row) => !needsALook(row))].slice(0, most));
  return rows.filter((row) => chosen.has(row));
}

export function needsALook({ act, problems, open, storedId }: PartsTableRow): boolean {
  return problems.length > 0 || open || act === "ask" || (storedId !== null && act !== "skip");
}

/** "Adds 3 motors, changes 1 and leaves out 2 rows." */
export function outcomeText(kind: FormKind, { rows }: PartsTablePreview): string {
  const { one } = KIND_NAMES[kind];
  const ready = rows.filter(({ document }) => document !== null);
  const [added, changed] = ["add", "update"].map((act) => ready.filter((row) => row.act === act).length) as [
    number,
    number,
  ];
  const out = rows.length - added - changed;
  const said = [
    ...(added > 0 ? [`adds ${counts(added, one)}`] : []),
    ...(changed > 0 ? [`changes ${counts(changed, one)}`] : []),
    ...(out > 0 ? [`leaves out ${counts(out, "row")}`] : []),
  ];
  return `${capitalised(joined(said))}.`;
}

/** Label of the act, for undo: "Imported 3 motors". */
export function importLabel(kind: FormKind, { rows }: PartsTablePreview): string {
  const ready = rows.filter(({ document, act }) => document !== null && (act === "add" || act === "update"));
  return `Imported ${counts(ready.length, KIND_NAMES[kind].one)}`;
}

const ACTS: Readonly<Record<PartsTableRow["act"], string>> = {
  add: "is added",
  update: "changes the part of this name",
  skip: "is left out",
  ask: "choose: the name is taken",
};

export const ACT_OPTIONS = (["ask", "update", "add", "skip"] as const).map((value) => ({ value, label: ACTS[value] }));

/** What becomes of a row, in words; empty where that is chosen from a list. */
export function actText({ act, problems, storedId }: PartsTableRow): string {
  if (problems.length > 0) return "can not be read";
  return storedId === null ? ACTS[act] : "";
}

import type { PartsTableAct, PartsTableChoices, PartsTableRow, PartsTableRowChoice } from "../model/partsTable.ts";
import type { StoredDocument } from "../model/stored.ts";
import type { MotorConstants } from "../motor/motorConstants.ts";
import { motorProblems } from "../motor/motorProblems.ts";
import { speedConstantReadings } from "../motor/speedConstantReadings.ts";
import { type Problem, sentence } from "../quantity/problem.ts";
import { type RowDocument, rowDocument } from "./rowDocument.ts";
import type { RowValues } from "./rowValues.ts";
import type { TableField, TableKind } from "./tableFields.ts";

type Plain = Readonly<Record<string, unknown>>;

export interface RowsUse {
  readonly kind: TableKind;
  readonly fields: readonly TableField[];
  readonly choices: PartsTableChoices;
  readonly stored: readonly StoredDocument<Plain>[];
  readonly voltage: number | undefined;
}

/** What each row becomes: a new part, a change of the one of its name, or nothing. */
export function previewRows(rows: readonly RowValues[], use: RowsUse): PartsTableRow[] {
  const byName = new Map(use.stored.map((part) => [nameKey(part.document["name"]), part]));
  const seen = new Map<string, number>();
  return rows.map((row) => {
    const choice = use.choices.rows.find((one) => one.row === row.row);
    const key = nameKey(nameOf(row));
    const first = seen.get(key);
    if (first === undefined) seen.set(key, row.row);
    return previewRow(withConstant(row, choice), { ...use, choice, stored: byName.get(key), first });
  });
}

interface RowUse extends Omit<RowsUse, "stored"> {
  readonly choice: PartsTableRowChoice | undefined;
  readonly stored: StoredDocument<Plain> | undefined;
  /** Line of an earlier row of this name. */
  readonly first: number | undefined;
}

function previewRow(row: RowValues, use: RowUse): PartsTableRow {
  const { kind, fields, choice, stored, first, choices } = use;
  const make = (over: Plain | null) =>
    rowDocument(row, { kind, fields, stored: over, othersToNote: choices.others === "note" });
  const isNamed = stored !== undefined || first !== undefined;
  const updated = stored === undefined ? null : make(stored.document);
  const isSame = updated !== null && "document" in updated && updated.changes.length === 0 && row.problems.length === 0;
  const wanted = choice?.act ?? (isSame ? "skip" : isNamed ? choices.sameName : "add");
  const made = wanted === "add" || stored === undefined ? make(null) : updated!;
  const problems = [...row.problems, ...problemsOf(row, made, wanted), ...(wanted === "update" ? twice(row, use) : [])];
  const document = "document" in made && problems.length === 0 ? made.document : null;
  const settled = wanted === "skip" || document === null;
  return {
    row: row.row,
    name: nameOf(row),
    act: wanted,
    storedId: stored?.id ?? null,
    document,
    changes: "document" in made && wanted !== "add" ? [...made.changes] : [],
    problems: wanted === "skip" ? [] : problems.map(toldOf),
    ...(settled ? NO_DOUBT : doubtsOf(document, use)),
  };
}

const NO_DOUBT = { doubts: [], readings: [], open: false };

function doubtsOf(
  document: Plain,
  { kind, voltage, choice, stored }: RowUse,
): Pick<PartsTableRow, "doubts" | "readings" | "open"> {
  if (kind !== "motors") return NO_DOUBT;
  const motor = constantsOf(document);
  const doubts = motorProblems(motor, voltage);
  const known = stored && CONSTANTS.every((name) => stored.document[name] === document[name]);
  return { doubts, readings: speedConstantReadings(motor), open: doubts.length > 0 && !known && choice?.keep !== true };
}

/** The constants of a motor's document, which the schema of motors has let pass. */
const constantsOf = (motor: Plain): MotorConstants => ({
  speedConstant: Number(motor["speedConstant"]),
  resistance: Number(motor["resistance"]),
  noLoadCurrent: Number(motor["noLoadCurrent"]),
  noLoadCurrentSlope: Number(motor["noLoadCurrentSlope"]),
});

const CONSTANTS = ["speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope"] as const;

/** What the part lacks, but for what is there and can not be read: that is told by its cell. */
function problemsOf({ row, unread }: RowValues, made: RowDocument, act: PartsTableAct | "ask"): readonly Problem[] {
  if ("document" in made || act === "skip") return [];
  const lacking = made.missing.filter(({ key }) => !unread.includes(key)).map(({ head }) => missing(row, head));
  return unread.length > 0 ? lacking : [...made.problems, ...lacking];
}

/** The speed constant that a person chose takes the place of the one in the row. */
function withConstant(row: RowValues, choice: PartsTableRowChoice | undefined): RowValues {
  const chosen = choice?.speedConstant;
  if (chosen === undefined) return row;
  return {
    ...row,
    values: row.values.map(([field, value]) => [field, field.key === "speedConstant" ? chosen : value] as const),
  };
}

function twice({ row }: RowValues, { first, stored }: RowUse): Problem[] {
  if (first === undefined && stored !== undefined) return [];
  const found = first === undefined ? "No part of this name is there" : `Line ${first} has the same name`;
  return [
    {
      code: "parts.no-single-part",
      where: `line ${row}`,
      found,
      needed: "one row for one part that is changed",
      mend: "Add it as a new part or leave it out",
    },
  ];
}

function missing(row: number, head: string): Problem {
  return {
    code: "parts.missing",
    where: `line ${row}`,
    found: `There is no ${head}`,
    needed: `the ${head}`,
    mend: "Fill it in",
  };
}

const toldOf = (problem: Problem) => ({ code: problem.code, where: problem.where, message: sentence(problem) });

function nameOf({ values }: RowValues): string {
  return String(values.find(([{ key }]) => key === "name")?.[1] ?? "");
}

/** Names are the same whatever their case and blanks. */
function nameKey(name: unknown): string {
  return String(name).trim().toLowerCase().replace(/\s+/g, " ");
}

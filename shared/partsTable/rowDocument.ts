import { PART_SCHEMAS } from "../model/parts/partKinds.ts";
import { documentWith, valueAt } from "../model/parts/partValues.ts";
import type { Problem } from "../quantity/problem.ts";
import type { RowValues } from "./rowValues.ts";
import type { TableField, TableKind } from "./tableFields.ts";

type Plain = Readonly<Record<string, unknown>>;

/** A whole part made of a row, or why there is none. */
export type RowDocument =
  | { readonly document: Plain; readonly changes: readonly string[] }
  | { readonly problems: readonly Problem[]; readonly missing: readonly TableField[] };

export interface RowUse {
  readonly kind: TableKind;
  readonly fields: readonly TableField[];
  /** The part that the row changes; null for a new one. An empty cell changes nothing of it. */
  readonly stored: Plain | null;
  /** Cells without a place in the part go into its note. */
  readonly othersToNote: boolean;
}

/** Constants of a motor that were found together: correlations hold only as long as all of them stand. */
const CORRELATED = ["speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope"];
const CORRELATIONS = "uncertainties.correlations";

/** The part that a row makes, alone or over the stored one. */
export function rowDocument(row: RowValues, { kind, fields, stored, othersToNote }: RowUse): RowDocument {
  const given = new Map<TableField, unknown>(row.values);
  const whole = new Map<TableField, unknown>();
  for (const field of fields) {
    const kept = keptValue(field, given, stored);
    const value = given.has(field) ? given.get(field) : kept;
    if (value !== undefined) whole.set(field, value);
  }
  if (othersToNote) addToNote(whole, fields, row.others);
  dropCorrelations(whole, given, stored);
  const read = PART_SCHEMAS[kind].safeParse(documentWith([...whole]));
  if (read.success) return { document: read.data as Plain, changes: changesOf(fields, stored, read.data as Plain) };
  return refusedDocument(row.row, fields, read.error.issues);
}

/** What stands in the stored part, but for other ways to state what the row states anew. */
function keptValue(field: TableField, given: ReadonlyMap<TableField, unknown>, stored: Plain | null): unknown {
  const { way } = field;
  const restated = way !== null && [...given.keys()].some((other) => other !== field && other.way?.key === way.key);
  return restated ? undefined : valueAt(stored, field.key);
}

function addToNote(whole: Map<TableField, unknown>, fields: readonly TableField[], others: readonly string[]): void {
  const note = fields.find(({ key }) => key === "note")!;
  const now = String(whole.get(note) ?? "");
  const lines = others.filter((line) => !now.split("\n").includes(line));
  if (lines.length > 0) whole.set(note, [now, ...lines].filter((line) => line !== "").join("\n"));
}

function dropCorrelations(
  whole: Map<TableField, unknown>,
  given: ReadonlyMap<TableField, unknown>,
  stored: Plain | null,
): void {
  const list = [...whole.keys()].find(({ key }) => key === CORRELATIONS);
  if (stored === null || !list || given.has(list)) return;
  const changed = [...given].some(
    ([{ key }, value]) => CORRELATED.includes(key.replace("uncertainties.", "")) && value !== valueAt(stored, key),
  );
  if (changed) whole.delete(list);
}

function changesOf(fields: readonly TableField[], stored: Plain | null, document: Plain): string[] {
  if (stored === null) return [];
  const text = (part: Plain, key: string) => JSON.stringify(valueAt(part, key));
  return fields.filter(({ key }) => text(stored, key) !== text(document, key)).map(({ head }) => head);
}

type Issue = {
  readonly path: readonly PropertyKey[];
  readonly code: string;
  readonly input?: unknown;
  readonly message: string;
};

function refusedDocument(row: number, fields: readonly TableField[], issues: readonly Issue[]): RowDocument {
  const missing: TableField[] = [];
  const problems = issues.flatMap(({ path }): Problem[] => {
    const key = path.map(String).join(".");
    const field = fields.find((one) => one.key === key) ?? fields.find((one) => one.key.startsWith(`${key}.`));
    if (field && !field.key.includes(".")) {
      missing.push(field);
      return [];
    }
    const about = field?.head ?? fields.find((one) => key.startsWith(one.key))?.head ?? key;
    return [notWhole(row, about, key.includes(".") || field !== undefined)];
  });
  return { problems, missing: [...new Set(missing)] };
}

function notWhole(row: number, about: string, isMissing: boolean): Problem {
  return {
    code: "parts.not-whole",
    where: `line ${row}`,
    found: isMissing ? `The row has values that need the ${about} beside them` : `The ${about} can not be`,
    needed: `the ${about}`,
    mend: "Fill it in, or leave out the values that go with it",
  };
}

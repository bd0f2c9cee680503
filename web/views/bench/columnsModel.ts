import { ROLE_DIMENSIONS, ROLE_NAMES, roleUnit } from "../../../shared/log/roleUnits.ts";
import type { LogInspection, RoleGuess } from "../../../shared/model/log.ts";
import type { ReadingChoice } from "../../../shared/model/readingChoice.ts";
import type { ColumnRole, ColumnUse } from "../../../shared/model/recipe.ts";
import { requireUnit, symbolsOf } from "../../../shared/quantity/unit.ts";

/** What a column can stand for, in the order of the list. */
export const ROLES = Object.keys(ROLE_NAMES) as ColumnRole[];

/** Name of a role as the start of a line. */
export function roleTitle(role: ColumnRole): string {
  const name = ROLE_NAMES[role];
  return `${name[0]!.toUpperCase()}${name.slice(1)}`;
}

export interface ColumnRow {
  readonly column: number;
  /** Header as written, or the place of the column where there is none. */
  readonly header: string;
  readonly firstValues: string;
  readonly role: ColumnRole;
  readonly unit: string;
  readonly units: readonly string[];
  readonly reason: string;
  /** False where another reading is plausible and nobody has decided yet. */
  readonly sure: boolean;
  readonly alternatives: readonly { readonly role: ColumnRole; readonly unit: string; readonly text: string }[];
}

export interface ColumnsModel {
  readonly rows: readonly ColumnRow[];
  /** How much there is. */
  readonly size: string;
  /** That, and what to look at before it is confirmed. */
  readonly lead: string;
  /** The log counts electrical turns, so that the pole pairs must be known. */
  readonly needsPolePairs: boolean;
  /** What stops the log from being used; empty when nothing does. */
  readonly missing: readonly string[];
}

/**
 * Everything the panel says about the columns of a log: what they are taken for, why, and what else they could be.
 * Roles that are found `elsewhere`, in the electrical log of the run, are not missing here.
 */
export function columnsModel(
  inspection: LogInspection,
  uses: readonly ColumnUse[],
  elsewhere: readonly ColumnRole[] = [],
): ColumnsModel {
  const rows = inspection.shape.columns.map((column, index) => {
    const guess = inspection.guesses.find((one) => one.column === index);
    const use = uses.find((one) => one.column === index);
    return columnRow(inspection, index, column.header, guess, use);
  });
  const doubtful = rows.filter((row) => !row.sure);
  return {
    rows,
    size: `${sizeOf(inspection)}.`,
    lead: lead(inspection, doubtful),
    needsPolePairs: rows.some((row) => countsElectricalTurns(row)),
    missing: missingOf(rows, elsewhere),
  };
}

/** The column uses with one column set to `role` and `unit`; a role belongs to one column, so the former holder is set aside. */
export function withColumn(uses: readonly ColumnUse[], changed: ColumnUse): ColumnUse[] {
  const others = uses
    .filter((use) => use.column !== changed.column)
    .map((use) => (use.role === changed.role && use.role !== "ignore" ? { ...use, role: "ignore" as const } : use));
  return [...others, changed].sort((a, b) => a.column - b.column);
}

/** The unit that a column gets when its role changes: the one it had if that can be kept, else the first of the role. */
export function unitForRole(role: ColumnRole, former: string): string {
  const units = unitsOfRole(role);
  return units.includes(former) ? former : (units[0] ?? former);
}

/** Units that numbers of a role can be written in; a command is a pulse width, a share or plain steps. */
export function unitsOfRole(role: ColumnRole): string[] {
  if (role === "command") return ["us", "%", "1"];
  return role === "ignore" ? [] : [...new Set(symbolsOf(ROLE_DIMENSIONS[role]))];
}

/** A unit as a list shows it. */
export function unitWords(unit: string): string {
  if (unit === "1" || unit === "") return "plain number";
  return unit === "us" ? "µs" : unit;
}

/** What is open about the columns of the log itself. */
export function ownChoices({ choices = [], shape }: LogInspection): readonly ReadingChoice[] {
  return choices.filter(({ column }) => column < shape.columns.length);
}

/** What is open about the columns of the electrical log, told by its own columns. */
export function choicesBeside(
  { choices = [], shape }: LogInspection,
  companion: readonly ColumnUse[],
): readonly ReadingChoice[] {
  return choices.flatMap((choice) => {
    const use = companion.find(({ role }) => role === choice.role);
    return use === undefined || choice.column < shape.columns.length ? [] : [{ ...choice, column: use.column }];
  });
}

function columnRow(
  inspection: LogInspection,
  index: number,
  header: string,
  guess: RoleGuess | undefined,
  use: ColumnUse | undefined,
): ColumnRow {
  const role = use?.role ?? "ignore";
  const unit = spelled(role, use?.unit ?? "");
  const decided = guess === undefined || guess.role !== role || spelled(role, guess.unit) !== unit;
  const offered = unitsOfRole(role);
  return {
    column: index,
    header: header.trim() === "" ? `Column ${index + 1}` : header,
    firstValues: inspection.preview
      .slice(0, 4)
      .map((row) => (row[index] ?? "").trim() || "–")
      .join("  "),
    role,
    unit,
    units: offered.includes(unit) || role === "ignore" ? offered : [unit, ...offered],
    reason: decided ? "Set by you." : guess.reason,
    sure: decided || guess.sure,
    alternatives: (guess?.alternatives ?? [])
      .filter((one) => one.role !== role || one.unit !== unit)
      .map((one) => ({
        role: one.role,
        unit: one.unit,
        text: `${roleTitle(one.role)}${one.unit === "" || one.unit === "1" ? "" : ` in ${one.unit}`}: ${one.implies}`,
      })),
  };
}

/** The usual spelling of a unit, so that "µs" and "us" count as one. */
function spelled(role: ColumnRole, unit: string): string {
  return role === "ignore" ? unit : (roleUnit(role, unit) ?? unit);
}

function sizeOf({ rows, shape }: LogInspection): string {
  return `${rows.toLocaleString("en").replaceAll(",", "\u202f")} rows of ${shape.columns.length} columns`;
}

function lead(inspection: LogInspection, doubtful: readonly ColumnRow[]): string {
  const size = sizeOf(inspection);
  if (doubtful.length === 0) return `${size}. Every column has one plausible reading; look them over and confirm.`;
  const names = doubtful.map((row) => `“${row.header}”`).join(", ");
  return `${size}. Look at ${names}: more than one reading is plausible.`;
}

function missingOf(rows: readonly ColumnRow[], elsewhere: readonly ColumnRole[]): string[] {
  return (["thrust", "rotationRate"] as const)
    .filter((role) => !elsewhere.includes(role) && !rows.some((row) => row.role === role))
    .map((role) => `No column stands for ${ROLE_NAMES[role]}. Choose it in the list above.`);
}

function countsElectricalTurns({ role, unit }: ColumnRow): boolean {
  if (role !== "rotationRate") return false;
  return unitsOfRole(role).includes(unit) && requireUnit(unit, "rotationRate").electrical === true;
}

import type { LogTable } from "../../shared/log/logTable.ts";
import { ROLE_DIMENSIONS, requireRoleUnit, roleOfText } from "../../shared/log/roleUnits.ts";
import { unitOfStatedRole } from "../../shared/log/statedRole.ts";
import type { ColumnRole, ColumnUse } from "../../shared/model/recipe.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Words } from "./options.ts";

/** The roles whose column or unit the words state. */
export function statedRoles(words: Words): ReadonlySet<ColumnRole> {
  return new Set(words.pairs("unit").map(([role]) => roleOf(role, "--unit")));
}

/** The roles whose column, unit or calibration the words state. */
export function settledRoles(words: Words): ReadonlySet<ColumnRole> {
  const columns = words.pairs("column").map(([role]) => roleOf(role, "--column"));
  return new Set([...statedRoles(words), ...columns]);
}

/** The guessed columns, with what --column and --unit say put over them. */
export function statedColumns(table: LogTable, guessed: readonly ColumnUse[], words: Words): ColumnUse[] {
  const uses = new Map(guessed.map((use) => [use.column, use]));
  for (const [roleText, header] of words.pairs("column")) {
    const role = roleOf(roleText, "--column");
    const column = columnOf(table, header);
    for (const use of uses.values()) if (use.role === role) uses.set(use.column, { ...use, role: "ignore" });
    uses.set(column, { column, role, unit: role === "ignore" ? "1" : unitOfStatedRole(table, column, role).unit });
  }
  for (const [roleText, unit] of words.pairs("unit")) {
    const role = roleOf(roleText, "--unit");
    const use = [...uses.values()].find((one) => one.role === role);
    if (!use) throw noColumn(role, table);
    uses.set(use.column, { ...use, unit: requireRoleUnit(role, unit, "--unit") });
  }
  return [...uses.values()].sort((a, b) => a.column - b.column);
}

/** The role that a word of --column, --unit or --factor names; `where` is that option. */
export function roleOf(text: string, where: string): ColumnRole {
  const role = roleOfText(text);
  if (role) return role;
  throw new InputProblem({
    code: "cli.unknown-role",
    where,
    found: `"${text}" is not something a column can stand for`,
    needed: Object.keys(ROLE_DIMENSIONS).join(", "),
    mend: 'For example --column thrust="Load (gf)"',
  });
}

function columnOf(table: LogTable, wanted: string): number {
  const { columns } = table.shape;
  const numbered = /^#(\d+)$/.exec(wanted);
  if (numbered && Number(numbered[1]) >= 1 && Number(numbered[1]) <= columns.length) return Number(numbered[1]) - 1;
  const fold = (text: string) => text.trim().toLowerCase();
  for (const spelling of ["header", "name"] as const) {
    const found = columns.findIndex((column) => fold(column[spelling]) === fold(wanted));
    if (found >= 0) return found;
  }
  throw new InputProblem({
    code: "cli.no-such-column",
    where: `--column, ${table.fileName}`,
    found: `no column has the header "${wanted}"`,
    needed: columns.map((column, index) => `#${index + 1} "${column.header}"`).join(", "),
    mend: "Use one of these headers, or # and the number of the column",
  });
}

function noColumn(role: ColumnRole, table: LogTable): InputProblem {
  return new InputProblem({
    code: "cli.no-column-for-role",
    where: `--unit, ${table.fileName}`,
    found: `no column stands for ${role}`,
    needed: "a column that this unit belongs to",
    mend: `Say which: --column ${role}="HEADER"`,
  });
}

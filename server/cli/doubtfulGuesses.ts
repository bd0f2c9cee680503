import type { LogTable } from "../../shared/log/logTable.ts";
import type { RoleGuess } from "../../shared/model/log.ts";
import type { ColumnRole, ColumnUse } from "../../shared/model/recipe.ts";
import { type Warning, warning } from "../../shared/quantity/warning.ts";

/** What the words already settle. */
export interface Stated {
  readonly roles: ReadonlySet<ColumnRole>;
  readonly columns: readonly ColumnUse[];
}

/** One note for each guess that is not sure and that no word settles, with the option that says otherwise. */
export function doubtfulGuesses(table: LogTable, guesses: readonly RoleGuess[], { roles, columns }: Stated): Warning[] {
  return guesses.flatMap((guess) => {
    const use = columns.find(({ column }) => column === guess.column);
    const isOpen = !guess.sure && use?.role === guess.role && use.unit === guess.unit;
    const settled = roles.has(guess.role) || guess.alternatives.some(({ role }) => roles.has(role));
    return isOpen && !settled ? [noted(table, guess)] : [];
  });
}

function noted(table: LogTable, { column, role, reason, alternatives }: RoleGuess): Warning {
  const header = table.shape.columns[column]!.header;
  const name = header === "" ? `#${column + 1}` : header;
  const options = alternatives.map((other) => {
    const option = other.role === role ? `--unit ${role}=${other.unit}` : `--column ${other.role}="${name}"`;
    return `${option} (${other.implies.replace(/\.$/, "")})`;
  });
  return warning({
    code: "cli.doubtful-guess",
    where: `column ${name}`,
    found: reason.replace(/\.$/, ""),
    needed: "",
    mend: options.length > 0 ? `If that is not so: ${options.join(", or ")}` : `To be sure: --column ${role}="HEADER"`,
  });
}

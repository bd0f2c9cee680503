import type { ColumnRole, Recipe } from "../../shared/model/recipe.ts";
import { type Warning, warning } from "../../shared/quantity/warning.ts";
import { roleOf } from "./columnOptions.ts";
import type { Words } from "./options.ts";

/** Options that change nothing because the log has no column for them. */
export function withoutEffect(words: Words, { columns }: Recipe): Warning[] {
  const has = (role: ColumnRole) => columns.some((use) => use.role === role);
  const factors = words
    .pairs("factor")
    .map(([text]) => roleOf(text, "--factor"))
    .filter((role) => !has(role))
    .map((role) =>
      warning({
        code: "cli.no-effect",
        where: "--factor",
        found: `no column of the log is ${role}, so that its factor changed nothing`,
        needed: "",
        mend: `Say which column it is: --column ${role}="HEADER"`,
      }),
    );
  if (!words.has("kv") || has("torque") || has("electricalPower") || (has("voltage") && has("current"))) return factors;
  return [
    ...factors,
    warning({
      code: "cli.no-effect",
      where: "--kv",
      found: "the log has no voltage and current, so that the motor's constants gave no shaft power",
      needed: "",
      mend: 'Say which columns they are: --column voltage="HEADER" --column current="HEADER", or add --electrical-log',
    }),
  ];
}

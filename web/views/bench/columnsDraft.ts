import { useState } from "preact/hooks";
import { recipeFromGuesses } from "../../../shared/bench/recipeFromGuesses.ts";
import type { LogInspection } from "../../../shared/model/log.ts";
import type { LogReading } from "../../../shared/model/reading.ts";
import type { ColumnRole, ColumnUse, Recipe } from "../../../shared/model/recipe.ts";
import { turnedRoles } from "./columnSigns.ts";
import { type ColumnRow, withColumn } from "./columnsModel.ts";

/** Columns as a person is about to store them. */
export interface ColumnsDraft {
  readonly uses: readonly ColumnUse[];
  readonly turned: ReadonlySet<ColumnRole>;
  readonly use: (changed: ColumnUse) => void;
  readonly change: (row: ColumnRow, role: ColumnRole, unit: string) => void;
  readonly turn: (role: ColumnRole, turned: boolean) => void;
}

/** What was stored, until it is changed: what each column stands for and which channels are turned round. */
export function useColumnsDraft(stored: StoredColumns, recipe: Recipe, inspection: LogInspection): ColumnsDraft {
  const [uses, setUses] = useState(() => columnsThatFit(stored, recipe, inspection));
  const [turned, setTurned] = useState(() => turnedRoles(recipe));
  const use = (changed: ColumnUse) => setUses(withColumn(uses, changed));
  return {
    uses,
    turned,
    use,
    change: (row, role, unit) => use({ column: row.column, role, unit: role === "ignore" ? row.unit : unit }),
    turn: (role, isTurned) => {
      const others = [...turned].filter((one) => one !== role);
      setTurned(new Set(isTurned ? [...others, role] : others));
    },
  };
}

/** The log of a run, or its electrical log, as far as its columns go. */
interface StoredColumns {
  readonly columns: readonly ColumnUse[];
  readonly reading?: LogReading;
}

/** What is stored, or what is guessed anew where the text is now read into other columns. */
function columnsThatFit(
  { columns, reading }: StoredColumns,
  { fluid }: Recipe,
  { guesses, shape }: LogInspection,
): readonly ColumnUse[] {
  const fits = columns.every(({ column }) => column < shape.columns.length);
  const isWhole = columns.length === shape.columns.length || reading === undefined;
  return fits && isWhole ? columns : recipeFromGuesses({ guesses, fluid }).columns;
}

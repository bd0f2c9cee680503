import { columnStatistics } from "./columnStatistics.ts";
import type { LogTable } from "./logTable.ts";
import type { NamedRole } from "./roleWords.data.ts";
import { guessUnit, type UnitGuess } from "./unitGuess.ts";

/** The unit of `column` (from 0) when a person says that it stands for `role`: from the header, else from the numbers. */
export function unitOfStatedRole(table: LogTable, column: number, role: NamedRole): UnitGuess {
  return guessUnit({ role, column: table.shape.columns[column]!, numbers: columnStatistics(table)[column]! });
}

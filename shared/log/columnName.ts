import type { LogShape } from "../model/log.ts";

/** A column as messages call it, by number because headers may repeat: `column 3 "Thrust (g)"`. */
export function columnName(shape: LogShape, column: number): string {
  const header = shape.columns[column]?.header ?? "";
  return header === "" ? `column ${column + 1}` : `column ${column + 1} "${header}"`;
}

import type { Dimension } from "../../shared/quantity/units.data.ts";
import { readText } from "./quantityText.ts";

export interface ReadList {
  readonly values: readonly number[];
  /** What is wrong with one of them; null for none. */
  readonly problem: string | null;
}

/** Lengths written one after the other, "70 mm, 90 mm", m. A semicolon parts them where a comma is a decimal mark. */
export const readLengths = (text: string): ReadList => readList(text, "length");
export const readVoltages = (text: string): ReadList => readList(text, "voltage");
export const readNumbers = (text: string): ReadList => readList(text, "number");

function readList(text: string, dimension: Dimension): ReadList {
  const values: number[] = [];
  for (const item of text.split(text.includes(";") ? ";" : /,\s+|,(?=\s*$)/)) {
    const read = readText(item, dimension, { positive: true });
    if (read.kind === "problem") return { values: [], problem: read.message };
    if (read.kind === "value") values.push(read.si);
  }
  return { values, problem: null };
}

import type { PartKind } from "../model/parts/partKinds.ts";
import { leavesOf, type PartLeaf } from "../model/parts/partLeaves.ts";
import { FIELD_WORDS, type FieldWords } from "./fieldWords.data.ts";

/** Kinds of part that fit a row of a table; instruments hold calibrations of many shapes. */
export type TableKind = Exclude<PartKind, "instruments">;

/** A value of a part as a column of a table. */
export type TableField = PartLeaf & FieldWords;

/** The columns that a table of one kind of part can have, in the order in which they are written. */
export function tableFields(kind: TableKind): TableField[] {
  return leavesOf(kind).map((leaf) => {
    const words = FIELD_WORDS[`${kind}:${leaf.key}`] ?? FIELD_WORDS[leaf.key];
    if (!words) throw new Error(`No words for a column of ${leaf.key} of ${kind}: add them to fieldWords.data.ts.`);
    return { ...leaf, ...words };
  });
}

/** Head of a column that this program writes: "winding resistance (mΩ)". */
export function headOf({ head, written, unit }: TableField): string {
  if (written === null) return unit === "" ? head : `${head} (${unit})`;
  if (written.dimension === "number") return head;
  return `${head} (${written.dimension === "fraction" ? "fraction" : written.unit})`;
}

/** Unit of the numbers under that head; empty where there is none to choose. */
export function unitOfHead({ written }: TableField): string {
  if (written === null || written.dimension === "number") return "";
  return written.dimension === "fraction" ? "1" : written.unit;
}

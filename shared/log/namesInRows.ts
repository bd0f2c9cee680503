import type { ColumnNature } from "./columnKinds.ts";
import type { CutRow } from "./delimiterChoice.ts";
import { isUnit } from "./headerText.ts";
import { rolesNamed } from "./headerWords.ts";

/** Names and units that stand in cells of their own in every row: "Thrust 345 g RPM 2300". */
export interface NamesInRows {
  /** Name of each column, "" where none stands before its number. */
  readonly names: readonly string[];
  /** Unit of each column, null where none stands behind its number. */
  readonly units: readonly (string | null)[];
  /** Columns that hold these words and nothing else. */
  readonly words: ReadonlySet<number>;
}

/** Fewest rows that must say the same for words to be names. */
const FEWEST_ROWS = 3;
/** Fewest names that the trade must know. */
const FEWEST_NAMES = 2;

/**
 * Names and units in columns whose text never changes, beside the columns of numbers that they belong to; null where
 * there is none. A row that begins with a word has the name before each number; a unit stands behind it.
 */
export function namesInRows(natures: readonly ColumnNature[], rows: readonly CutRow[]): NamesInRows | null {
  if (rows.length < FEWEST_ROWS) return null;
  const wordOf = natures.map(({ kind, example }, column) =>
    kind === "text" && /^[A-Za-z%°µΩ]/.test(example) && rows.every(({ cells }) => cells[column]?.trim() === example)
      ? example.replace(/[:=]+$/, "").trim()
      : null,
  );
  const isName = (column: number) => wordOf[0] !== null && column >= 0 && wordOf[column] !== null;
  const written = natures.map((nature, column) => (isWord(nature) || !isName(column - 1) ? "" : wordOf[column - 1]!));
  // One word that the trade does not know may be the name of the stand.
  const isKnown = written.filter((name) => rolesNamed(name).length > 0).length >= FEWEST_NAMES;
  const names = isKnown ? written : written.map(() => "");
  const words = new Set(names.flatMap((name, column) => (name === "" ? [] : [column - 1])));
  const units = natures.map((nature, column) => {
    const word = wordOf[column + 1] ?? null;
    if (isWord(nature) || word === null || words.has(column + 1) || !isUnit(word)) return null;
    words.add(column + 1);
    return word;
  });
  return words.size === 0 ? null : { names, units, words };
}

const isWord = (nature: ColumnNature | undefined) => nature === undefined || nature.kind === "text";

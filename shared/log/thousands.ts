import type { Marks } from "./cellText.ts";
import type { Cut } from "./delimiterChoice.ts";

/** From here on a whole number without a mark shows that marked ones are no decimals: readings jump by a thousand else. */
const LARGE = 100;

const OTHER = { ".": ",", ",": "." } as const;

/**
 * Marks with which groups of three digits are read as thousands, where a column proves that they are; null where nothing
 * does. A column of whole numbers below 1000 and of numbers like "1,076" has thousands: as decimals it would jump
 * between 999 and 1. Where the other mark is plainly the decimal one, a column of whole numbers that has "3,757" in it
 * has thousands too.
 */
export function provenThousands(cut: Cut): Marks | null {
  const { marks } = cut;
  const columns = Array.from({ length: cut.width }, (_, column) => cellsOf(cut, column));
  const other = OTHER[marks.decimalMark];
  if (columns.some((cells) => mixes(cells, marks.decimalMark))) {
    return { ...marks, decimalMark: other, thousands: "always" };
  }
  const hasDecimals = columns.some((cells) => cells.some((cell) => plainDecimal(marks.decimalMark).test(cell)));
  const hasThousands = columns.some((cells) => mixes(cells, other) || (hasDecimals && manyGrouped(cells, other)));
  return hasThousands ? { ...marks, thousands: "always" } : null;
}

/** Filled cells of rows of full width. */
function cellsOf({ rows, width }: Cut, column: number): string[] {
  return rows
    .filter(({ cells, readings }) => cells.length === width && readings.some(({ kind }) => kind === "number"))
    .map(({ cells }) => cells[column]!.trim().replaceAll('"', ""))
    .filter((cell) => cell !== "");
}

const THREES = { ".": /^[+-]?[1-9]\d{0,2}(?:\.\d{3})+$/, ",": /^[+-]?[1-9]\d{0,2}(?:,\d{3})+$/ } as const;
const WHOLE = /^[+-]?\d{1,3}$/;

function plainDecimal(mark: "." | ","): RegExp {
  return mark === "." ? /^[+-]?\d+\.\d+$/ : /^[+-]?\d+,\d+$/;
}

/** Nothing but whole numbers, some in groups of three. */
function grouped(cells: readonly string[], mark: "." | ","): boolean {
  return (
    cells.some((cell) => THREES[mark].test(cell)) && cells.every((cell) => THREES[mark].test(cell) || WHOLE.test(cell))
  );
}

/** So many cells are no slip of the other mark. */
const MANY = 3;

/** The same, with more of them than a slip of the other mark makes. */
function manyGrouped(cells: readonly string[], mark: "." | ","): boolean {
  return grouped(cells, mark) && cells.filter((cell) => THREES[mark].test(cell)).length >= MANY;
}

/** The same, and a large one without a mark. */
function mixes(cells: readonly string[], mark: "." | ","): boolean {
  return grouped(cells, mark) && cells.some((cell) => WHOLE.test(cell) && Math.abs(Number(cell)) >= LARGE);
}

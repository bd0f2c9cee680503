import { type CellReading, type Marks, readCell } from "./cellText.ts";

/** The cells of a line as they were read. */
export interface ReadCells {
  readonly readings: readonly CellReading[];
  /** A cell that can only be a number with the other decimal mark than that of the log; null where there is none. */
  readonly otherDecimal: string | null;
  /** Other cells of the same line have the mark of the log. */
  readonly isMixed: boolean;
}

const OTHER = { ".": ",", ",": "." } as const;
const DECIMAL = { ".": /^[+\u2212-]?\d*\.\d+$/, ",": /^[+\u2212-]?\d*,\d+$/ } as const;
/** What might be thousands as well. */
const GROUPED = /^[+\u2212-]?[1-9]\d{0,2}[.,]\d{3}$/;

interface Wanted {
  /** Whether the other decimal mark is read; where not, such cells stay text. */
  readonly other?: boolean;
  /** Columns that hold numbers. */
  readonly isNumeric?: (column: number) => boolean;
}

/**
 * Reads the cells of a line. Two programs wrote the log, or one was set to another language on the way: a cell that is
 * text with the mark of the log and a plain decimal with the other mark is read with the other. Where no cell of the
 * line has the mark of the log, the whole line is read so, because "9,246" among "21,10" is no thousands.
 */
export function readCells(cells: readonly string[], marks: Marks, wanted: Wanted = {}): ReadCells {
  const { other = true, isNumeric = () => true } = wanted;
  const readings = cells.map((cell) => readCell(cell, marks));
  const isOther = ({ kind }: CellReading, i: number) =>
    kind === "text" && isNumeric(i) && isPlainDecimal(cells[i]!, OTHER[marks.decimalMark]);
  const first = marks.otherDecimals === "never" ? -1 : readings.findIndex(isOther);
  if (first < 0) return { readings, otherDecimal: null, isMixed: false };
  const exchanged: Marks = { ...marks, decimalMark: OTHER[marks.decimalMark], thousands: "certain" };
  const own = DECIMAL[marks.decimalMark];
  const isMixed = cells.some((cell, i) => readings[i]!.kind === "number" && own.test(bare(cell)));
  const read = cells.map((cell, i) =>
    isMixed && !isOther(readings[i]!, i) ? readings[i]! : readCell(cell, exchanged),
  );
  return { readings: other ? read : readings, otherDecimal: cells[first]!, isMixed };
}

function isPlainDecimal(cell: string, mark: "." | ","): boolean {
  const text = bare(cell);
  return DECIMAL[mark].test(text) && !GROUPED.test(text);
}

const bare = (cell: string) => cell.replaceAll('"', "").trim();

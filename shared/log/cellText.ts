import { type ClockTime, readClock } from "./clockTime.ts";

/** What one cell of text turned out to be. */
export type CellReading =
  | { readonly kind: "number"; readonly value: number; readonly decimals: number; readonly grouped: boolean }
  | { readonly kind: "clock"; readonly clock: ClockTime }
  | { readonly kind: "empty" }
  | { readonly kind: "missing" }
  | { readonly kind: "text" };

export interface Marks {
  readonly delimiter: string;
  readonly decimalMark: "." | ",";
  /** Which groups of three digits are thousands: those that can be nothing else (where absent), all, or none. */
  readonly thousands?: "certain" | "always" | "never";
  /** Whether numbers with the other decimal mark are read where they can be nothing else; so where absent. */
  readonly otherDecimals?: "read" | "never";
}

const PLAIN = /^[+-]?(?:\d+\.?(\d*)|\.(\d+))(?:[eE]([+-]?\d+))?$/;

/** Digits in threes, the mark between them, a decimal part with the other mark. */
const GROUPED = {
  ".": /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/,
  ",": /^[+-]?\d{1,3}(?:\.\d{3})+(?:,\d+)?$/,
} as const;

/** Digits in threes with an apostrophe or a blank between them, which can be nothing but thousands: "1'234", "1 234,5". */
const SPACED = {
  ".": /^[+-]?\d{1,3}(?:(?:['’]\d{3})+|(?:\s\d{3})+)(?:\.\d+)?$/,
  ",": /^[+-]?\d{1,3}(?:(?:['’]\d{3})+|(?:\s\d{3})+)(?:,\d+)?$/,
} as const;

/** What loggers, meters and spreadsheets write where they have no number. */
const MISSING = new Set(
  (
    "nan +nan -nan nan(ind) -nan(ind) 1.#qnan 1.#ind -1.#ind 1.#inf -1.#inf na n/a n.a. #n/a #value! #div/0! #ref! " +
    "null nil none undefined inf +inf -inf infinity -infinity ovf ovfl ovr overflow over ol o.l o/l " +
    "err error fail - -- --- ---- – — −− * ** *** ? ?? ... . x missing timeout " +
    "#nv #wert! #bezug! #valeur! #¡valor! #¡div/0! n.d. n/d s/d k.a. n.v."
  ).split(" "),
);

/** Reads one cell; blanks around it do not count. Numbers too large for a double are text. */
export function readCell(cell: string, marks: Marks): CellReading {
  const text = withoutQuotes(cell.trim());
  if (text === "") return { kind: "empty" };
  const number = readNumber(text, marks);
  if (number) return number;
  if (MISSING.has(text.toLowerCase())) return { kind: "missing" };
  const clock = readClock(text);
  return clock ? { kind: "clock", clock } : { kind: "text" };
}

/** A quote after a blank is no quote to the rules of delimited text, but is meant as one. */
function withoutQuotes(text: string): string {
  return text.length > 1 && text.startsWith('"') && text.endsWith('"') ? text.slice(1, -1).trim() : text;
}

function readNumber(text: string, { delimiter, decimalMark, thousands = "certain" }: Marks): CellReading | undefined {
  const minus = text.replace(/^\u2212/, "-").replace(/^([+-])\s+(?=[\d.,])/, "$1");
  const isSpaced = SPACED[decimalMark].test(minus);
  const signed = isSpaced ? minus.replace(/['’\s]/g, "") : minus;
  const plain = decimalMark === "." ? signed : exchangeMarks(signed);
  const number = plainNumber(plain, isSpaced);
  if (number || !GROUPED[decimalMark].test(signed)) return number;
  const mark = decimalMark === "." ? "," : ".";
  // One group and no decimals could as well be a decimal mark of the other kind, unless that mark stands between cells.
  const plainlyGrouped = signed.split(mark).length > 2 || signed.includes(decimalMark) || mark === delimiter;
  const isGrouped = thousands === "always" || (thousands === "certain" && plainlyGrouped);
  return isGrouped ? plainNumber(signed.replaceAll(mark, "").replace(",", "."), true) : undefined;
}

/** "1.234" beside decimal commas, or "1,234" beside decimal points: thousands or a slip of the other mark. */
export function isUnclearNumber(cell: string): boolean {
  return /^[+-]?\d{1,3}[.,]\d{3}$/.test(cell.trim());
}

/** A decimal comma becomes a point, and a point becomes something that is no number. */
function exchangeMarks(text: string): string {
  return text.includes(".") ? "" : text.replace(",", ".");
}

function plainNumber(text: string, grouped: boolean): CellReading | undefined {
  const match = PLAIN.exec(text);
  if (!match) return undefined;
  const value = Number(text);
  if (!Number.isFinite(value)) return undefined;
  const decimals = (match[1] ?? match[2] ?? "").length - Number(match[3] ?? 0);
  return { kind: "number", value, decimals, grouped };
}

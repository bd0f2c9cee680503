import { formatNumber } from "../../shared/quantity/format.ts";
import { fromSi, parseQuantity } from "../../shared/quantity/parseQuantity.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { findUnit } from "../../shared/quantity/unit.ts";
import { type Dimension, UNITS, type Unit } from "../../shared/quantity/units.data.ts";

/** What a typed text stands for: an SI value, nothing, or the sentence that says what is missing. */
export type ReadText =
  | { readonly kind: "value"; readonly si: number }
  | { readonly kind: "empty" }
  | { readonly kind: "problem"; readonly message: string };

export interface Allowed {
  /** Least and greatest SI value. */
  readonly min?: number;
  readonly max?: number;
  /** Zero itself is not allowed, only what is greater. */
  readonly positive?: boolean;
  /** A fraction must say whether it is per cent. */
  readonly unitNeeded?: boolean;
  /** A value that fits the field, for what is said of one that can not be read. */
  readonly example?: string | undefined;
  /** Anything else that can be wrong with an SI value: the sentence, or null. */
  readonly check?: ((si: number) => string | null) | undefined;
}

/** The unit named, else the SI unit of the dimension. */
function shownUnit(dimension: Dimension, symbol: string | undefined): Unit {
  return (symbol === undefined ? undefined : findUnit(symbol, dimension)) ?? UNITS[dimension][0]!;
}

/** `si` as a person would type it, with no more digits than it holds: "76 mm". */
export function textOf(si: number, dimension: Dimension, symbol?: string): string {
  const unit = shownUnit(dimension, symbol);
  const number = plainNumber(fromSi(si, unit));
  return unit.symbol === "1" ? number : `${number} ${unit.symbol}`;
}

/** Six digits are more than any of these quantities is known to; zeros at the end carry nothing. */
function plainNumber(value: number): string {
  const text = formatNumber(value, 6);
  return text.includes(".") && !text.includes("e") ? text.replace(/\.?0+$/, "") : text;
}

/** Reads a typed quantity and says what keeps it from being one that is allowed. */
export function readText(text: string, dimension: Dimension, allowed: Allowed = {}, polePairs?: number): ReadText {
  if (text.trim() === "") return { kind: "empty" };
  try {
    const { unitNeeded = false, example } = allowed;
    const told = { ...(polePairs !== undefined && { polePairs }), ...(example !== undefined && { example }) };
    const si = parseQuantity(text, dimension, { unitNeeded, ...told });
    const message = outside(si, dimension, text, allowed);
    return message ? { kind: "problem", message } : { kind: "value", si };
  } catch (thrown) {
    if (thrown instanceof InputProblem) return { kind: "problem", message: thrown.message };
    throw thrown;
  }
}

function outside(
  si: number,
  dimension: Dimension,
  text: string,
  { min, max, positive, check }: Allowed,
): string | null {
  const unit = unitOfText(text, dimension);
  const told = (bound: number) => textOf(bound, dimension, unit);
  if (positive && !(si > 0)) return `${text.trim()} is too small. Needed: more than 0.`;
  if (min !== undefined && si < min) return `${text.trim()} is too small. Needed: at least ${told(min)}.`;
  if (max !== undefined && si > max) {
    const meant = isBareShare(text, dimension) ? ` Write ${text.trim()}\u202f% if that is what it is.` : "";
    return `${text.trim()} is too large. Needed: at most ${told(max)}.${meant}`;
  }
  return check?.(si) ?? null;
}

/** Share from which on one without a sign may as well be meant in per cent. */
const LARGE_SHARE = 0.2;

/** What a large share typed without a sign is taken for: "1" may be meant as 1 %. Null where there is nothing to say. */
export function takenFor(text: string, dimension: Dimension, si: number): string | null {
  if (!isBareShare(text, dimension) || !(si > LARGE_SHARE)) return null;
  return `Taken as ${plainNumber(100 * si)}\u202f%. Write ${text.trim()}\u202f% if that is what it is.`;
}

const isBareShare = (text: string, dimension: Dimension): boolean =>
  dimension === "fraction" && unitOfText(text, dimension) === undefined;

/** The unit a person wrote behind the number, or undefined. */
export function unitOfText(text: string, dimension: Dimension): string | undefined {
  const written = text.trim().replace(/^[+\-\u2212]?[\d.,]+(e[+-]?\d+)?/i, "");
  return written.trim() === "" ? undefined : findUnit(written, dimension)?.symbol;
}

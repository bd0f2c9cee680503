import { dimensionsOf, findUnit } from "../quantity/unit.ts";
import { rolesNamed } from "./headerWords.ts";
import { roleUnit } from "./roleUnits.ts";

/** A header cell taken apart. */
export interface HeaderText {
  readonly name: string;
  readonly unit: string | null;
}

const BRACKETED = /^(.*?)[\s_]*[[({<]([^\])}>]{1,20})[\])}>]\s*$/;
const AFTER_MARK = /^(.*?\S)\s*(?:,|\/|\s(?:in|en|em)\s)\s*(\S.{0,14})$/i;
const AFTER_JOINT = /^(.*\S)(?:[\s_.:-]+)(\S{1,9})$/;
const AFTER_CAPITAL = /^(.*[a-z])([A-Z][A-Za-z]{0,7})$/;

/** Short words that are units as well, and after an underscore rarely are meant as such ("v_in", "rpm_min"). */
const SELDOM_UNITS = new Set([
  "in",
  "min",
  "h",
  "m",
  "c",
  "f",
  "r",
  "as",
  "kv",
  "a",
  "v",
  "w",
  "n",
  "g",
  "s",
  "j",
  "k",
]);

/**
 * Name and unit of a header: "Thrust [gf]", "T / N", "Current, A", "Schub in N", "thrust_g", "timeMs", "rpm".
 * A header that is a unit by itself is both. A unit behind an underscore counts where it fits the name before it, so
 * that "v_in" is not an input in inches.
 */
export function splitHeader(text: string): HeaderText {
  const header = text.trim().replace(/\s+/g, " ");
  if (header === "") return { name: "", unit: null };
  if (isUnit(header) && !isLazyLetter(header)) return { name: header, unit: usualSpelling(header) };
  const parts = fromBrackets(header) ?? fromRatio(header) ?? fromMark(header) ?? fromJoint(header);
  if (!parts) return { name: header, unit: null };
  return { name: parts.name, unit: parts.unit === null ? null : usualSpelling(parts.unit) };
}

function fromBrackets(header: string): HeaderText | undefined {
  const match = BRACKETED.exec(header);
  if (!match) return undefined;
  const unit = match[2]!.trim();
  const square = header.includes("[");
  if (!isUnit(unit) && !square) return undefined;
  return { name: match[1]!.trim(), unit: unit === "" ? null : unit };
}

/** "Drehzahl 1/min": the stroke belongs to the unit, not between name and unit. */
function fromRatio(header: string): HeaderText | undefined {
  const match = /^(.*\S)[\s_,]+(\S+\/\S+)$/.exec(header);
  return match && isUnit(match[2]!) ? { name: match[1]!, unit: match[2]! } : undefined;
}

function fromMark(header: string): HeaderText | undefined {
  const match = AFTER_MARK.exec(header);
  if (!match) return undefined;
  const [, name = "", unit = ""] = match;
  return isUnit(unit.trim()) ? { name: name.trim(), unit: unit.trim() } : undefined;
}

function fromJoint(header: string): HeaderText | undefined {
  for (const pattern of [AFTER_JOINT, AFTER_CAPITAL]) {
    const match = pattern.exec(header);
    if (!match) continue;
    const [, name = "", unit = ""] = match;
    if (fitsName(name, unit)) return { name: name.trim(), unit };
  }
  return undefined;
}

function fitsName(name: string, unit: string): boolean {
  const best = rolesNamed(name)[0];
  if (best)
    return (
      unit.toLowerCase() !== "in" &&
      unit.toLowerCase() !== "min" &&
      roleUnit(best.role, usualSpelling(unit)) !== undefined
    );
  return isUnit(unit) && !SELDOM_UNITS.has(unit.toLowerCase());
}

/** Symbols of quantities, not units: a small "n" alone is a rotation rate and no newton, F is a force and no Fahrenheit. */
function isLazyLetter(header: string): boolean {
  return /^[nvatpwciqfFR]$/.test(header);
}

/** The text names a unit of some quantity, or is a plain sign for none. */
export function isUnit(text: string): boolean {
  return text.length <= 14 && text !== "-" && text !== "1" && dimensionsOf(usualSpelling(text)).length > 0;
}

/** "N.m" with its full stop and "ºC" with the ordinal sign of a Spanish keyboard, as the table of units spells them. */
function usualSpelling(text: string): string {
  const degrees = text.replaceAll("º", "°");
  const dotted = degrees.replaceAll(".", "·");
  return dimensionsOf(dotted).length > 0 ? dotted : degrees;
}

/** Unit that a cell of a units row gives: "[N]", "(s)", "V"; null for an empty cell or a dash; undefined for other text. */
export function unitCell(text: string): string | null | undefined {
  const bare = text.trim().replace(/^[[({<]\s*(.*?)\s*[\])}>]$/, "$1");
  if (bare === "" || bare === "-" || bare === "--" || bare === "1") return null;
  return isUnit(bare) || bare !== text.trim() ? usualSpelling(bare) : undefined;
}

/** What a number in `unit` is multiplied by to stand in unit `into`; undefined where the two do not measure the same. */
export function unitRatio(unit: string, into: string): number | undefined {
  if (unit === into) return 1;
  for (const dimension of dimensionsOf(usualSpelling(unit))) {
    const [from, to] = [findUnit(usualSpelling(unit), dimension), findUnit(usualSpelling(into), dimension)];
    const isPlain = from?.offset === undefined && to?.offset === undefined && from?.electrical === to?.electrical;
    if (from && to && isPlain) return from.factor / to.factor;
  }
  return undefined;
}

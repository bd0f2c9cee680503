import { InputProblem } from "./problem.ts";
import { DIMENSION_NAMES, dimensionsOf, findUnit, requireUnit, symbolsOf } from "./unit.ts";
import type { Dimension, Unit } from "./units.data.ts";

export interface ParseOptions {
  /** Where the text stands, for messages: an option, a field, a column. */
  readonly where?: string;
  /** A value that fits there, for messages: "2". */
  readonly example?: string;
  /** Magnet pole pairs of the motor, needed where the unit counts electrical turns. */
  readonly polePairs?: number;
  /** A fraction needs its unit too, because "1" may mean 1 % as well as all of it; 0 is 0 either way. */
  readonly unitNeeded?: boolean;
}

/** A number with its standard uncertainty, both SI; null where the text stated none. */
export interface ParsedQuantity {
  readonly value: number;
  readonly standardUncertainty: number | null;
}

const NUMBER = /^([+\-\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+\-\u2212]?\d+)?)(.*)$/is;

/**
 * The SI value of a quantity written with its unit: "76 mm", "0,35 kgf", "3000 rpm", "900rpm/V".
 * A comma is a decimal mark, never a thousands mark. Fractions and plain numbers may go without unit.
 *
 * Throws InputProblem `quantity.not-a-number`, `quantity.no-unit`, `quantity.unknown-unit`,
 * `quantity.wrong-dimension` or `quantity.no-pole-pairs`.
 *
 * @example parseQuantity("76 mm", "length") // 0.076
 * @example parseQuantity("3000 rpm", "rotationRate") // 50
 */
export function parseQuantity(text: string, dimension: Dimension, options: ParseOptions = {}): number {
  const { where = "" } = options;
  const trimmed = text.trim();
  const match = NUMBER.exec(trimmed);
  if (!match) {
    throw new InputProblem({
      code: "quantity.not-a-number",
      where,
      found: trimmed === "" ? "nothing was given" : `"${trimmed}" does not start with a number`,
      needed:
        dimension === "number"
          ? PLAIN
          : `${DIMENSION_NAMES[dimension]}, a number and a unit (${symbolsOf(dimension).join(", ")})`,
      mend: `For example ${exampleOf(dimension, options)}`,
    });
  }
  const [, digits = "", rest = ""] = match;
  const unitText = rest.trim();
  const value = Number(digits.replace(",", ".").replace(/\u2212/g, "-"));
  if (/^[.,]/.test(unitText)) {
    throw new InputProblem({
      code: "quantity.not-a-number",
      where,
      found: `"${trimmed}" has two decimal marks`,
      needed: "one decimal mark and no thousands marks",
      mend: "Write 1234.5, not 1,234.5",
    });
  }
  if (!Number.isFinite(value)) {
    throw new InputProblem({
      code: "quantity.not-a-number",
      where,
      found: `"${trimmed}" is larger than any number the program can hold`,
      needed: DIMENSION_NAMES[dimension],
      mend: `For example ${exampleOf(dimension, options)}`,
    });
  }
  if (options.unitNeeded && unitText === "" && value !== 0) {
    throw new InputProblem({
      code: "quantity.no-unit",
      where,
      found: `"${trimmed}" may be per cent or a part of one`,
      needed: "a number with its unit",
      mend: `Write ${digits} %, or ${digits} frac where it is a part of one`,
    });
  }
  if (dimension === "number") requireAlone({ digits, unitText, value }, options);
  return toSi(value, unitOf(trimmed, unitText, dimension, where), options);
}

/**
 * As `parseQuantity`, with an optional standard uncertainty after ± (or +/-): "76 mm ± 0.1 mm", "0.2 ± 0.004",
 * "14.8 V ± 0.5 %". Per cent are relative, except after a fraction: "50 % ± 2 %" is 0.50 ± 0.02.
 */
export function parseUncertainQuantity(text: string, dimension: Dimension, options: ParseOptions = {}): ParsedQuantity {
  const [main = "", spread, ...more] = text.split(/\u00b1|\+\/-|\+-/);
  if (spread === undefined) return { value: parseQuantity(main, dimension, options), standardUncertainty: null };
  if (more.length > 0) {
    throw new InputProblem({
      code: "quantity.not-a-number",
      where: options.where ?? "",
      found: `"${text}" has more than one ±`,
      needed: "a value, then ± and one standard uncertainty",
      mend: "For example 76 mm ± 0.1 mm",
    });
  }
  // "76 ± 0.1 mm" carries its unit at the end only, "14.8 V ± 0.5 %" is relative.
  const trailingUnit = spread.trim().replace(NUMBER, "$2").trim();
  const mainHasUnit = main.trim().replace(NUMBER, "$2").trim() !== "";
  const value = parseQuantity(mainHasUnit ? main : `${main}${trailingUnit}`, dimension, options);
  if (trailingUnit === "%" && mainHasUnit && dimension !== "fraction") {
    return { value, standardUncertainty: Math.abs(value) * parseQuantity(spread, "fraction", options) };
  }
  const mainUnit = main.trim().replace(NUMBER, "$2").trim();
  const spreadText = trailingUnit === "" ? `${spread}${mainUnit}` : spread;
  const scale = dimension === "temperature" ? "temperatureDifference" : dimension;
  return { value, standardUncertainty: Math.abs(parseQuantity(spreadText, scale, options)) };
}

/** SI value of `value` written in `unit`. Throws `quantity.no-pole-pairs` for electrical turns without pole pairs. */
export function toSi(value: number, unit: Unit, { where = "", polePairs }: ParseOptions = {}): number {
  const si = (value + (unit.offset ?? 0)) * unit.factor;
  if (!unit.electrical) return si;
  if (polePairs === undefined) {
    throw new InputProblem({
      code: "quantity.no-pole-pairs",
      where,
      found: `${value} ${unit.symbol} counts electrical turns`,
      needed: "the number of magnet pole pairs of the motor",
      mend: "Give the pole pairs (magnets on the rotor divided by two), for example 7",
    });
  }
  return si / polePairs;
}

/** `si` written in `unit`. */
export function fromSi(si: number, unit: Unit): number {
  return si / unit.factor - (unit.offset ?? 0);
}

function unitOf(whole: string, unitText: string, dimension: Dimension, where: string): Unit {
  if (unitText === "" && dimension !== "fraction" && dimension !== "number") {
    throw new InputProblem({
      code: "quantity.no-unit",
      where,
      found: `"${whole}" has no unit`,
      needed: DIMENSION_NAMES[dimension],
      mend: `Write ${whole} ${symbolsOf(dimension)[1] ?? symbolsOf(dimension)[0]} if that is what it is`,
    });
  }
  return requireUnit(unitText, dimension, where);
}

const PLAIN = "a plain number, without a unit";

interface Split {
  readonly digits: string;
  readonly unitText: string;
  readonly value: number;
}

/** A plain number stands alone; what is behind it is told as what it is, not held against units that there are none of. */
function requireAlone({ digits, unitText, value }: Split, { where = "" }: ParseOptions): void {
  if (findUnit(unitText, "number") !== undefined) return;
  const known = dimensionsOf(unitText);
  const share = findUnit(unitText, "fraction");
  throw new InputProblem({
    code: known.length > 0 ? "quantity.wrong-dimension" : "quantity.unknown-unit",
    where,
    found: `"${unitText}" stands behind the number`,
    needed: PLAIN,
    mend: share === undefined ? `Write ${digits} alone` : `Write ${toSi(value, share)} if that is what it is`,
  });
}

function exampleOf(dimension: Dimension, { example }: ParseOptions): string {
  const symbols = symbolsOf(dimension);
  if (example !== undefined) return example;
  return dimension === "number" ? "0.2" : `12 ${symbols[1] ?? symbols[0]}`;
}

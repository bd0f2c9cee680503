import type { FluidState } from "../model/fluid.ts";
import { CELSIUS_ZERO } from "../quantity/constants.ts";
import { formatNumber } from "../quantity/format.ts";
import { toSi } from "../quantity/parseQuantity.ts";
import { InputProblem, OutOfDomain } from "../quantity/problem.ts";
import { findUnit } from "../quantity/unit.ts";
import { fluidProperties } from "./fluidProperties.ts";

/** How a fluid is written, for help texts and messages. */
export const FLUID_TEXT_HELP =
  "fresh, sea or air, then temperature, and for sea water the practical salinity (35 if not given), for air the " +
  'pressure and the relative humidity (50 % if not given): "fresh 18 °C", "sea 12 °C 35 psu", "air 20 °C 1013 hPa 50 %"';

const DEFAULT_SALINITY = 35;
const DEFAULT_HUMIDITY = 0.5;

type Kind = FluidState["kind"];
type Part = "temperature" | "pressure" | "humidity" | "salinity";
type Parts = Partial<Record<Part, number>>;

/** What a fluid is described by; anything else next to it is refused, so that nothing typed is dropped in silence. */
const PARTS_OF: Readonly<Record<Kind, readonly Part[]>> = {
  fresh: ["temperature"],
  sea: ["temperature", "salinity"],
  air: ["temperature", "pressure", "humidity"],
};

const KIND = /^\s*(fresh|sea|salt|air)(?:[\s-]*water)?(?![a-z])/i;
const SALINITY_UNITS = new Set(["psu", "ppt", "‰", "pss-78", "pss"]);
/** Words that say which number follows or went before, where the unit says it already. */
const FILLING = /\b(?:salinity|relative|humidity|rh|at|of|and|with|practical)\b/gi;
const QUANTITY = /([+\-\u2212]?(?:\d+(?:[.,]\d+)?|[.,]\d+))\s*([^\d\s,;+\-\u2212][^\s,;]*)?/g;

/**
 * The fluid that `text` names: kind first, then quantities in any order, told apart by their units. A bare number in
 * sea water is the practical salinity, 35 where none is written; the humidity of air is 50 % where none is written.
 * `describeFluid` shows both.
 *
 * Throws InputProblem `fluid.unknown-kind`, `fluid.unreadable`, `fluid.no-unit`, `fluid.unknown-unit`,
 * `fluid.given-twice`, `fluid.not-of-this-fluid`, `fluid.no-temperature`, `fluid.no-pressure` or `fluid.out-of-range`.
 *
 * @example parseFluid("sea 12C 35psu") // { kind: "sea", temperature: 285.15, salinity: 35 }
 */
export function parseFluid(text: string, where = ""): FluidState {
  const refuse = refuser(where);
  const match = KIND.exec(text);
  if (!match) {
    const found = text.trim() === "" ? "no fluid was given" : `"${text.trim()}" does not begin with a fluid`;
    return refuse("fluid.unknown-kind", found, FLUID_TEXT_HELP);
  }
  const word = match[1]!.toLowerCase();
  const kind = (word === "salt" ? "sea" : word) as Kind;
  return checkedRange(assemble(kind, readParts(kind, text.slice(match[0].length), refuse), refuse), refuse);
}

/** The fluid in words that `parseFluid` reads back: "sea water, 12 °C, salinity 35". */
export function describeFluid(state: FluidState): string {
  const celsius = `${shortest(state.temperature - CELSIUS_ZERO)} °C`;
  switch (state.kind) {
    case "fresh":
      return `fresh water, ${celsius}`;
    case "sea":
      return `sea water, ${celsius}, salinity ${shortest(state.salinity)}`;
    case "air":
      return `air, ${celsius}, ${shortest(state.pressure / 100)} hPa, ${shortest(state.humidity * 100)} % humidity`;
  }
}

type Refuse = (code: string, found: string, needed: string, mend?: string) => never;

function refuser(where: string): Refuse {
  return (code, found, needed, mend = "") => {
    throw new InputProblem({ code, where, found, needed, mend });
  };
}

function readParts(kind: Kind, text: string, refuse: Refuse): Parts {
  const parts: Parts = {};
  // "deg C" is one unit; a comma before a blank parts two quantities, one inside a number is a decimal mark.
  const tidy = text.replace(/\bdeg\s+(?=[cf]\b)/gi, "deg").replace(FILLING, " ");
  const rest = tidy.replace(QUANTITY, (whole, digits: string, unit: string | undefined) => {
    const { part, value } = recognise(kind, digits, unit ?? "", refuse);
    if (parts[part] !== undefined) refuse("fluid.given-twice", `a second ${part}, ${whole.trim()}`, `one ${part}`);
    parts[part] = value;
    return " ";
  });
  const unread = rest.replace(/[\s,;]+/g, " ").trim();
  if (unread !== "") refuse("fluid.unreadable", `"${unread}" after the fluid can not be read`, FLUID_TEXT_HELP);
  return parts;
}

function recognise(kind: Kind, digits: string, unit: string, refuse: Refuse): { part: Part; value: number } {
  const value = Number(digits.replace(",", ".").replace("\u2212", "-"));
  const written = `${digits}${unit && ` ${unit}`}`;
  const found = partOf(kind, unit, value);
  if (!found) {
    return unit === ""
      ? refuse("fluid.no-unit", `"${written}" has no unit`, FLUID_TEXT_HELP, `Write ${written} °C if it is degrees`)
      : refuse("fluid.unknown-unit", `"${unit}" in "${written}" is not a unit that belongs here`, FLUID_TEXT_HELP);
  }
  if (!PARTS_OF[kind].includes(found.part)) {
    const name = kind === "air" ? "air" : `${kind} water`;
    refuse("fluid.not-of-this-fluid", `"${written}" is a ${found.part}`, `${name} with ${PARTS_OF[kind].join(", ")}`);
  }
  return found;
}

function partOf(kind: Kind, unit: string, value: number): { part: Part; value: number } | null {
  if (unit === "") return kind === "sea" ? { part: "salinity", value } : null;
  if (SALINITY_UNITS.has(unit.toLowerCase())) return { part: "salinity", value };
  if (unit === "%") return { part: "humidity", value: value / 100 };
  const temperature = findUnit(unit, "temperature");
  if (temperature) return { part: "temperature", value: toSi(value, temperature) };
  const pressure = findUnit(unit, "pressure");
  return pressure ? { part: "pressure", value: toSi(value, pressure) } : null;
}

function assemble(kind: Kind, parts: Parts, refuse: Refuse): FluidState {
  const { temperature, pressure, salinity = DEFAULT_SALINITY, humidity = DEFAULT_HUMIDITY } = parts;
  if (temperature === undefined) {
    return refuse("fluid.no-temperature", "the fluid has no temperature", "a temperature", `For example ${kind} 18 °C`);
  }
  if (kind === "fresh") return { kind, temperature };
  if (kind === "sea") return { kind, temperature, salinity };
  if (pressure === undefined) {
    return refuse(
      "fluid.no-pressure",
      "the air has no pressure",
      "the air pressure at the stand, not reduced to sea level",
      "At sea level write 1013 hPa; it falls by about 12 hPa for each 100 m up",
    );
  }
  return { kind, temperature, pressure, humidity };
}

/** `state` if its properties can be computed. */
function checkedRange(state: FluidState, refuse: Refuse): FluidState {
  try {
    fluidProperties(state);
  } catch (error) {
    if (!(error instanceof OutOfDomain)) throw error;
    const { found, needed, mend } = error.problem;
    refuse("fluid.out-of-range", found, needed, mend);
  }
  return state;
}

/** As many digits as were typed: seven carry any instrument, and hide what the sum with 273.15 leaves behind. */
function shortest(value: number): string {
  return formatNumber(Number(value.toPrecision(7)), 7)
    .replace(/(\.\d*?)0+$/, "$1")
    .replace(/\.$/, "");
}

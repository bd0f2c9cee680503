import { InputProblem } from "./problem.ts";
import { type Dimension, UNITS, type Unit } from "./units.data.ts";

/** Nothing in it that could be written differently: most units are so, and headers are compared with all of them. */
const PLAIN = /^[\w/%^().-]*$/;

/** One spelling for the signs that keyboards, microcontrollers and word processors write differently. */
export function foldUnit(text: string): string {
  if (PLAIN.test(text)) return text;
  return text
    .normalize("NFC")
    .replace(/[\u00b5\u03bc]/g, "u")
    .replace(/[\u2126\u03a9]/g, "ohm")
    .replace(/[\u00b7\u22c5\u2219\u2022*]/g, "·")
    .replace(/\u00b2/g, "2")
    .replace(/\u00b3/g, "3")
    .replace(/[\u2212\u2010-\u2015]/g, "-")
    .replace(/[\s\u00a0\u2009\u202f]+/g, " ")
    .trim();
}

/** Folded text as it is compared; in a torque whatever joins the two factors goes: "in-lb", "in lb" and "in·lb" are one. */
function keyOf(folded: string, dimension: Dimension): string {
  return dimension === "torque" ? folded.replace(/[·\s.-]/g, "") : folded;
}

/** Case decides between mN and MN, so the exact spelling is tried first and the lower case second. */
function index(dimension: Dimension, units: readonly Unit[]): { exact: Map<string, Unit>; folded: Map<string, Unit> } {
  const exact = new Map<string, Unit>();
  const folded = new Map<string, Unit>();
  for (const unit of units) {
    for (const spelling of [unit.symbol, ...unit.spellings]) {
      const key = keyOf(foldUnit(spelling), dimension);
      if (!exact.has(key)) exact.set(key, unit);
      if (!folded.has(key.toLowerCase())) folded.set(key.toLowerCase(), unit);
    }
  }
  return { exact, folded };
}

const INDEX = new Map(
  (Object.entries(UNITS) as [Dimension, readonly Unit[]][]).map(([dimension, units]) => [
    dimension,
    index(dimension, units),
  ]),
);

/** The unit that `text` names in `dimension`, or undefined. */
export function findUnit(text: string, dimension: Dimension): Unit | undefined {
  return findFolded(foldUnit(text), dimension);
}

function findFolded(text: string, dimension: Dimension): Unit | undefined {
  const { exact, folded } = INDEX.get(dimension)!;
  const key = keyOf(text, dimension);
  return exact.get(key) ?? folded.get(key.toLowerCase());
}

/** Dimensions in which `text` is a unit, for messages and for guessing what a column holds. */
export function dimensionsOf(text: string): Dimension[] {
  const folded = foldUnit(text);
  return (Object.keys(UNITS) as Dimension[]).filter((dimension) => findFolded(folded, dimension) !== undefined);
}

/** The printed symbols of a dimension, SI first. */
export function symbolsOf(dimension: Dimension): string[] {
  return UNITS[dimension].map((unit) => unit.symbol).filter((symbol) => symbol !== "");
}

/**
 * The unit that `text` names in `dimension`.
 * Throws InputProblem `quantity.unknown-unit` or `quantity.wrong-dimension`, naming the units that would do.
 */
export function requireUnit(text: string, dimension: Dimension, where = ""): Unit {
  const unit = findUnit(text, dimension);
  if (unit) return unit;
  const others = dimensionsOf(text);
  const needed = `${DIMENSION_NAMES[dimension]} in ${symbolsOf(dimension).join(", ")}`;
  if (others.length > 0) {
    throw new InputProblem({
      code: "quantity.wrong-dimension",
      where,
      found: `"${text}" is a unit of ${others.map((other) => DIMENSION_NAMES[other]).join(" or ")}`,
      needed,
      mend: `Give the value in one of these units`,
    });
  }
  throw new InputProblem({
    code: "quantity.unknown-unit",
    where,
    found: `"${text}" is not a unit this program knows`,
    needed,
    mend: `Did you mean ${nearestSymbol(text, dimension)}?`,
  });
}

/** What people call each dimension, for messages. */
export const DIMENSION_NAMES: { readonly [D in Dimension]: string } = {
  length: "a length",
  area: "an area",
  mass: "a mass",
  force: "a force",
  massAsForce: "a force or a weight",
  torque: "a torque",
  angle: "an angle",
  rotationRate: "a rotation rate",
  speedConstant: "a motor speed constant",
  voltage: "a voltage",
  current: "a current",
  resistance: "a resistance",
  power: "a power",
  charge: "a charge",
  energy: "an energy",
  temperature: "a temperature",
  temperatureDifference: "a temperature difference",
  time: "a time",
  density: "a density",
  pressure: "a pressure",
  speed: "a speed",
  pulseWidth: "a pulse width",
  resistancePerLength: "a resistance over length",
  forcePerLength: "a weight over length",
  thermalResistance: "a thermal resistance",
  currentPerAngularVelocity: "a current over angular velocity",
  fraction: "a fraction",
  number: "a plain number",
};

function nearestSymbol(text: string, dimension: Dimension): string {
  const wanted = foldUnit(text).toLowerCase();
  const ranked = UNITS[dimension].flatMap((unit) =>
    [unit.symbol, ...unit.spellings].map((spelling) => ({
      symbol: unit.symbol,
      distance: editDistance(wanted, foldUnit(spelling).toLowerCase()),
    })),
  );
  ranked.sort((a, b) => a.distance - b.distance);
  return ranked[0]!.symbol;
}

/** Levenshtein distance, Soviet Physics Doklady 10 (1966) 707: the fewest insertions, deletions and exchanges. */
function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const exchange = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(exchange, previous[j]! + 1, row[j - 1]! + 1));
    }
    previous = row;
  }
  return previous[b.length]!;
}

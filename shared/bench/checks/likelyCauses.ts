import { STANDARD_GRAVITY } from "../../quantity/constants.ts";
import { formatNumber } from "../../quantity/format.ts";

/** What a mistake does to the true coefficient: measured = true × factor. */
interface Mistake {
  readonly name: string;
  readonly factor: number;
}

const GRAM_FORCE = STANDARD_GRAVITY / 1000;

/** Slips that happen at a thrust stand. Common practice, no source. */
const MISTAKES: readonly Mistake[] = [
  { name: "gram-force read as newton", factor: 1 / GRAM_FORCE },
  { name: "newton read as gram-force", factor: GRAM_FORCE },
  { name: "kilogram-force read as newton", factor: 1 / STANDARD_GRAVITY },
  { name: "newton read as kilogram-force", factor: STANDARD_GRAVITY },
  { name: "radius given for diameter", factor: 2 ** 4 },
  { name: "centimetres given for a diameter in inches", factor: 2.54 ** 4 },
  { name: "inches given for a diameter in centimetres", factor: 2.54 ** -4 },
  { name: "rev/s read as rpm", factor: 60 ** 2 },
  { name: "rpm read as rev/s", factor: 60 ** -2 },
  { name: "rad/s read as rev/s", factor: (2 * Math.PI) ** -2 },
];

/** Pole pairs of the motors in use. */
const POLE_PAIRS = { fewest: 2, most: 14 };

/** Thrust coefficients that a propeller at rest really has; common practice, no source. */
const USUAL = { low: 0.08, high: 0.6, middle: 0.25 };

/**
 * Usual mistakes that would bring a thrust coefficient into the usual range, each with the value it would have then,
 * the most plausible first; empty where none would.
 *
 * @example likelyCauses(25) // ["gram-force read as newton (K_T would be 0.245)", ...]
 */
export function likelyCauses(thrustCoefficient: number, most = 3): string[] {
  const size = Math.abs(thrustCoefficient);
  const distance = (corrected: number) => Math.abs(Math.log(corrected / USUAL.middle));
  const found = MISTAKES.map(({ name, factor }) => ({ name, corrected: size / factor }))
    .filter(({ corrected }) => isUsual(corrected))
    .sort((a, b) => distance(a.corrected) - distance(b.corrected))
    .map(({ name, corrected }) => `${name} (K_T would be ${formatNumber(corrected, 2)})`);
  return [...polePairCause(size), ...found].slice(0, most);
}

function polePairCause(size: number): string[] {
  const pairs = Array.from({ length: POLE_PAIRS.most - POLE_PAIRS.fewest + 1 }, (_, i) => POLE_PAIRS.fewest + i);
  const tooSmall = pairs.filter((pair) => isUsual(size * pair ** 2));
  const tooLarge = pairs.filter((pair) => isUsual(size / pair ** 2));
  if (size < USUAL.low && tooSmall.length > 0) {
    return [`electrical rpm read as shaft rpm (${pairsInWords(tooSmall, (pair) => size * pair ** 2)})`];
  }
  if (size > USUAL.high && tooLarge.length > 0) {
    return [`shaft rpm divided by pole pairs (${pairsInWords(tooLarge, (pair) => size / pair ** 2)})`];
  }
  return [];
}

function pairsInWords(pairs: readonly number[], corrected: (pair: number) => number): string {
  const [first, last] = [pairs[0]!, pairs.at(-1)!];
  if (first === last) return `${first} pole pairs would give K_T ${formatNumber(corrected(first), 2)}`;
  const ends = [corrected(first), corrected(last)].map((value) => formatNumber(value, 2));
  return `${first} to ${last} pole pairs would give K_T ${ends[0]} to ${ends[1]}`;
}

function isUsual(thrustCoefficient: number): boolean {
  return thrustCoefficient >= USUAL.low && thrustCoefficient <= USUAL.high;
}

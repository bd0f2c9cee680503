import { toSi } from "../quantity/parseQuantity.ts";
import type { Unit } from "../quantity/units.data.ts";

/** Digits that always tell one binary number from the next. */
const DIGITS = 17;
/** Digits that name a number between two neighbours, so that its product with a factor hits the one that is meant. */
const FINER_DIGITS = 22;
/** Below this binary numbers lose digits, and products of them are no longer rounded once. */
const SMALLEST = 1e-290;

/**
 * SI value of a decimal number written in `unit`. With more digits than a binary number holds it is multiplied exactly
 * and rounded once: only so can every SI value be written in every unit.
 */
export function siOfDecimal(text: string, unit: Unit): number {
  const digits = text.replace(/e.*$/i, "").replace(/\D/g, "").replace(/^0+/, "");
  if (digits.length <= DIGITS || unit.offset !== undefined) return toSi(Number(text), unit);
  return nearestProduct(text, unit.factor);
}

/** The shortest decimal number in `unit` that `siOfDecimal` reads as exactly `si`; null where there is none. */
export function decimalOfSi(si: number, unit: Unit): string | null {
  if (si === 0 && unit.offset === undefined) return "0";
  const near = si / unit.factor - (unit.offset ?? 0);
  for (let digits = 1; digits <= DIGITS; digits++) {
    const text = plain(near.toPrecision(digits));
    if (siOfDecimal(text, unit) === si) return text;
  }
  if (unit.offset !== undefined || !(Math.abs(si) > SMALLEST)) return null;
  const text = exactQuotient(si, unit.factor);
  return siOfDecimal(text, unit) === si ? text : null;
}

/** No "1.20e+2" and no trailing zeros where the number is of usual size. */
function plain(text: string): string {
  const number = Number(text);
  const size = Math.abs(number);
  return number !== 0 && (size < 1e-5 || size >= 1e15) ? text : String(number);
}

/** A binary number as whole × 2^exponent. */
function parts(value: number): { readonly whole: bigint; readonly exponent: number } {
  let [whole, exponent] = [value, 0];
  while (!Number.isInteger(whole)) {
    whole *= 2;
    exponent--;
  }
  return { whole: BigInt(whole), exponent };
}

interface Ratio {
  readonly over: bigint;
  readonly under: bigint;
}

function ratioOf(whole: bigint, exponent: number, tens: number): Ratio {
  const over = whole * (exponent > 0 ? 2n ** BigInt(exponent) : 1n) * (tens > 0 ? 10n ** BigInt(tens) : 1n);
  const under = (exponent < 0 ? 2n ** BigInt(-exponent) : 1n) * (tens < 0 ? 10n ** BigInt(-tens) : 1n);
  return { over, under };
}

const bitsOf = (whole: bigint) => whole.toString(2).length;

/** The binary number nearest to decimal × factor. */
function nearestProduct(text: string, factor: number): number {
  const match = /^([+-]?)(\d*)\.?(\d*)(?:e([+-]?\d+))?$/i.exec(text);
  if (!match) return Number.NaN;
  const [, sign, before = "", after = "", power = 0] = match;
  const { whole, exponent } = parts(factor);
  const { over, under } = ratioOf(BigInt(before + after) * whole, exponent, Number(power) - after.length);
  const shift = bitsOf(over) - bitsOf(under) - 60;
  const [a, b] = shift > 0 ? [over, under << BigInt(shift)] : [over << BigInt(-shift), under];
  // 60 bits and one that says whether anything follows: enough for `Number` to round as if it saw all of it.
  const kept = ((a / b) << 1n) | (a % b === 0n ? 0n : 1n);
  return (sign === "-" ? -1 : 1) * Number(kept) * 2 ** (shift - 1);
}

/** value / factor to more digits than a binary number holds. */
function exactQuotient(value: number, factor: number): string {
  const [a, f] = [parts(Math.abs(value)), parts(factor)];
  const tens = FINER_DIGITS - Math.floor(Math.log10(Math.abs(value) / factor)) - 1;
  const { over, under } = ratioOf(a.whole, a.exponent - f.exponent, tens);
  const digits = ((over * 2n + under * f.whole) / (under * f.whole * 2n)).toString();
  return `${value < 0 ? "-" : ""}${digits}e${-tens}`;
}

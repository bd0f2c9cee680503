import type { Uncertain } from "./uncertain.ts";

/** Unit that a quantity is shown in: printed symbol, and SI value of one of it. */
export interface ShownUnit {
  readonly symbol: string;
  readonly factor: number;
  readonly offset?: number;
}

const MINUS = "\u2212";
const THIN_SPACE = "\u202f";

/** A plain number of `significant` digits without exponent between 1e-4 and 1e7; a real minus sign. */
export function formatNumber(value: number, significant = 3): string {
  if (!Number.isFinite(value)) return "unknown";
  if (value === 0) return "0";
  const size = Math.abs(value);
  if (size < 1e-4 || size >= 1e7) return value.toExponential(significant - 1).replaceAll("-", MINUS);
  // The exponent after rounding: 9.999 to three digits is 10.0, not 10.00.
  const exponent = Number(size.toExponential(significant - 1).split("e")[1]);
  return fixed(value, Math.min(Math.max(0, significant - 1 - exponent), 12));
}

/** `si` in `unit` with `significant` digits: "12.3 N". */
export function formatQuantity(si: number, unit: ShownUnit, significant = 3): string {
  return withUnit(formatNumber(shown(si, unit), significant), unit);
}

/** A part (1) in per cent, for a sentence: "2.5 %". */
export function formatPercent(part: number, significant = 2): string {
  return `${formatNumber(100 * part, significant)} %`;
}

/**
 * Decimals that an uncertainty deserves, by the rounding rule of the Particle Data Group (Review of Particle Physics,
 * Introduction 5.3): three leading digits of 100 to 354 keep two, 355 to 949 keep one, 950 to 999 become 1000 and keep two.
 */
export function decimalsFor(uncertainty: number): number {
  const exponent = Math.floor(Math.log10(uncertainty));
  const leading = Math.round((uncertainty / 10 ** exponent) * 100);
  return leading <= 354 ? 1 - exponent : -exponent;
}

/**
 * Value and half-width of its 95 % interval, to the digits the uncertainty deserves: "24.93 ± 0.12 N".
 * A lopsided interval is given by its ends, "2.08 (1.91 to 2.27)", as is one that ends at zero because nothing lies below.
 */
export function formatUncertain(quantity: Uncertain, unit: ShownUnit = PLAIN): string {
  const value = shown(quantity.value, unit);
  const [low, high] = quantity.interval95.map((end) => shown(end, unit)) as [number, number];
  const half = Math.max(high - value, value - low);
  if (!(half > 0)) return withUnit(formatNumber(value, 4), unit);
  const decimals = Math.max(0, decimalsFor(half));
  const lopsided = Math.abs(high + low - 2 * value) > 0.1 * (high - low) || (low === 0 && high > 2 * value);
  if (lopsided)
    return withUnit(`${fixed(value, decimals)} (${fixed(low, decimals)} to ${fixed(high, decimals)})`, unit);
  return withUnit(`${fixed(value, decimals)} ± ${fixed(half, decimals)}`, unit);
}

/** The interval alone: "24.8 to 25.1 N". */
export function formatInterval([low, high]: readonly [number, number], unit: ShownUnit = PLAIN): string {
  const [a, b] = [shown(low, unit), shown(high, unit)];
  const width = b - a;
  const decimals = width > 0 ? Math.max(0, decimalsFor(width / 2)) : 3;
  return withUnit(`${fixed(a, decimals)} to ${fixed(b, decimals)}`, unit);
}

const PLAIN: ShownUnit = { symbol: "", factor: 1 };

function shown(si: number, unit: ShownUnit): number {
  return si / unit.factor - (unit.offset ?? 0);
}

function withUnit(number: string, unit: ShownUnit): string {
  if (unit.symbol === "" || unit.symbol === "1") return number;
  return unit.symbol === "°" ? `${number}°` : `${number}${THIN_SPACE}${unit.symbol}`;
}

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(Math.min(decimals, 20));
  return (/^-0(\.0*)?$/.test(text) ? text.slice(1) : text).replace("-", MINUS);
}

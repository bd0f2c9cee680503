import { OutOfDomain } from "./problem.ts";

function refuse(found: number, name: string, unit: string, allowed: string): never {
  const shown = Number.isNaN(found) ? "not a number" : `${found}${unit && ` ${unit}`}`;
  throw new OutOfDomain({ found: `${name} is ${shown}`, needed: allowed.trim(), mend: "" });
}

/** `value` if it is finite and greater than zero; written so that NaN fails too. */
export function positive(value: number, name: string, unit: string): number {
  return value > 0 && Number.isFinite(value) ? value : refuse(value, name, unit, `finite and greater than 0 ${unit}`);
}

/** `value` if it is finite and not negative. */
export function nonNegative(value: number, name: string, unit: string): number {
  return value >= 0 && Number.isFinite(value) ? value : refuse(value, name, unit, `finite and at least 0 ${unit}`);
}

/** `value` if it is finite. */
export function finite(value: number, name: string, unit: string): number {
  return Number.isFinite(value) ? value : refuse(value, name, unit, "a finite number");
}

/** `value` if it lies in the closed range `low` to `high`. */
export function within(value: number, low: number, high: number, name: string, unit: string): number {
  return value >= low && value <= high ? value : refuse(value, name, unit, `${low} to ${high} ${unit}`);
}

import { formatQuantity, formatUncertain, type ShownUnit } from "./format.ts";
import type { Uncertain } from "./uncertain.ts";

/** A number whose doubt is too large, or too little straight, for an interval to mean something. */
export interface WithoutInterval {
  readonly value: number;
  readonly standardUncertainty: null;
  readonly interval95: null;
  /** Why, to stand behind "no interval can be stated: ". */ readonly why: string;
}

/** A number with its doubt, or with why its doubt can not be told. */
export type Told = Uncertain | WithoutInterval;

export const hasInterval = (told: Told): told is Uncertain => told.interval95 !== null;

export const withoutInterval = (value: number, why: string): WithoutInterval => ({
  ...{ value: value + 0, standardUncertainty: null, interval95: null, why },
});

const DOUBT_TOO_LARGE = "its doubt is larger than itself";

/**
 * A number that can not lie below zero, such as a speed: its interval ends there. Where one standard uncertainty is more
 * than the number itself, a straight line through it says nothing of its doubt, and no interval is stated.
 *
 * @example notBelowZero({ value: 1, standardUncertainty: 0.8, interval95: [-0.6, 2.6] }).interval95 // [0, 2.6]
 */
export function notBelowZero(number: Uncertain): Told {
  const [low, high] = number.interval95;
  if (low >= 0) return number;
  return number.value > number.standardUncertainty
    ? { ...number, interval95: [0, high] }
    : withoutInterval(number.value, DOUBT_TOO_LARGE);
}

/** The same for what goes straight with its inputs, such as a weight that is lifted: it keeps its interval down to zero. */
export const cutAtZero = (number: Uncertain): Uncertain => {
  const [low, high] = number.interval95;
  return { ...number, interval95: [Math.max(0, low), Math.max(0, high)] };
};

/** A share lies between nothing and the whole. */
export function asShare(share: Uncertain): Uncertain {
  const [low, high] = share.interval95;
  return { ...share, interval95: [Math.max(0, low), Math.min(1, high)] };
}

/** "1.74 ± 0.26 m/s"; without doubt "1.74 m/s"; "0.42 m/s (no interval can be stated: its doubt is larger than itself)". */
export function formatTold(told: Told, unit: ShownUnit): string {
  if (!hasInterval(told)) return `${formatBare(told, unit)} (${noInterval(told)})`;
  return told.standardUncertainty === 0 ? formatQuantity(told.value, unit) : formatUncertain(told, unit);
}

/** The number alone, where why it has no interval is said elsewhere in the same sentence. */
export const formatBare = (told: Told, unit: ShownUnit): string =>
  hasInterval(told) ? formatTold(told, unit) : formatQuantity(told.value, unit, 2);

export const noInterval = ({ why }: WithoutInterval): string => `no interval can be stated: ${why}`;

import type { DoubtShare } from "../../model/vehicle/motionAnswer.ts";
import { notBelowZero, type Told, withoutInterval } from "../../quantity/told.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import type { Doubt, VehicleDoubts } from "./doubt.ts";
import type { VehicleNumbers } from "./vehicleNumbers.ts";

/** A result with its change for one standard uncertainty of each doubtful input, in the order of the doubts. */
export interface Linear {
  readonly value: number;
  readonly by: readonly number[];
}

/** Part of a standard uncertainty that inputs are changed by: small beside the bend of any result, large beside rounding. */
export const STEP = 1e-3;

/**
 * Results of the numbers by first order. `of` gives them for changed numbers, with the doubt that was changed and its
 * place, or null where they do not depend on that doubt.
 */
export function linearsOf(
  { list }: VehicleDoubts,
  numbers: VehicleNumbers,
  values: readonly number[],
  of: (numbers: VehicleNumbers, doubt: Doubt, place: number) => readonly number[] | null,
): Linear[] {
  const rows = list.map((doubt, place) => of(doubt.shift(numbers, STEP * doubt.standardUncertainty), doubt, place));
  return values.map((value, k) => {
    const by = rows.map((row) => (row !== null && Number.isFinite(row[k]) ? (row[k]! - value) / STEP : 0));
    return { value, by };
  });
}

/** One result, as `linearsOf`. */
export function linearOf(
  doubts: VehicleDoubts,
  numbers: VehicleNumbers,
  value: number,
  of: (numbers: VehicleNumbers, doubt: Doubt, place: number) => number | null,
): Linear {
  const [only] = linearsOf(doubts, numbers, [value], (...changed) => {
    const result = of(...changed);
    return result === null ? null : [result];
  });
  return only!;
}

/** A result that follows from others: f of their values, with all of them moved together along each doubt. */
export function linearFrom(
  { list }: VehicleDoubts,
  numbers: VehicleNumbers,
  parts: readonly Linear[],
  of: (values: readonly number[], numbers: VehicleNumbers) => number,
): Linear {
  const value = of(
    parts.map((part) => part.value),
    numbers,
  );
  const by = list.map((doubt, i) => {
    const moved = parts.map((part) => part.value + STEP * part.by[i]!);
    return (of(moved, doubt.shift(numbers, STEP * doubt.standardUncertainty)) - value) / STEP;
  });
  return { value, by };
}

/**
 * Standard uncertainty with the correlations of the inputs.
 *
 *   u² = Σ c_i² + 2 Σ r_ij c_i c_j
 *
 * Source   JCGM 100:2008, eqs 10 and 16.
 */
export function spreadOfLinear({ correlations }: VehicleDoubts, { by }: Pick<Linear, "by">): number {
  let variance = by.reduce((sum, one) => sum + one * one, 0);
  for (const { a, b, coefficient } of correlations) variance += 2 * coefficient * by[a]! * by[b]!;
  return Math.sqrt(Math.max(0, variance));
}

/** Part of a value below which its spread is the rounding of the searches behind it: a current at a limit has none. */
const SEARCHED = 1e-7;

export function uncertainOf(doubts: VehicleDoubts, linear: Linear): Uncertain {
  const spread = spreadOfLinear(doubts, linear);
  return uncertain(linear.value, spread > SEARCHED * Math.abs(linear.value) ? spread : 0);
}

/** A speed, force, power or current, none of which lies below zero; `why` no interval can be stated, null where one can. */
export const toldOf = (doubts: VehicleDoubts, linear: Linear, why: string | null = null): Told =>
  why === null ? notBelowZero(uncertainOf(doubts, linear)) : withoutInterval(linear.value, why);

/** Shares below this part of the variance are left out. */
const SLIGHT = 1e-4;

/** What makes a result doubtful, the greatest first; inputs of one group together. */
export function doubtShares(doubts: VehicleDoubts, { by }: Linear): DoubtShare[] {
  const whole = spreadOfLinear(doubts, { by }) ** 2;
  if (!(whole > 0)) return [];
  const groups = [...new Set(doubts.list.map(({ group }) => group))];
  return groups
    .map((group) => {
      const own = by.map((one, i) => (doubts.list[i]!.group === group ? one : 0));
      const first = doubts.list.find((one) => one.group === group)!;
      const size = spreadOfLinear(doubts, { by: own });
      const sign = Math.sign(own.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0)) || 1;
      return { input: group, name: first.name, contribution: sign * size, share: size ** 2 / whole, mend: first.mend };
    })
    .filter(({ share }) => share > SLIGHT)
    .sort((a, b) => b.share - a.share);
}

import { variantRatio } from "../../shared/compare/variantRatio.ts";
import type { SpreadChoice } from "../../shared/model/comparison.ts";
import { normalDraw } from "../../shared/numeric/distributions.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";

/** Two variants whose mountings scatter about their true ratio. */
export interface MountedVariants {
  readonly mountings: readonly [number, number];
  /** Relative spread from mounting to mounting of the variant over that of the baseline. */
  readonly times: number;
  /** Relative spread from mounting to mounting of the baseline. */
  readonly remounting?: number;
  /** Relative doubt inside each run, which is as large as stated. */
  readonly inside?: number;
}

const TRUE_RATIO = 1.6;

/**
 * Part of `simulations` comparisons whose 95 % interval holds the true ratio, by choice of the spread. What is left of 1 is
 * the rate of false claims where both variants are the same: the ratio moves interval and estimate alike.
 */
export function coverageOfRatio(
  { mountings, times, remounting = 0.02, inside = 0 }: MountedVariants,
  choices: readonly SpreadChoice[],
  { simulations, seed }: { readonly simulations: number; readonly seed: number },
): number[] {
  const uniform = uniformsFrom(seed);
  const side = (count: number, value: number, spread: number) =>
    Array.from({ length: count }, () => ({
      value: value * Math.exp(spread * normalDraw(uniform) + inside * normalDraw(uniform)),
      ...{ independent: inside, degreesOfFreedom: Infinity, common: new Map<string, number>() },
    }));
  const held = choices.map(() => 0);
  for (let i = 0; i < simulations; i++) {
    const [baseline, variant] = [
      side(mountings[0], 0.15, remounting),
      side(mountings[1], 0.15 * TRUE_RATIO, times * remounting),
    ];
    choices.forEach((choice, k) => {
      const [low, high] = variantRatio(baseline, variant, choice).interval95;
      if (low <= TRUE_RATIO && TRUE_RATIO <= high) held[k]! += 1;
    });
  }
  return held.map((count) => count / simulations);
}

/** Equal and unequal numbers of mountings and spreads; the larger spread on the larger and on the smaller side. */
export const MOUNTED: readonly MountedVariants[] = [
  ...[2, 3, 4, 5].flatMap((count) => [1, 2, 3].map((times) => ({ mountings: [count, count] as const, times }))),
  ...[1, 2, 1 / 2].flatMap((times) => [
    { mountings: [2, 3] as const, times },
    { mountings: [2, 5] as const, times },
    { mountings: [3, 5] as const, times },
  ]),
];

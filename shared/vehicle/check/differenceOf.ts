import type { DoubtShare } from "../../model/vehicle/motionAnswer.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";

/** A result with what its doubtful inputs do to it, as far as that is told. */
export interface SharedResult {
  readonly value: Uncertain;
  /** Empty: nothing is told of its inputs. */
  readonly shares: readonly Pick<DoubtShare, "input" | "contribution">[];
}

/**
 * Second result less the first, in their unit, with the doubt of common inputs counted once: what makes both wrong alike
 * does not tell them apart.
 *
 *   u²(d) = Σ over common inputs (c₂ − c₁)² + Σ over the others c² + what no input is told for
 *
 * Source   JCGM 100:2008, eqs 10 and F.2: two results of common inputs.
 * Assumes  first order; the inputs do not depend on each other, those of one key taken together.
 * Range    without shares the two are taken as independent, which with common inputs is the safe side.
 *
 * @example differenceOf({ value: uncertain(2, 0.1), shares: [] }, { value: uncertain(3, 0.1), shares: [] }, () => true) // 1, u = 0.1414
 */
export function differenceOf(
  first: SharedResult,
  second: SharedResult,
  isCommon: (input: string) => boolean,
): Uncertain {
  const before = new Map(first.shares.map(({ input, contribution }) => [input, contribution]));
  const after = new Map(second.shares.map(({ input, contribution }) => [input, contribution]));
  const told = [...new Set([...before.keys(), ...after.keys()])].reduce((sum, input) => {
    const [c1, c2] = [before.get(input) ?? 0, after.get(input) ?? 0];
    return sum + (isCommon(input) ? (c2 - c1) ** 2 : c1 * c1 + c2 * c2);
  }, 0);
  const variance = told + untold(first) + untold(second);
  return uncertain(second.value.value - first.value.value, Math.sqrt(variance));
}

/** Variance that the shares do not account for. */
function untold({ value, shares }: SharedResult): number {
  const known = shares.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  return Math.max(0, value.standardUncertainty ** 2 - known);
}

/** Whether a difference is beyond its 95 % interval. */
export const isToldApart = ({ interval95: [low, high] }: Uncertain): boolean => low > 0 || high < 0;

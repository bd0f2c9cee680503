import type { BudgetRow } from "../model/budget.ts";
import { effectiveDegreesOfFreedom } from "../numeric/welchSatterthwaite.ts";

/** One input of a coefficient that is known to a standard uncertainty. */
export interface DoubtInput extends Pick<BudgetRow, "name" | "source" | "kind" | "distribution"> {
  readonly standardUncertainty: number;
  readonly unit: string;
  /** Change of the coefficient by one unit of the input; the sign matters between coefficients. */
  readonly sensitivity: number;
  readonly degreesOfFreedom: number;
  /** Independent pieces that it is made of, each as its change of the coefficient by one standard uncertainty. */
  readonly pieces: readonly DoubtPiece[];
  /** Factor on the coefficient when the input is off by so much, its unit; absent where it adds instead. */
  readonly factor?: (off: number) => number;
}

export interface DoubtPiece {
  readonly change: number;
  readonly degreesOfFreedom: number;
}

type Words = Pick<DoubtInput, "name" | "source" | "kind" | "distribution" | "unit">;

/** Independent inputs of one kind, such as the reading of each plateau: input i is off by `uncertainties[i]`. */
export interface SeveralInputs {
  readonly words: Words;
  readonly sensitivities: readonly number[];
  readonly uncertainties: readonly number[];
  readonly degreesOfFreedom?: readonly number[];
}

/**
 * Several independent inputs of one kind as one: sensitivity sqrt(Σ c²) and the uncertainty that gives the same part,
 * sqrt(Σ c² u²) / sqrt(Σ c²), which is their mean where they are alike. None where they bring no doubt.
 */
export function asOneInput({ words, sensitivities, uncertainties, degreesOfFreedom }: SeveralInputs): DoubtInput[] {
  const pieces = sensitivities.map((c, i) => ({
    change: c * uncertainties[i]!,
    degreesOfFreedom: degreesOfFreedom?.[i] ?? Infinity,
  }));
  const sensitivity = Math.hypot(...sensitivities);
  const part = Math.hypot(...pieces.map(({ change }) => change));
  if (part === 0) return [];
  const together = effectiveDegreesOfFreedom(
    pieces.map((piece) => ({ ...piece, standardUncertainty: Math.abs(piece.change) })),
  );
  return [{ ...words, standardUncertainty: part / sensitivity, sensitivity, degreesOfFreedom: together, pieces }];
}

/** One input that acts as a factor on the coefficient. None where it brings no doubt. */
export function factorInput(
  words: Omit<Words, "kind" | "distribution">,
  { standardUncertainty, sensitivity }: Pick<DoubtInput, "standardUncertainty" | "sensitivity">,
  factor: (off: number) => number,
): DoubtInput[] {
  const change = sensitivity * standardUncertainty;
  if (change === 0) return [];
  const pieces = [{ change, degreesOfFreedom: Infinity }];
  const known = { kind: "B", distribution: "normal", degreesOfFreedom: Infinity } as const;
  return [{ ...words, ...known, standardUncertainty, sensitivity, pieces, factor }];
}

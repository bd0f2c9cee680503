import type { BudgetRow } from "../model/budget.ts";
import { judgedTogether } from "../numeric/combined.ts";

/** One input of a coefficient that is known to a standard uncertainty. */
export interface DoubtInput extends Pick<BudgetRow, "name" | "source" | "kind" | "distribution"> {
  readonly standardUncertainty: number;
  readonly unit: string;
  /** Change of the coefficient by one unit of the input; the sign matters between coefficients. */
  readonly sensitivity: number;
  readonly degreesOfFreedom: number;
  /** Independent pieces that it is made of, each as its change of the coefficient by one standard uncertainty. */
  readonly pieces: readonly DoubtPiece[];
  /** Value of an input on which the coefficient hangs by a power, its unit; absent where its error adds instead. */
  readonly nominal?: number;
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
  /** Of what their estimates share; see `judgedTogether`. */
  readonly commonDegreesOfFreedom?: readonly (number | undefined)[];
}

/**
 * Several independent inputs of one kind as one: sensitivity sqrt(Σ c²) and the uncertainty that gives the same part,
 * sqrt(Σ c² u²) / sqrt(Σ c²), which is their mean where they are alike; degrees of freedom as judged by one estimate. None
 * where they bring no doubt.
 */
export function asOneInput({ words, sensitivities, uncertainties, ...judged }: SeveralInputs): DoubtInput[] {
  const pieces = sensitivities.map((c, i) => ({
    change: c * uncertainties[i]!,
    degreesOfFreedom: judged.degreesOfFreedom?.[i] ?? Infinity,
  }));
  const sensitivity = Math.hypot(...sensitivities);
  const { standardUncertainty: part, degreesOfFreedom: together } = judgedTogether(
    pieces.map(({ change, degreesOfFreedom }, i) => ({
      standardUncertainty: Math.abs(change),
      degreesOfFreedom,
      commonDegreesOfFreedom: judged.commonDegreesOfFreedom?.[i],
    })),
  );
  if (part === 0) return [];
  return [{ ...words, standardUncertainty: part / sensitivity, sensitivity, degreesOfFreedom: together, pieces }];
}

/** One input on which the coefficient hangs by a power. None where it brings no doubt. */
export function powerInput(
  words: Omit<Words, "kind" | "distribution">,
  {
    standardUncertainty,
    sensitivity,
    nominal,
  }: Pick<DoubtInput, "standardUncertainty" | "sensitivity"> & { nominal: number },
): DoubtInput[] {
  const change = sensitivity * standardUncertainty;
  if (change === 0) return [];
  const pieces = [{ change, degreesOfFreedom: Infinity }];
  const known = { kind: "B", distribution: "normal", degreesOfFreedom: Infinity } as const;
  return [{ ...words, ...known, standardUncertainty, sensitivity, nominal, pieces }];
}

/** Factor on `coefficient` when a power input is off by `off`: (1 + off/x)^e with e = x/K ∂K/∂x. */
export function powerFactor({ nominal, sensitivity }: DoubtInput, coefficient: number, off: number): number {
  return nominal === undefined ? 1 : (1 + off / nominal) ** ((sensitivity * nominal) / coefficient);
}

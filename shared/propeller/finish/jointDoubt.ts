import { propagate } from "../../numeric/propagation.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import type { FittedSurface } from "./fitSurface.ts";

export interface FitsWithDoubt {
  readonly fits: readonly FittedSurface[];
  /** K_T and K_Q of each point in turn, those of all finishes one after another. */ readonly measured: readonly number[];
  /** Covariance of all of them. */ readonly covariance: readonly (readonly number[])[];
  /** Relative standard uncertainty of the blade elements, common to all. */
  readonly model: { readonly thrust: number; readonly torque: number };
}

/** Something that follows from the fitted unknowns: k_L and k_D of each finish in turn. */
export interface Derived {
  readonly value: number;
  readonly gradient: readonly number[];
}

/**
 * Standard uncertainties of what follows from the fits. What was measured has its covariance; blade elements that are off
 * by one part of K_T and one of K_Q for every surface move all finishes alike, so that most of it cancels in a change.
 *
 *   δp = S δK - S K δm
 *
 * Source   JCGM 100:2008, 5.2; JCGM 102:2011, 6.2.1.3.
 */
export function jointDoubt({ fits, measured, covariance, model }: FitsWithDoubt): (derived: Derived) => Uncertain {
  let from = 0;
  const rows = fits.flatMap((fit) => {
    const columns = fit.sensitivities[0]!.length;
    const start = from;
    from += columns;
    return fit.sensitivities.map((row) => rowOfAll(row, start, measured, scatterFactor(fit)));
  });
  const inputs = [
    ...covariance.map((row) => [...row, 0, 0]),
    modelRow(measured, model.thrust, 0),
    modelRow(measured, model.torque, 1),
  ];
  const unknowns = propagate(rows, inputs).covariance;
  return ({ value, gradient }) => uncertain(value, propagate([gradient], unknowns).standardUncertainties[0]!);
}

/** Where points lie further from the fit than their doubts explain, these are widened; never narrowed. */
export const scatterFactor = ({
  chiSquared,
  degreesOfFreedom,
}: Pick<FittedSurface, "chiSquared" | "degreesOfFreedom">) =>
  degreesOfFreedom > 0 ? Math.sqrt(Math.max(1, chiSquared / degreesOfFreedom)) : 1;

function rowOfAll(row: readonly number[], start: number, measured: readonly number[], widened: number): number[] {
  const whole = measured.map((_, i) => widened * (row[i - start] ?? 0));
  const ofModel = (kind: 0 | 1) =>
    -row.reduce((sum, one, i) => sum + (i % 2 === kind ? one * measured[start + i]! : 0), 0);
  return [...whole, ofModel(0), ofModel(1)];
}

function modelRow(measured: readonly number[], relative: number, kind: 0 | 1): number[] {
  const variance = relative ** 2;
  return [...measured.map(() => 0), kind === 0 ? variance : 0, kind === 1 ? variance : 0];
}

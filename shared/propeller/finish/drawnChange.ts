import { CholeskyDecomposition, Matrix } from "ml-matrix";
import type { FinishChange } from "../../model/finishFit.ts";
import { normalDraw, type Uniform } from "../../numeric/distributions.ts";
import { moments } from "../../numeric/moments.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import type { BladeResponse } from "./bladeResponse.ts";
import { type FittedSurface, fitSurface } from "./fitSurface.ts";

export interface ChangeToDraw {
  readonly responses: readonly BladeResponse[];
  readonly fits: readonly FittedSurface[];
  /** Measured numbers of both finishes one after another, and their covariance. */
  readonly measured: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly model: { readonly thrust: number; readonly torque: number };
  readonly draws: number;
  readonly uniform: Uniform;
}

/**
 * Ratios of lift and drag by drawing the measurements and the error of the blade elements, and solving again each time:
 * shows whether the straight-line uncertainties hold.
 *
 * Source   JCGM 101:2008, 5.9 and 6.4.8 (several normal inputs that go together).
 */
export function drawnChange(change: ChangeToDraw): FinishChange["monteCarlo"] {
  const { measured, covariance, model, draws, uniform } = change;
  const lower = new CholeskyDecomposition(
    new Matrix(covariance.map((row) => [...row])),
  ).lowerTriangularMatrix.to2DArray();
  const lift: number[] = [];
  const drag: number[] = [];
  for (let i = 0; i < draws; i++) {
    const independent = measured.map(() => normalDraw(uniform));
    const factors = [1 + model.thrust * normalDraw(uniform), 1 + model.torque * normalDraw(uniform)] as const;
    const drawn = measured.map((value, k) => {
      const error = lower[k]!.reduce((sum, one, j) => sum + one * independent[j]!, 0);
      return (value + error) / factors[k % 2]!;
    });
    const solved = solvedAgain(drawn, change);
    if (solved === null) continue;
    lift.push(solved.liftRatio);
    drag.push(solved.dragRatio);
  }
  if (lift.length < 2) return null;
  return { draws: lift.length, failed: draws - lift.length, liftRatio: spread(lift), dragRatio: spread(drag) };
}

function solvedAgain(drawn: readonly number[], { responses, fits, covariance }: ChangeToDraw) {
  let from = 0;
  const [first, second] = fits.map((start, f) => {
    const to = from + start.sensitivities[0]!.length;
    const own = covariance.slice(from, to).map((row) => row.slice(from, to));
    const fit = fitSurface({ response: responses[f]!, measured: drawn.slice(from, to), covariance: own, start });
    from = to;
    return fit;
  });
  if (first?.state !== "fitted" || second?.state !== "fitted") return null;
  return {
    liftRatio: second.liftFactor / first.liftFactor,
    dragRatio: second.answer.sectionDrag / first.answer.sectionDrag,
  };
}

function spread(values: readonly number[]) {
  const { mean, standardDeviation } = moments(values);
  return uncertain(mean, standardDeviation);
}

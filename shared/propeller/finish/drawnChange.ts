import { CholeskyDecomposition, Matrix } from "ml-matrix";
import type { FinishChange } from "../../model/finishFit.ts";
import { normalDraw, type Uniform } from "../../numeric/distributions.ts";
import { moments } from "../../numeric/moments.ts";
import { spreadOf } from "../../numeric/monteCarlo.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import type { FittedSide } from "./finishSide.ts";
import { fitSurface } from "./fitSurface.ts";

export interface ChangeToDraw {
  readonly sides: readonly [FittedSide, FittedSide];
  /** Covariance of the measured numbers of both. */ readonly covariance: readonly (readonly number[])[];
  /** Relative standard uncertainty of the blade elements. */
  readonly model: { readonly thrust: number; readonly torque: number };
  readonly draws: number;
  readonly uniform: Uniform;
}

/**
 * Ratios of lift and drag by drawing the measurements and the error of the blade elements, and solving again each time:
 * shows whether the straight-line uncertainties hold. Null where fewer than two draws could be solved.
 *
 * Source   JCGM 101:2008, 5.9 and 6.4.8 (several normal inputs that go together).
 */
export function drawnChange(change: ChangeToDraw): FinishChange["monteCarlo"] {
  const { sides, covariance, model, draws, uniform } = change;
  const measured = sides.flatMap((side) => side.measured);
  const decomposed = new CholeskyDecomposition(new Matrix(covariance.map((row) => [...row])));
  const lower = decomposed.lowerTriangularMatrix.to2DArray();
  const solved = Array.from({ length: draws }, () => {
    const independent = measured.map(() => normalDraw(uniform));
    const factors = [1 + model.thrust * normalDraw(uniform), 1 + model.torque * normalDraw(uniform)] as const;
    const drawn = measured.map((value, k) => {
      const error = lower[k]!.reduce((sum, one, j) => sum + one * independent[j]!, 0);
      return (value + error) / factors[k % 2]!;
    });
    return solvedAgain(drawn, change);
  }).filter((one) => one !== null);
  if (solved.length < 2) return null;
  return {
    draws: solved.length,
    failed: draws - solved.length,
    liftRatio: spread(solved.map(({ liftRatio }) => liftRatio)),
    dragRatio: spread(solved.map(({ dragRatio }) => dragRatio)),
  };
}

function solvedAgain(drawn: readonly number[], { sides }: ChangeToDraw) {
  const [first, second] = sides.map((side) =>
    fitSurface({
      ...side,
      measured: drawn.slice(side.from, side.from + side.measured.length),
      start: side.fit,
    }),
  );
  if (first?.state !== "fitted" || second?.state !== "fitted") return null;
  return {
    liftRatio: second.liftFactor / first.liftFactor,
    dragRatio: second.answer.sectionDrag / first.answer.sectionDrag,
  };
}

/** Of fewer draws 2.5 % is not one of them, and the interval is that of a normal distribution. */
const FEWEST_FOR_ENDS = 40;

function spread(values: readonly number[]): Uncertain {
  const { mean, standardDeviation } = moments(values);
  const normal = uncertain(mean, standardDeviation);
  return values.length < FEWEST_FOR_ENDS ? normal : { ...normal, interval95: spreadOf(values).symmetricInterval };
}

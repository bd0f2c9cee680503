import { OutOfDomain } from "../quantity/problem.ts";

export interface FittedModel {
  /** Weighted residual sum of squares. */
  readonly chiSquared: number;
  readonly points: number;
  /** Coefficients of the model; the variance of the scatter is counted as one more. */
  readonly coefficients: number;
}

/** Residual per point, in standard uncertainties, below which a fit is taken as exact: numbers are stored to 16 digits. */
const EXACT = 1e-12;

/**
 * Information criterion corrected for few points; of models of the same points the one with the least is best.
 *
 *   AICc = N ln(χ²/N) + 2 k + 2 k (k + 1) / (N - k - 1),   k the coefficients and one for the variance
 *
 * Source   Hurvich & Tsai, Biometrika 76 (1989) 297, eq. for normal residuals of unknown variance.
 * Range    more than k + 1 points.
 * Throws   OutOfDomain for fewer.
 */
export function correctedInformationCriterion({ chiSquared, points: N, coefficients }: FittedModel): number {
  const k = coefficients + 1;
  if (N <= k + 1) {
    throw new OutOfDomain({
      code: "numeric.too-few-for-criterion",
      found: `${N} points for ${coefficients} coefficients`,
      needed: `at least ${k + 2} points`,
      mend: "",
    });
  }
  return N * Math.log(Math.max(chiSquared / N, EXACT ** 2)) + 2 * k + (2 * k * (k + 1)) / (N - k - 1);
}

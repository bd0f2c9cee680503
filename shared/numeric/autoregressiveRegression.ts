import { inverse, Matrix } from "ml-matrix";
import { OutOfDomain } from "../quantity/problem.ts";

export interface RegressionData {
  readonly y: readonly number[];
  /** One array for each unknown, as long as `y`. */
  readonly columns: readonly (readonly number[])[];
  /** Whether a sample comes one step after the one before it; the first, and one after a gap, do not. */
  readonly follows: readonly boolean[];
}

export interface AutoregressiveFit {
  readonly coefficients: readonly number[];
  /** From the innovations' scatter, the autocorrelation taken as found. */
  readonly standardErrors: readonly number[];
  /** The same without trust in a first-order autoregression: Newey and West's on the innovations. */
  readonly robustStandardErrors: readonly number[];
  /** Change of each coefficient by a change of each y. */
  readonly influences: readonly (readonly number[])[];
  /** ρ in e_t = ρ e_(t-1) + innovation. */
  readonly autocorrelation: number;
  /** y less the model. */
  readonly residuals: readonly number[];
  /** Independent samples that the series is worth, less the unknowns; 1 at least. */
  readonly degreesOfFreedom: number;
  /** Sum of squared innovations. */
  readonly innovationSquares: number;
  /** Their variance, degrees of freedom of the fit allowed for. */
  readonly innovationVariance: number;
  readonly converged: boolean;
  readonly steps: number;
}

const MAXIMUM_STEPS = 100;
const TOLERANCE = 1e-10;
/** Beyond this condition of the scaled normal equations two columns say the same. */
const STIFFEST = 1e10;

/**
 * Linear regression y = Σ c_k x_k + e whose errors hang together from sample to sample, e_t = ρ e_(t-1) + innovation.
 *
 *   y_t - ρ y_(t-1) = Σ c_k (x_kt - ρ x_k(t-1)) + innovation;   first sample and first after a gap × sqrt(1 - ρ²)
 *
 * Least squares gives residuals, these give ρ, ρ gives least squares again, until ρ stands still.
 *
 * Source   Prais & Winsten, Trend Estimators and Serial Correlation, Cowles Commission Discussion Paper 383 (1954); of
 *          Cochrane & Orcutt, Journal of the American Statistical Association 44 (1949) 32, with the first sample kept.
 *          Robust errors: Newey & West, Econometrica 55 (1987) 703, with their lag 4 (n/100)^(2/9) (Review of Economic
 *          Studies 61 (1994) 631), on the innovations (prewhitened).
 * Range    more samples than unknowns, columns that are not multiples of one another.
 * Error    ρ comes out low by about (1 + 3ρ)/n in a short series, so that standard errors do too; the degrees of freedom,
 *          n (1 - ρ)/(1 + ρ) less the unknowns, make up for most of it.
 * Throws   OutOfDomain for other input.
 */
export function autoregressiveRegression(data: RegressionData): AutoregressiveFit {
  const count = data.y.length;
  const unknowns = data.columns.length;
  if (count <= unknowns) {
    throw new OutOfDomain({
      found: `${count} samples for ${unknowns} unknowns`,
      needed: "more samples than unknowns",
      mend: "",
    });
  }
  let rho = 0;
  let steps = 0;
  let converged = false;
  let fit = whitenedFit(data, rho);
  while (!converged && steps < MAXIMUM_STEPS) {
    steps++;
    const next = firstAutocorrelation(fit.residuals, data.follows);
    converged = Math.abs(next - rho) < TOLERANCE;
    rho = next;
    fit = whitenedFit(data, rho);
  }
  const { coefficients, residuals, gains, innovations, covariance } = fit;
  const innovationSquares = innovations.reduce((sum, e) => sum + e * e, 0);
  const variance = innovationSquares / (count - unknowns);
  const worth = rho > 0 ? (count * (1 - rho)) / (1 + rho) : count;
  return {
    coefficients,
    standardErrors: covariance.map((row, k) => Math.sqrt(variance * row[k]!)),
    robustStandardErrors: robustErrors(gains, innovations, unknowns),
    influences: gains.map((gain) => unwhitened(gain, rho, data.follows)),
    autocorrelation: rho,
    residuals,
    degreesOfFreedom: Math.max(1, worth - unknowns),
    innovationSquares,
    innovationVariance: variance,
    converged,
    steps,
  };
}

/**
 * First-order autocorrelation Σ e_t e_(t-1) / Σ e_t² of deviations from a model, over neighbours alone; 0 where all
 * are zero. From -1 to 1.
 *
 * Source   Box & Jenkins, Time Series Analysis (1976), ch. 2; checked against R `acf(lh)`.
 */
export function firstAutocorrelation(deviations: readonly number[], follows: readonly boolean[]): number {
  let products = 0;
  let squares = 0;
  deviations.forEach((e, t) => {
    if (follows[t]) products += e * deviations[t - 1]!;
    squares += e * e;
  });
  return squares > 0 ? products / squares : 0;
}

function whitenedFit({ y, columns, follows }: RegressionData, rho: number) {
  const X = columns.map((column) => whitened(column, rho, follows));
  const target = whitened(y, rho, follows);
  const covariance = inverseNormal(X);
  const gains = covariance.map((row) => target.map((_, t) => X.reduce((sum, x, k) => sum + row[k]! * x[t]!, 0)));
  const coefficients = gains.map((gain) => gain.reduce((sum, g, t) => sum + g * target[t]!, 0));
  const left = (values: readonly number[], by: readonly (readonly number[])[]) =>
    values.map((value, t) => value - by.reduce((sum, column, k) => sum + coefficients[k]! * column[t]!, 0));
  return { coefficients, covariance, gains, innovations: left(target, X), residuals: left(y, columns) };
}

function whitened(values: readonly number[], rho: number, follows: readonly boolean[]): number[] {
  const first = Math.sqrt(1 - rho * rho);
  return values.map((value, t) => (follows[t] ? value - rho * values[t - 1]! : first * value));
}

/** From the change by a whitened sample to the change by a sample: the transpose of `whitened`. */
function unwhitened(gain: readonly number[], rho: number, follows: readonly boolean[]): number[] {
  const first = Math.sqrt(1 - rho * rho);
  return gain.map((g, t) => (follows[t] ? g : first * g) - (follows[t + 1] ? rho * gain[t + 1]! : 0));
}

/** (XᵀX)⁻¹, reckoned with columns of length one so that their units do not matter. */
function inverseNormal(X: readonly (readonly number[])[]): number[][] {
  const lengths = X.map((column) => Math.sqrt(column.reduce((sum, x) => sum + x * x, 0)));
  const alike = new Matrix(
    X.map((a, i) =>
      X.map((b, j) => a.reduce((sum, x, t) => sum + x * b[t]!, 0) / (lengths[i]! * lengths[j]! || Number.NaN)),
    ),
  );
  const inverted = alike.to2DArray().every((row) => row.every(Number.isFinite)) ? inverse(alike, true) : null;
  if (inverted === null || !(alike.norm() * inverted.norm() < STIFFEST)) {
    throw new OutOfDomain({
      code: "numeric.alike-columns",
      found: "columns of a regression that can not be told apart",
      needed: "samples in which each cause acts differently",
      mend: "",
    });
  }
  return inverted.to2DArray().map((row, i) => row.map((one, j) => one / (lengths[i]! * lengths[j]!)));
}

/** Square roots of the long-run variance of Σ gain × innovation, Bartlett weights. */
function robustErrors(
  gains: readonly (readonly number[])[],
  innovations: readonly number[],
  unknowns: number,
): number[] {
  const count = innovations.length;
  const reach = Math.floor(4 * (count / 100) ** (2 / 9));
  return gains.map((gain) => {
    const scores = gain.map((g, t) => g * innovations[t]!);
    let sum = 0;
    for (let lag = 0; lag <= reach; lag++) {
      let product = 0;
      for (let t = lag; t < count; t++) product += scores[t]! * scores[t - lag]!;
      sum += (lag === 0 ? 1 : 2) * (1 - lag / (reach + 1)) * product;
    }
    return Math.sqrt((Math.max(0, sum) * count) / (count - unknowns));
  });
}

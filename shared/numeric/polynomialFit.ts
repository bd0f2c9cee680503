import { Matrix, QrDecomposition } from "ml-matrix";
import { OutOfDomain } from "../quantity/problem.ts";
import { checkedLineData, type LineData } from "./lineData.ts";

export interface PolynomialFit {
  readonly order: number;
  /** Coefficients of 1, x, x² and so on. */
  readonly coefficients: readonly number[];
  /** Of the coefficients: from the uncertainties where they were given, else from the scatter. */
  readonly covariance: readonly (readonly number[])[];
  readonly chiSquared: number;
  /** Points less coefficients. */
  readonly degreesOfFreedom: number;
  /** Distances from the curve in standard uncertainties; plain distances where no uncertainties were given. */
  readonly residuals: readonly number[];
  /** Standard uncertainty with which each point was weighed, unit of y. */
  readonly pointUncertainties: readonly number[];
  readonly converged: boolean;
  readonly at: (x: number) => number;
  readonly slopeAt: (x: number) => number;
  /** Standard uncertainty of the curve at `x`, from `covariance`. */
  readonly standardErrorAt: (x: number) => number;
  /** Change of the curve at `x` by a change of each y. */
  readonly influencesAt: (x: number) => readonly number[];
}

const MAXIMUM_STEPS = 50;
/** Change of the curve at a point, in standard uncertainties of the point, that ends the search for the weights. */
const TOLERANCE = 1e-10;

/**
 * Weighted least-squares polynomial of a stated order, with doubt in both coordinates by effective variances:
 *
 *   least  Σ (y - p(x))² / (u_y² + p'(x)² u_x²),   weights and curve in turn until neither changes
 *
 * The unknowns are coefficients of powers of z = (x - middle) / (half the range), and the system is solved by Householder
 * QR: powers of x itself are nearly alike where the range lies away from zero.
 *
 * Source   Björck, Numerical Methods for Least Squares Problems (1996), ch. 2; effective variance Orear, American Journal
 *          of Physics 50 (1982) 912.
 * Assumes  independent points; where uncertainties are given, that they are true standard uncertainties.
 * Range    order a whole number from 0; at least order + 1 points at as many different x.
 * Error    NIST StRD Pontius and Wampler1 to Wampler5: 9 digits of coefficients and standard errors.
 * Throws   OutOfDomain for other input.
 */
export function polynomialFit(data: LineData & { readonly order: number }): PolynomialFit {
  const { order } = data;
  const checked = checkedLineData(data, 1);
  requireOrder(order, checked.x);
  const scale = scaleOf(checked.x);
  let uncertainties = checked.uy.map((u, i) => (u > 0 ? u : checked.ux[i]!));
  let solved = solve(checked, order, scale, uncertainties);
  const exact = checked.ux.every((u) => u === 0);
  let converged = exact;
  for (let step = 0; !converged && step < MAXIMUM_STEPS; step++) {
    const before = solved;
    uncertainties = checked.x.map(
      (x, i) => Math.hypot(checked.uy[i]!, before.slopeAt(x) * checked.ux[i]!) || TOLERANCE,
    );
    solved = solve(checked, order, scale, uncertainties);
    const change = checked.x.map((x, i) => Math.abs(solved.at(x) - before.at(x)) / uncertainties[i]!);
    converged = Math.max(...change) <= TOLERANCE;
  }
  return finished(checked, order, scale, solved, uncertainties, converged);
}

interface Scale {
  readonly middle: number;
  readonly half: number;
}

type Checked = ReturnType<typeof checkedLineData>;

interface Solved {
  /** Coefficients in powers of z. */
  readonly scaled: readonly number[];
  /** Change of each of them by a change of each y. */
  readonly influences: Matrix;
  readonly at: (x: number) => number;
  readonly slopeAt: (x: number) => number;
}

function requireOrder(order: number, x: readonly number[]): void {
  if (!Number.isInteger(order) || order < 0) refuse(`a polynomial of order ${order}`, "a whole number from 0");
  const different = new Set(x).size;
  if (different < order + 1) refuse(`${different} different x for order ${order}`, `at least ${order + 1}`);
}

function scaleOf(x: readonly number[]): Scale {
  const [low, high] = [Math.min(...x), Math.max(...x)];
  return { middle: (low + high) / 2, half: (high - low) / 2 || 1 };
}

function powers(x: number, order: number, { middle, half }: Scale): number[] {
  const z = (x - middle) / half;
  return Array.from({ length: order + 1 }, (_, k) => z ** k);
}

function solve({ x, y }: Checked, order: number, scale: Scale, uncertainties: readonly number[]): Solved {
  const rows = x.map((xi, i) => powers(xi, order, scale).map((power) => power / uncertainties[i]!));
  const qr = new QrDecomposition(new Matrix(rows));
  const scaled = qr.solve(Matrix.columnVector(y.map((yi, i) => yi / uncertainties[i]!))).to1DArray();
  const influences = qr.solve(Matrix.eye(x.length));
  for (let i = 0; i < x.length; i++) influences.mulColumn(i, 1 / uncertainties[i]!);
  return {
    scaled,
    influences,
    at: (at) => scaled.reduceRight((sum, c) => sum * ((at - scale.middle) / scale.half) + c, 0),
    slopeAt: (at) =>
      powers(at, order, scale).reduce((sum, power, k) => sum + (k + 1) * (scaled[k + 1] ?? 0) * power, 0) / scale.half,
  };
}

function finished(
  { x, y, weighted }: Checked,
  order: number,
  scale: Scale,
  { scaled, influences, at, slopeAt }: Solved,
  uncertainties: readonly number[],
  converged: boolean,
): PolynomialFit {
  const residuals = x.map((xi, i) => (y[i]! - at(xi)) / uncertainties[i]!);
  const chiSquared = residuals.reduce((sum, r) => sum + r * r, 0);
  const degreesOfFreedom = x.length - order - 1;
  const weighed = influences.clone();
  for (let i = 0; i < x.length; i++) weighed.mulColumn(i, uncertainties[i]!);
  const covariance = weighed.mmul(weighed.transpose());
  if (!weighted) covariance.mul(degreesOfFreedom > 0 ? chiSquared / degreesOfFreedom : 0);
  const toPlain = plainPowers(order, scale);
  const rowOf = (at: number) => Matrix.rowVector(powers(at, order, scale));
  return {
    order,
    coefficients: toPlain.mmul(Matrix.columnVector([...scaled])).to1DArray(),
    covariance: toPlain.mmul(covariance).mmul(toPlain.transpose()).to2DArray(),
    ...{ chiSquared, degreesOfFreedom, residuals, pointUncertainties: uncertainties, converged, at, slopeAt },
    standardErrorAt: (at) => Math.sqrt(Math.max(0, rowOf(at).mmul(covariance).mmul(rowOf(at).transpose()).get(0, 0))),
    influencesAt: (at) => rowOf(at).mmul(influences).to1DArray(),
  };
}

/** From powers of z to powers of x, by the binomial theorem: z^k = Σ C(k, j) x^j (-middle)^(k-j) / half^k. */
function plainPowers(order: number, { middle, half }: Scale): Matrix {
  const matrix = Matrix.zeros(order + 1, order + 1);
  for (let k = 0; k <= order; k++) {
    let binomial = 1;
    for (let j = 0; j <= k; j++) {
      matrix.set(j, k, (binomial * (-middle) ** (k - j)) / half ** k);
      binomial = (binomial * (k - j)) / (j + 1);
    }
  }
  return matrix;
}

function refuse(found: string, needed: string): never {
  throw new OutOfDomain({ code: "numeric.polynomial", found, needed, mend: "" });
}

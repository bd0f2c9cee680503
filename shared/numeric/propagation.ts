import { OutOfDomain } from "../quantity/problem.ts";
import { effectiveDegreesOfFreedom } from "./welchSatterthwaite.ts";

type Matrix = readonly (readonly number[])[];

export interface Propagated {
  /** Combined standard uncertainty of each result, its unit. */
  readonly standardUncertainties: readonly number[];
  /** Covariance of the results. */
  readonly covariance: Matrix;
  /** Correlation coefficients of the results; 0 where one of the two has no doubt. */
  readonly correlation: Matrix;
}

/**
 * Law of propagation of uncertainty for any number of results of the same inputs.
 *
 *   V_y = C V_x Cᵀ,   C_ki = ∂y_k/∂x_i
 *
 * Source   JCGM 100:2008, eq. 13 and H.2; in matrices JCGM 102:2011, 6.2.1.3.
 * Assumes  results that are straight enough over the doubts of the inputs; `monteCarlo` shows whether they are.
 * Throws   OutOfDomain `numeric.propagation` where a row of sensitivities and the covariance differ in length.
 */
export function propagate(sensitivities: Matrix, covariance: Matrix): Propagated {
  for (const row of [...sensitivities, ...covariance]) {
    if (row.length !== covariance.length) throw lengths(covariance.length, row.length);
  }
  const spread = sensitivities.map((row) =>
    covariance.map((_, j) =>
      dot(
        row,
        covariance.map((line) => line[j]!),
      ),
    ),
  );
  const V = spread.map((row) => sensitivities.map((other) => dot(row, other)));
  const u = V.map((row, k) => Math.sqrt(Math.max(0, row[k]!)));
  const correlation = V.map((row, k) =>
    row.map((value, l) => (u[k] === 0 || u[l] === 0 ? 0 : value / (u[k]! * u[l]!))),
  );
  return { standardUncertainties: u, covariance: V, correlation };
}

/** Covariance from standard uncertainties and correlation coefficients. JCGM 100:2008, eq. 14. */
export function covarianceFrom(standardUncertainties: readonly number[], correlation: Matrix): Matrix {
  return standardUncertainties.map((u, i) => standardUncertainties.map((v, j) => u * v * correlation[i]![j]!));
}

/**
 * ∂f/∂x_i at `x` by central differences over one standard uncertainty to either side, which is also how the doubt acts.
 * An input without doubt gets 0: it moves nothing.
 *
 * Source   JCGM 100:2008, 5.1.3, note 2.
 */
export function centralSensitivities(
  f: (x: readonly number[]) => number,
  x: readonly number[],
  standardUncertainties: readonly number[],
): number[] {
  return x.map((value, i) => {
    const step = standardUncertainties[i]!;
    if (step === 0) return 0;
    const at = (moved: number) => f(x.map((other, j) => (j === i ? moved : other)));
    return (at(value + step) - at(value - step)) / (2 * step);
  });
}

/** One input of a result, independent of the others. */
export interface BudgetLine {
  /** Unit of the input. */
  readonly standardUncertainty: number;
  /** Unit of the result over that of the input. */
  readonly sensitivity: number;
  readonly degreesOfFreedom: number;
}

export interface CombinedDoubt {
  readonly standardUncertainty: number;
  /** By Welch and Satterthwaite; may be infinite. */
  readonly degreesOfFreedom: number;
  /** Part of the variance that each line brings; they sum to 1, or to 0 where there is no doubt at all. */
  readonly shares: readonly number[];
}

/** Combined standard uncertainty of a result of independent inputs. Source JCGM 100:2008, eq. 11a and G.2b. */
export function combine(lines: readonly BudgetLine[]): CombinedDoubt {
  const parts = lines.map(({ standardUncertainty, sensitivity, degreesOfFreedom }) => ({
    standardUncertainty: Math.abs(standardUncertainty * sensitivity),
    degreesOfFreedom,
  }));
  const total = Math.hypot(...parts.map((part) => part.standardUncertainty));
  return {
    standardUncertainty: total,
    degreesOfFreedom: effectiveDegreesOfFreedom(parts),
    shares: parts.map((part) => (total === 0 ? 0 : (part.standardUncertainty / total) ** 2)),
  };
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, i) => sum + value * b[i]!, 0);

function lengths(inputs: number, found: number): OutOfDomain {
  return new OutOfDomain({
    code: "numeric.propagation",
    found: `${inputs} inputs and a row of ${found} numbers`,
    needed: "one number for each input",
    mend: "",
  });
}

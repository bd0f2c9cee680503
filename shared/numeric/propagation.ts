import { OutOfDomain } from "../quantity/problem.ts";

type Matrix = readonly (readonly number[])[];

export interface Propagated {
  /** Combined standard uncertainty of each result, its unit. */
  readonly standardUncertainties: readonly number[];
  /** Covariance of the results. */
  readonly covariance: Matrix;
}

/**
 * Law of propagation of uncertainty for any number of results of the same inputs.
 *
 *   V_y = C V_x Cᵀ,   C_ki = ∂y_k/∂x_i
 *
 * Source   JCGM 100:2008, eq. 13 and H.2; in matrices JCGM 102:2011, 6.2.1.3.
 * Assumes  results that are straight enough over the doubts of the inputs; Monte Carlo shows whether they are.
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
  return { standardUncertainties: V.map((row, k) => Math.sqrt(Math.max(0, row[k]!))), covariance: V };
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

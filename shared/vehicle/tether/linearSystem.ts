/**
 * Solution of A x = b for a small system, by elimination with the greatest pivot of each column; null where A is singular.
 *
 * Source   Golub & Van Loan, Matrix Computations, 4th ed. (2013), algorithm 3.4.1.
 */
export function solvedSystem(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const n = rows.length;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    }
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    const head = rows[column]!;
    for (let row = column + 1; row < n; row++) {
      const line = rows[row]!;
      const factor = line[column]! / head[column]!;
      for (let k = column; k <= n; k++) line[k]! -= factor * head[k]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let row = n - 1; row >= 0; row--) {
    let sum = rows[row]![n]!;
    for (let k = row + 1; k < n; k++) sum -= rows[row]![k]! * x[k]!;
    x[row] = sum / rows[row]![row]!;
  }
  return x.every(Number.isFinite) ? x : null;
}

/** Levenberg's step δ of (AᵀA + μ tr(AᵀA) I) δ = Aᵀ b; null where even that is singular. */
export function dampedSolution(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
  mu: number,
): number[] | null {
  const n = right.length;
  const normal = matrix.map((_, i) => matrix.map((__, j) => matrix.reduce((sum, row) => sum + row[i]! * row[j]!, 0)));
  const trace = normal.reduce((sum, row, i) => sum + row[i]!, 0);
  for (let i = 0; i < n; i++) normal[i]![i]! += mu * trace;
  return solvedSystem(
    normal,
    matrix.map((_, i) => matrix.reduce((sum, row, k) => sum + row[i]! * right[k]!, 0)),
  );
}

export interface QuadratureRule {
  /** Places between −1 and 1, rising. */ readonly nodes: readonly number[];
  /** They add up to 2. */ readonly weights: readonly number[];
}

/**
 * Gauss-Legendre rule with `count` nodes: exact for polynomials up to degree 2 count − 1.
 *
 *   ∫ f from −1 to 1 ≈ Σ w_i f(x_i),   P_n(x_i) = 0,   w_i = 2/[(1 − x_i²) P_n'(x_i)²]
 *
 * Source   Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 25.4.29; zeros by Newton's method.
 * Range    1 to about 60 nodes.
 *
 * @example gaussLegendre(2).nodes[1] // 0.577350269190
 */
export function gaussLegendre(count: number): QuadratureRule {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = count; i >= 1; i--) {
    // Within the reach of Newton's method for every n; five steps square the error down to rounding.
    let x = Math.cos((Math.PI * (i - 0.25)) / (count + 0.5));
    for (let step = 0; step < 6; step++) {
      const [value, slope] = legendre(count, x);
      x -= value / slope;
    }
    const [, slope] = legendre(count, x);
    nodes.push(x);
    weights.push(2 / ((1 - x * x) * slope * slope));
  }
  return { nodes, weights };
}

/** P_n and its derivative at x, by Bonnet's recursion. */
function legendre(n: number, x: number): [value: number, slope: number] {
  let [before, value] = [1, x];
  for (let k = 2; k <= n; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return [value, (n * (x * value - before)) / (x * x - 1)];
}

/** ∫ f from `low` to `high` by Simpson's rule on an even number of pieces; error with the fourth power of their width. */
export function simpson(f: (x: number) => number, low: number, high: number, pieces: number): number {
  const width = (high - low) / pieces;
  let sum = f(low) + f(high);
  for (let i = 1; i < pieces; i++) sum += (i % 2 === 1 ? 4 : 2) * f(low + i * width);
  return (sum * width) / 3;
}

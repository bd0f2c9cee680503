/** Correlation of two evenly sampled series at one lag, and how many pairs it rests on. */
export interface LaggedCorrelation {
  /** Pearson's r of x[i + lag] and y[i], -1 to 1; 0 where either does not change or the pairs are too few. */
  readonly correlation: number;
  readonly pairs: number;
  /** Sums of squares of x and y over these pairs, each about its mean. */
  readonly energies: readonly [number, number];
}

/**
 * Normalised cross-correlation of two evenly sampled series at a whole `lag` in samples, over the part where both have
 * numbers (NaN: none):
 *
 *   r = Σ (x − x̄)(y − ȳ) / sqrt( Σ (x − x̄)² Σ (y − ȳ)² ),   x = x[i + lag], y = y[i], means over the same pairs
 *
 * Source   Pearson's product-moment correlation of the overlap; Press et al., Numerical Recipes (3rd ed.), sec. 14.5.
 * Range    any lag; fewer than `fewestPairs` pairs give 0, so that a few end samples never make the best match.
 */
export function laggedCorrelation(
  x: Float64Array,
  y: Float64Array,
  lag: number,
  fewestPairs: number,
): LaggedCorrelation {
  const from = Math.max(0, -lag);
  const to = Math.min(y.length, x.length - lag);
  let [pairs, meanX, meanY, xx, yy, xy] = [0, 0, 0, 0, 0, 0];
  // One pass with running means: the series may stand far from zero.
  for (let i = from; i < to; i++) {
    const a = x[i + lag]!;
    const b = y[i]!;
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    pairs++;
    const dx = a - meanX;
    const dy = b - meanY;
    meanX += dx / pairs;
    meanY += dy / pairs;
    xx += dx * (a - meanX);
    yy += dy * (b - meanY);
    xy += dx * (b - meanY);
  }
  if (pairs < fewestPairs || !(xx > 0) || !(yy > 0)) return { correlation: 0, pairs, energies: [0, 0] };
  return { correlation: Math.max(-1, Math.min(1, xy / Math.sqrt(xx * yy))), pairs, energies: [xx, yy] };
}

import { autocorrelation } from "./autocorrelation.ts";

/** How much of one series hangs together, against all of them. */
export interface CorrelatedPart {
  /** Factor on the correlation of all series at every lag but 0; 1 where they are alike. */
  readonly factor: number;
  /** Variance of `factor`. */
  readonly variance: number;
}

/** Fewest series whose differences can be told from chance. */
const FEWEST_SERIES = 3;

/**
 * The same disturbance stands beside more or less independent noise in each series: swirl of a tank grows with the
 * thrust while the noise of the amplifier stays. Series j then has the correlation f_j ρ_k at every lag k > 0.
 *
 *   f_j = ρ_j1 / ρ_1,   drawn towards the mean of all by B_j = T² / (T² + v_j),   T² = max(0, var f - mean v)
 *
 * with v_j the variance of f_j were all alike, so that series that differ by chance alone keep what all show together.
 *
 * Source   shrinkage to the mean: Efron & Morris, J. Am. Stat. Assoc. 70 (1975) 311; T² by moments: DerSimonian & Laird,
 *          Controlled Clinical Trials 7 (1986) 177; variance of r_1: Bartlett, J. R. Stat. Soc. Suppl. 8 (1946) 27, in the
 *          form Σ_v (ρ_v+1 + ρ_v-1 - 2 ρ_1 ρ_v)² / n (Brockwell & Davis, Introduction to Time Series and Forecasting
 *          (2002), 2.4.10). All from memory.
 * Assumes  the shape of the correlation is the same in all series.
 * Range    `rho` from lag 0, as all series show it; `deviations` each from their own mean. Fewer than three series, and a
 *          ρ_1 that chance explains, leave every factor 1.
 */
export function correlatedParts(deviations: readonly Float64Array[], rho: readonly number[]): CorrelatedPart[] {
  const alike = deviations.map(() => ({ factor: 1, variance: 0 }));
  const first = rho[1] ?? 0;
  const count = deviations.reduce((sum, { length }) => sum + length, 0);
  if (deviations.length < FEWEST_SERIES || !(first > 2 / Math.sqrt(count))) return alike;
  const seen = deviations.map((one) => factorSeen(one, rho));
  const ofOne = bartlett(rho) / first ** 2;
  const chance = deviations.map(({ length }) => ofOne / length);
  const mean = weighedMean(seen, deviations);
  const spread = seen.reduce((sum, f) => sum + (f - mean) ** 2, 0) / (seen.length - 1);
  const between = Math.max(0, spread - chance.reduce((sum, v) => sum + v, 0) / chance.length);
  return seen.map((f, j) => {
    const own = between / (between + chance[j]!);
    return { factor: Math.min(Math.max(0, mean + own * (f - mean)), 1 / first), variance: own * chance[j]! };
  });
}

/**
 * Readings that one of `count` independent ones is worth for their mean, 1.
 *
 *   τ = 1 + 2 Σ (1 - k/n) ρ_k
 *
 * Source   variance of a mean of correlated readings: Brockwell & Davis, Introduction to Time Series and Forecasting
 *          (2002), 2.4, from memory.
 */
export function timeOfMean(count: number, rho: readonly number[]): number {
  let time = 1;
  for (let k = 1; k < Math.min(rho.length, count); k++) time += 2 * (1 - k / count) * rho[k]!;
  return time;
}

/** The mean's part is put back as far as this much of the sum is left to divide by. */
const MOST_PUT_BACK = 0.5;

/**
 * f of one series, with what its mean took up put back as in `sharedCorrelation`: f ρ_1 (n - 1) = r_1 (n - τ) + τ (n - 1)/n
 * with the time τ = 1 + f (τ_all - 1) of this series.
 */
function factorSeen(deviations: Float64Array, rho: readonly number[]): number {
  const n = deviations.length;
  const r = autocorrelation(deviations, 1);
  const lacking = (n - 1) / n - r;
  const whole = rho[1]! * (n - 1);
  const putBack = (timeOfMean(n, rho) - 1) * lacking;
  return (r * n + lacking) / (whole - Math.min(putBack, MOST_PUT_BACK * whole));
}

/** n times the variance of r_1. */
function bartlett(rho: readonly number[]): number {
  const at = (lag: number) => rho[Math.abs(lag)] ?? 0;
  let sum = 0;
  for (let v = 1; v <= rho.length; v++) sum += (at(v + 1) + at(v - 1) - 2 * at(1) * at(v)) ** 2;
  return sum;
}

function weighedMean(values: readonly number[], series: readonly Float64Array[]): number {
  const count = series.reduce((sum, { length }) => sum + length, 0);
  return values.reduce((sum, value, j) => sum + (value * series[j]!.length) / count, 0);
}

import { expect, test } from "vitest";
import { effectiveSampleSize } from "../../shared/numeric/autocorrelation.ts";
import { moments } from "../../shared/numeric/moments.ts";
import { sharedCorrelation } from "../../shared/numeric/sharedCorrelation.ts";
import { relativeError } from "../relative.ts";
import { LEW, MAVRO, MICHELSO } from "./nist.data.ts";

// Sums of autocorrelation pairs up to the first pair that is not positive (Geyer, Statistical Science 7 (1992) 473) on
// NIST StRD series, computed independently with numpy from the definition of r_k.
test.each([
  { name: "Mavro", data: MAVRO, inflation: 11.0450004433 },
  { name: "Michelso", data: MICHELSO, inflation: 5.28754870361 },
])("the $name series inflates the variance of its mean by $inflation", ({ data, inflation }) => {
  const found = effectiveSampleSize(data);
  expect(relativeError(found.inflation, inflation)).toBeLessThan(1e-10);
  expect(relativeError(found.effective, data.length / inflation)).toBeLessThan(1e-10);
});

test("a series that swings about its mean counts in full and no more", () => {
  expect(effectiveSampleSize(LEW)).toEqual({ effective: 200, inflation: 1 });
});

// Means of blocks of ten, an independent route to the standard error of the mean: 1.895e-4 for Mavro (R 4.2.2).
test("the standard error from the effective sample size agrees with block means within a tenth for Mavro", () => {
  const error = moments(MAVRO).standardDeviation / Math.sqrt(effectiveSampleSize(MAVRO).effective);
  expect(relativeError(error, 1.895415522e-4)).toBeLessThan(0.1);
});

// Exact for an autoregressive process: n / [1 + 2 Σ (1 - k/n) r^k]; Priestley, Spectral Analysis and Time Series (1981),
// eq. 5.3.5. The driving noise has a fixed seed, so the numbers never change.
test.each([
  { coefficient: 0.3, count: 200_000 },
  { coefficient: 0.8, count: 200_000 },
  { coefficient: 0.95, count: 200_000 },
  { coefficient: 0.8, count: 4000 },
])("$count samples of an AR(1) process of $coefficient are worth n (1 - r)/(1 + r) within a tenth", (process) => {
  const { coefficient, count } = process;
  const exact = (count * (1 - coefficient)) / (1 + coefficient);
  expect(relativeError(effectiveSampleSize(autoregression(coefficient, count)).effective, exact)).toBeLessThan(0.1);
});

/**
 * Short series of one process: n_eff = n / [1 + 2 Σ (1 - k/n) r^k] (Priestley, eq. 5.3.5), and as the mean takes up its part
 * of the variance, E s² = σ² (n - τ)/(n - 1) with τ = n / n_eff, so that s²/n must grow by τ (n - 1)/(n - τ).
 */
test.each([
  // All are one process, but each keeps a little of what sets it apart by chance.
  { coefficient: 0.8, count: 100, effective: 11.6279069766, within: 0.12 },
  { coefficient: 0.5, count: 20, effective: 7.1428566563, within: 0.35 },
  // Where a series is worth half a dozen readings the sum over lags ends too early, and the doubt comes out too low.
  { coefficient: 0.9, count: 100, effective: 5.8139373275, within: 0.3 },
])("series of $count samples of an AR(1) process of $coefficient together show what each is worth", (process) => {
  const { coefficient, count, effective, within } = process;
  const whole = autoregression(coefficient, 400 * count);
  const series = Array.from({ length: 400 }, (_, j) => whole.slice(j * count, (j + 1) * count));
  const time = count / effective;
  const exact = (time * (count - 1)) / (count - time);
  for (const { inflation } of sharedCorrelation(series)) expect(relativeError(inflation, exact)).toBeLessThan(within);
});

test("series of independent samples are worth them, and know it with many degrees of freedom", () => {
  const noise = fixedNoise(7);
  const series = Array.from({ length: 20 }, () => Float64Array.from({ length: 100 }, noise));
  for (const { inflation, degreesOfFreedom } of sharedCorrelation(series)) {
    expect(Math.abs(inflation - 1)).toBeLessThan(0.15);
    expect(degreesOfFreedom).toBeGreaterThan(60);
  }
});

test("missing samples close up, and a series that stands still says nothing of the others", () => {
  const [slow] = [autoregression(0.8, 300)];
  const still = new Float64Array(300).fill(2);
  const holed = Float64Array.from([...slow.slice(0, 100), Number.NaN, ...slow.slice(100)]);
  expect(sharedCorrelation([holed, still])[0]).toEqual(sharedCorrelation([slow])[0]);
  expect(sharedCorrelation([still])[0]!.inflation).toBe(1);
});

function autoregression(coefficient: number, count: number): Float64Array {
  const noise = fixedNoise(20261125);
  const series = new Float64Array(count);
  for (let i = 1; i < count; i++) series[i] = coefficient * series[i - 1]! + noise();
  return series;
}

/** Even noise from -0.5 to 0.5 by a 32-bit mixing generator. */
function fixedNoise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32 - 0.5;
  };
}

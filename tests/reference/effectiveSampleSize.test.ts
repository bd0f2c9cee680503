import { expect, test } from "vitest";
import { effectiveSampleSize } from "../../shared/numeric/autocorrelation.ts";
import { moments } from "../../shared/numeric/moments.ts";
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

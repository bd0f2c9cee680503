import { expect, test } from "vitest";
import { varianceRatioPValue } from "../../shared/numeric/varianceRatio.ts";
import { relative } from "../relative.ts";

const estimate = (variance: number, degreesOfFreedom: number) => ({ variance, degreesOfFreedom });

// scipy 1.17.1 `2 * min(stats.f.sf(F, a, b), stats.f.cdf(F, a, b))`.
test.each([
  { a: estimate(4, 1), b: estimate(1, 1), expected: 0.590334470601733 },
  { a: estimate(4, 2), b: estimate(1, 2), expected: 0.4 },
  { a: estimate(4, 1), b: estimate(1, 4), expected: 0.23223304703363112 },
  // NIST/SEMATECH e-Handbook, 1.3.5.9, strength of ceramic: s 65.54909 and 61.85425 of 240 each, F = 1.123037.
  { a: estimate(65.54909 ** 2, 239), b: estimate(61.85425 ** 2, 239), expected: 0.3703831598770808 },
])("the chance of $a against $b is that of scipy, either way round", ({ a, b, expected }) => {
  expect(varianceRatioPValue(a, b)).toSatisfy(relative(expected, 1e-9));
  expect(varianceRatioPValue(b, a)).toSatisfy(relative(expected, 1e-9));
});

test("NIST's limits for 240 against 240 lie at 5 % both ways", () => {
  // NIST/SEMATECH e-Handbook, 1.3.5.9: critical values 0.7756 and 1.2894 at a level of 0.05.
  for (const F of [0.7756, 1.2894])
    expect(varianceRatioPValue(estimate(F, 239), estimate(1, 239))).toSatisfy(relative(0.05, 2e-3));
});

test("no spread is like no spread, and unlike any", () => {
  expect(varianceRatioPValue(estimate(0, 1), estimate(0, 3))).toBe(1);
  expect(varianceRatioPValue(estimate(0, 1), estimate(1e-9, 3))).toBe(0);
  expect(varianceRatioPValue(estimate(1e-9, 1), estimate(0, 3))).toBe(0);
});

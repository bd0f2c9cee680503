import { expect, test } from "vitest";
import { boundedInterval } from "../../shared/numeric/boundedInterval.ts";

/**
 * Acceptance intervals built by brute force on a grid of 0.002 by the likelihood ratio and inverted on a grid of 0.001, numpy
 * 2.4.6 and scipy 1.17.1 (scipy.stats.norm); the grids leave 0.003. Table X of Feldman & Cousins (1998) rounds these to two
 * decimals, e.g. 0.00 to 1.10 for -1, 0.35 to 3.96 for 2 (from memory).
 */
test.each([
  [-2, 0, 0.617],
  [-1, 0, 1.101],
  [-0.5, 0, 1.491],
  [0, 0, 1.958],
  [1, 0, 2.958],
  [1.5, 0, 3.458],
  [2, 0.354, 3.958],
  [2.5, 0.761, 4.458],
  [3, 1.141, 4.958],
])("%s standard uncertainties above the bound: %s to %s", (estimate, low, high) => {
  const found = boundedInterval({ estimate, standardUncertainty: 1, least: 0 });
  expect(Math.abs(found[0] - low)).toBeLessThan(0.003);
  expect(Math.abs(found[1] - high)).toBeLessThan(0.003);
  // The same in other units and above another bound.
  const moved = boundedInterval({ estimate: 7 + 0.1 * estimate, standardUncertainty: 0.1, least: 7 });
  expect(moved[0]).toBeCloseTo(7 + 0.1 * found[0], 9);
  expect(moved[1]).toBeCloseTo(7 + 0.1 * found[1], 9);
});

test("far from the bound it is 1.96 standard uncertainties to either side, without a step on the way there", () => {
  const at = (estimate: number) => boundedInterval({ estimate, standardUncertainty: 1, least: 0 });
  expect(at(20)[0]).toBeCloseTo(20 - 1.959964, 6);
  expect(at(5.999)[0]).toBeCloseTo(5.999 - 1.959964, 3);
  expect(at(5.999)[1]).toBeCloseTo(5.999 + 1.959964, 6);
});

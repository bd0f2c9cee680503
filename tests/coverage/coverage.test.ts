import { expect, test } from "vitest";
import { coverageOf, drawnRun } from "./drawnRun.ts";

/** A smaller version of `npm run coverage-study`, of seeds that it does not use. */
const COVERAGE = coverageOf(Array.from({ length: 150 }, (_, i) => drawnRun(5001 + i)));

test.each(COVERAGE)(
  "95 % intervals of $name hold the truth in 90 to 99 % of 150 simulated stand runs",
  ({ covered }) => {
    // At a true coverage of 95 %, 150 runs fall outside these bounds in 2 of 100 such studies (binomial distribution).
    expect(covered).toBeGreaterThanOrEqual(0.9);
    expect(covered).toBeLessThanOrEqual(0.994);
  },
);

test.each(COVERAGE)("the standard uncertainty of $name is the size of its errors", ({ deviation, mean }) => {
  // Four standard errors of a standard deviation and of a mean of 150 numbers.
  expect(Math.abs(deviation - 1)).toBeLessThan(4 / Math.sqrt(300));
  expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(150));
});

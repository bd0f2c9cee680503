import { expect, test } from "vitest";
import { coverageOf, drawnRun } from "./drawnRun.ts";
import { coverageOfKind, STAND_KINDS, TRIED_NAMES } from "./standKinds.ts";

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

/** Of a kind 40 runs: at a true coverage of 95 % fewer than 33 hold the truth in 1 of 1000 such studies (binomial). */
const RUNS = 40;
const KINDS = STAND_KINDS.map((kind) => ({ name: kind.name, covered: coverageOfKind(kind, RUNS, 900_001) }));

test.each(KINDS)("95 % intervals hold the truth in 33 or more of 40 runs, each number: $name", ({ covered }) => {
  for (const [k, part] of covered.entries()) expect(part * RUNS, TRIED_NAMES[k]).toBeGreaterThan(32.5);
});

test.each(TRIED_NAMES.map((name, k) => ({ name, k })))("over all kinds $name is covered in 93 to 99 %", ({ k }) => {
  const covered = KINDS.reduce((sum, kind) => sum + kind.covered[k]!, 0) / KINDS.length;
  expect(covered).toBeGreaterThan(0.93);
  expect(covered).toBeLessThan(0.99);
});

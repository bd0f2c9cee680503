import { expect, test } from "vitest";
import { changePoints } from "../../shared/numeric/changePoint.ts";
import { NILE } from "./nile.data.ts";

const YEAR_OF_FIRST = 1871;

// Cobb, Biometrika 65 (1978) 243: the flow fell after 1898; Zeileis et al., Computational Statistics & Data Analysis 44
// (2003) 109, find the same by least squares.
test("the flow of the Nile changes once, after 1898", () => {
  const changes = changePoints(NILE, { minimumLength: 5 });
  expect(changes.map((index) => YEAR_OF_FIRST + index - 1)).toEqual([1898]);
});

// Optimal partition by dynamic programming over every pair of ends (numpy 2.4.6), no pruning.
test.each([
  { minimumLength: 1, penalty: 30_000, changes: [6, 7, 9, 17, 19, 28, 37, 40, 42, 43, 45, 47, 63, 68, 71, 83, 93, 94] },
  { minimumLength: 2, penalty: 55_100, changes: [7, 10, 19, 28, 37, 40, 45, 47, 83, 95] },
  { minimumLength: 3, penalty: 60_000, changes: [10, 19, 28, 37, 40, 45, 48, 83, 95] },
  { minimumLength: 5, penalty: 30_000, changes: [10, 19, 28, 35, 40, 45, 50, 63, 68, 75, 83, 95] },
  { minimumLength: 2, penalty: 2_000_000, changes: [] },
])("with a penalty of $penalty and segments of $minimumLength the partition is the best of all", (row) => {
  expect(changePoints(NILE, { minimumLength: row.minimumLength, penalty: row.penalty })).toEqual(row.changes);
});

import { expect, test } from "vitest";
import { changePenalty, changePoints } from "../../shared/numeric/changePoint.ts";

/** Noise of about 0.29 standard deviation by Park & Miller's generator, Communications of the ACM 31 (1988) 1192. */
function noise(count: number, seed = 20261125): Float64Array {
  let state = seed;
  return Float64Array.from({ length: count }, () => {
    state = (state * 16807) % (2 ** 31 - 1);
    return state / 2 ** 31;
  });
}

test.each([50, 1000, 30_000])("%d samples of noise alone hold no change", (count) => {
  expect(changePoints(noise(count), { minimumLength: 10 })).toEqual([]);
});

test.each([
  { count: 400, changes: [150, 290], minimumLength: 20 },
  { count: 5000, changes: [1234, 3777], minimumLength: 100 },
  { count: 60_000, changes: [12_345, 47_111], minimumLength: 50 },
])("in $count samples changes at $changes are found to the sample", ({ count, changes, minimumLength }) => {
  const values = noise(count).map((value, i) => value + 20 * changes.filter((change) => i >= change).length);
  expect(changePoints(values, { minimumLength })).toEqual(changes);
});

test("steps without any noise are found", () => {
  const values = [...new Array(30).fill(1), ...new Array(30).fill(2), ...new Array(40).fill(1.5)];
  expect(changePoints(values, { minimumLength: 5 })).toEqual([30, 60]);
});

test("a dip shorter than the shortest segment is not cut out on its own", () => {
  const values = noise(200).map((value, i) => (i >= 100 && i < 103 ? value + 5 : value));
  for (const [i, change] of changePoints(values, { minimumLength: 20 }).entries()) {
    expect(change).toBeGreaterThanOrEqual(20 * (i + 1));
  }
});

test("a series too short for two segments has no change", () => {
  expect(changePoints([1, 1, 1, 9, 9, 9], { minimumLength: 4 })).toEqual([]);
  expect(changePoints([1, 1, 1, 9, 9, 9], { minimumLength: 3 })).toEqual([3]);
});

test("a jump does not raise the penalty, and a doubled scale makes it four times as large", () => {
  const plain = noise(500);
  const jumped = plain.map((value, i) => (i < 250 ? value : value + 100));
  expect(changePenalty(jumped) / changePenalty(plain)).toBeCloseTo(1, 1);
  expect(changePenalty(plain.map((value) => 2 * value)) / changePenalty(plain)).toBeCloseTo(4, 10);
});

// 3 σ² ln n with σ² = 1/12 of even noise; the median step estimates σ as for normal noise, 5 % high in σ for even noise.
test("for independent noise the penalty is three variances times the logarithm of the count", () => {
  const values = noise(20_000);
  const expected = (3 / 12) * Math.log(values.length);
  expect(changePenalty(values) / expected).toBeGreaterThan(0.9);
  expect(changePenalty(values) / expected).toBeLessThan(1.2);
});

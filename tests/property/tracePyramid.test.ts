import * as fc from "fast-check";
import { expect, test } from "vitest";
import { extremesBetween, tracePyramid } from "../../shared/bench/tracePyramid.ts";

/** The rows one by one, which is what the pyramid must not differ from. */
function byRows(column: Float64Array, from: number, to: number) {
  const values = [...column.subarray(from, to)].filter((value) => !Number.isNaN(value));
  return values.reduce(
    ({ least, greatest }, value) => ({ least: Math.min(least, value), greatest: Math.max(greatest, value) }),
    { least: Infinity, greatest: -Infinity },
  );
}

const cell = fc.oneof(
  { weight: 9, arbitrary: fc.double({ noDefaultInfinity: true }) },
  { weight: 1, arbitrary: fc.constant(Number.NaN) },
);

test("any stretch of any column has the extremes of its rows, to the bit", () => {
  fc.assert(
    fc.property(
      fc.array(cell, { minLength: 1, maxLength: 200 }),
      fc.integer({ min: 1, max: 60 }),
      fc.nat(),
      fc.nat(),
      (seed, times, a, b) => {
        const column = Float64Array.from(
          { length: seed.length * times },
          (_, i) => seed[(i * 7) % seed.length]! + (i % 13),
        );
        const [from, to] = [a % (column.length + 1), b % (column.length + 1)].sort((x, y) => x - y) as [number, number];
        expect(extremesBetween(column, tracePyramid(column), from, to)).toEqual(byRows(column, from, to));
      },
    ),
  );
});

test("one wild reading in a million rows is seen from the whole log and from its own row alone", () => {
  const column = new Float64Array(1_000_000).fill(1);
  column[654_321] = 99;
  const pyramid = tracePyramid(column);
  expect(extremesBetween(column, pyramid, 0, column.length)).toEqual({ least: 1, greatest: 99 });
  expect(extremesBetween(column, pyramid, 654_321, 654_322)).toEqual({ least: 99, greatest: 99 });
  expect(extremesBetween(column, pyramid, 0, 654_321)).toEqual({ least: 1, greatest: 1 });
});

test("the pyramid takes less than a twentieth of its column", () => {
  const levels = tracePyramid(new Float64Array(100_000));
  const numbers = levels.reduce((sum, { low, high }) => sum + low.length + high.length, 0);
  expect(numbers).toBeLessThan(100_000 / 20);
});

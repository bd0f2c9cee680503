import { expect, test } from "vitest";
import { changePoints } from "../../shared/numeric/changePoint.ts";
import { recipeOf, reduce, tableOf } from "../unit/benchTable.ts";

// Rotation rate of five steps between rests, rev/s: level + 0.12 cos 1.7i + 0.1 sin 0.9i² for row i, 0 at rest.
const ROWS = 600;
const BORDERS = [0, 61, 187, 256, 395, 530, ROWS];
const LEVELS = [0, 14, 22, 31, 18, 0];
const LEVEL_OF = Array.from({ length: ROWS }, (_, i) => LEVELS[BORDERS.findLastIndex((border) => border <= i)]!);
const RATE = LEVEL_OF.map((level, i) =>
  level === 0 ? 0 : level + 0.12 * Math.cos(1.7 * i) + 0.1 * Math.sin(0.9 * i * i),
);

// numpy 2.4.6: least sum of squares plus penalty over every partition into segments of 3 or more, by dynamic programming
// over all pairs of ends without pruning; the same edges for all three penalties.
const EXHAUSTIVE = [61, 187, 256, 395, 530];

test.each([0.2, 1, 5])("change points of five steps are those of the exhaustive search (penalty %d)", (penalty) => {
  expect(changePoints(RATE, { minimumLength: 3, penalty })).toEqual(EXHAUSTIVE);
});

test("plateaus begin at the edges of the exhaustive search and end within two rows before the next", () => {
  const time = RATE.map((_, i) => i / 20);
  const thrust = RATE.map((n, i) => 0.2 * 998.6 * n * n * 0.076 ** 4 + 0.5 + 0.01 * Math.sin(2.1 * i));
  const { plateaus } = reduce({
    table: tableOf({ time, thrust, rate: RATE }),
    recipe: recipeOf([
      ["time", "s"],
      ["thrust", "N"],
      ["rotationRate", "rev/s"],
    ]),
  });
  // Line 2 of the file is row 0.
  expect(plateaus.map(({ firstLine }) => firstLine - 2)).toEqual(EXHAUSTIVE.slice(0, -1));
  plateaus.forEach(({ lastLine }, i) => {
    const shortOf = EXHAUSTIVE[i + 1]! - (lastLine - 2);
    expect(shortOf).toBeGreaterThan(0);
    expect(shortOf).toBeLessThanOrEqual(2);
  });
});

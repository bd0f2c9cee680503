import { describe, expect, test } from "vitest";
import { analysisOfVariance } from "../../shared/numeric/analysisOfVariance.ts";
import { relative } from "../relative.ts";

/** Values of groups in one row, with the number of each group. */
function stacked(groups: readonly (readonly number[])[]) {
  return { values: groups.flat(), levels: groups.flatMap((group, level) => group.map(() => level)) };
}

describe("one factor", () => {
  test("NIST SiRstv: resistivity of silicon by five instruments", () => {
    // NIST Statistical Reference Datasets, SiRstv, certified values; p by scipy 1.17.1 `stats.f.sf(F, 4, 20)`.
    const { values, levels } = stacked([
      [196.3052, 196.124, 196.189, 196.2569, 196.3403],
      [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
      [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
      [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
      [196.2119, 196.1051, 196.185, 196.0052, 196.209],
    ]);
    const { factors, residual, interaction } = analysisOfVariance(values, [levels]);
    expect(factors[0]).toMatchObject({ degreesOfFreedom: 4 });
    expect(factors[0]!.sumOfSquares).toSatisfy(relative(5.11462616e-2, 1e-10));
    expect(factors[0]!.F).toSatisfy(relative(1.18046237440255, 1e-10));
    expect(factors[0]!.pValue).toSatisfy(relative(0.34944749340219294, 1e-10));
    expect(residual.degreesOfFreedom).toBe(20);
    expect(residual.meanSquare).toSatisfy(relative(1.0831828e-2, 1e-10));
    expect(interaction).toBeNull();
  });

  test("NIST AtmWtAg: two instruments whose readings agree in the leading seven digits", () => {
    // NIST Statistical Reference Datasets, AtmWtAg, certified F; the sixth digit is what doubles hold of the data.
    const digits = [
      [
        1568, 1465, 1572, 1785, 1446, 1903, 1526, 1494, 1616, 1587, 1519, 1486, 1419, 1569, 1508, 1672, 1385, 1518,
        1662, 1424, 1360, 1333, 1610, 1477,
      ],
      [
        1079, 1344, 1513, 1197, 1604, 1385, 1642, 1365, 1151, 1082, 1517, 1448, 1198, 1482, 1334, 1609, 1101, 1512,
        1469, 1360, 1254, 1261, 1450, 1368,
      ],
    ];
    const { values, levels } = stacked(digits.map((group) => group.map((last) => 107.868 + last * 1e-7)));
    const { factors } = analysisOfVariance(values, [levels]);
    expect(factors[0]!.F).toSatisfy(relative(15.946733567793, 1e-6));
  });

  test("GUM H.5: the voltage of a standard on ten days, five readings a day", () => {
    // JCGM 100:2008, H.5.2.3: F = (57² 5)/85² from day means and standard deviations; recomputed 2.26151926997.
    const means = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41];
    const deviations = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86];
    // Five readings of this mean and standard deviation: the mean square inside the day is all that counts.
    const days = means.map((mean, day) => [-2, -1, 0, 1, 2].map((k) => mean + (k * deviations[day]!) / Math.sqrt(2.5)));
    const { values, levels } = stacked(days);
    const { factors, residual } = analysisOfVariance(values, [levels]);
    expect(factors[0]!.F).toSatisfy(relative(2.26151926997, 1e-10));
    expect(Math.sqrt(residual.meanSquare)).toSatisfy(relative(84.8869836901, 1e-10));
  });

  test("plant growth: three treatments of ten", () => {
    // R 4.2.2 `aov(weight ~ group, PlantGrowth)`; Dobson, An Introduction to Statistical Modelling (1983).
    const { values, levels } = stacked([
      [4.17, 5.58, 5.18, 6.11, 4.5, 4.61, 5.17, 4.53, 5.33, 5.14],
      [4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69],
      [6.31, 5.12, 5.54, 5.5, 5.37, 5.29, 4.92, 6.15, 5.8, 5.26],
    ]);
    const { factors } = analysisOfVariance(values, [levels]);
    expect(factors[0]!.F).toSatisfy(relative(4.8460878623801, 1e-12));
    expect(factors[0]!.pValue).toSatisfy(relative(0.0159099583256, 1e-10));
  });
});

/** Cells of a table: rows are levels of the first factor. */
function table(cells: readonly (readonly (readonly number[])[])[]) {
  const entries = cells.flatMap((row, a) => row.flatMap((cell, b) => cell.map((value) => ({ value, a, b }))));
  return {
    values: entries.map(({ value }) => value),
    factors: [entries.map(({ a }) => a), entries.map(({ b }) => b)],
  };
}

/** Breaks of yarn by wool (rows) and tension L, M, H; Tippett, Technological Applications of Statistics (1950). */
const BREAKS = [
  [
    [26, 30, 54, 25, 70, 52, 51, 26, 67],
    [18, 21, 29, 17, 12, 18, 35, 30, 36],
    [36, 21, 24, 18, 10, 43, 28, 15, 26],
  ],
  [
    [27, 14, 29, 19, 29, 31, 41, 20, 44],
    [42, 26, 19, 16, 39, 28, 21, 39, 29],
    [20, 21, 24, 17, 13, 15, 15, 16, 28],
  ],
];

describe("two factors, balanced", () => {
  test("yarn breaks by wool and tension", () => {
    // R 4.2.2 `aov(breaks ~ wool * tension, warpbreaks)`.
    const { values, factors } = table(BREAKS);
    const found = analysisOfVariance(values, factors);
    expect(found.factors[0]!.F).toSatisfy(relative(3.7652883611, 1e-9));
    expect(found.factors[0]!.pValue).toSatisfy(relative(5.821297596e-2, 1e-9));
    expect(found.factors[1]!.sumOfSquares).toSatisfy(relative(2034.2592592593, 1e-9));
    expect(found.factors[1]!.pValue).toSatisfy(relative(6.9262093671e-4, 1e-9));
    expect(found.interaction!.F).toSatisfy(relative(4.1890689669, 1e-9));
    expect(found.interaction!.pValue).toSatisfy(relative(2.1044190728e-2, 1e-9));
    expect(found.residual.degreesOfFreedom).toBe(48);
    expect(found.residual.meanSquare).toSatisfy(relative(119.6898148148, 1e-9));
  });

  test("tooth growth by source and dose", () => {
    // R 4.2.2 `aov(len ~ supp * factor(dose), ToothGrowth)`; Crampton, Journal of Nutrition 33 (1947) 491.
    const { values, factors } = table([
      [
        [4.2, 11.5, 7.3, 5.8, 6.4, 10, 11.2, 11.2, 5.2, 7],
        [16.5, 16.5, 15.2, 17.3, 22.5, 17.3, 13.6, 14.5, 18.8, 15.5],
        [23.6, 18.5, 33.9, 25.5, 26.4, 32.5, 26.7, 21.5, 23.3, 29.5],
      ],
      [
        [15.2, 21.5, 17.6, 9.7, 14.5, 10, 8.2, 9.4, 16.5, 9.7],
        [19.7, 23.3, 23.6, 26.4, 20, 25.2, 25.8, 21.2, 14.5, 27.3],
        [25.5, 26.4, 22.4, 24.5, 24.8, 30.9, 26.4, 27.3, 29.4, 23],
      ],
    ]);
    const found = analysisOfVariance(values, factors);
    expect(found.factors[0]!.sumOfSquares).toSatisfy(relative(205.35, 1e-10));
    expect(found.factors[0]!.F).toSatisfy(relative(15.5719794525, 1e-9));
    expect(found.factors[1]!.F).toSatisfy(relative(91.9999648929, 1e-9));
    expect(found.factors[1]!.pValue).toSatisfy(relative(4.046291196e-18, 1e-9));
    expect(found.interaction!.F).toSatisfy(relative(4.106991094, 1e-9));
    expect(found.interaction!.pValue).toSatisfy(relative(2.1860268965e-2, 1e-9));
    expect(found.residual).toMatchObject({ degreesOfFreedom: 54 });
  });
});

/**
 * Logarithms of the first 9, 4, 7 and 3, 9, 2 of the yarn breaks. Type II by comparing models with
 * numpy 2.4.6 `linalg.lstsq` (residual sums of 1+A, 1+B, 1+A+B and the cells), p by scipy 1.17.1 `stats.f.sf`;
 * standard errors from `inv(X.T @ X)` of 1+A+B times the residual mean square of the cells.
 */
describe("two factors, unbalanced, type II", () => {
  const kept = [
    [9, 4, 7],
    [3, 9, 2],
  ];
  const part = (withLast: boolean) =>
    table(
      BREAKS.map((row, a) =>
        row.map((cell, b) => cell.slice(0, withLast || a < 1 || b < 2 ? kept[a]![b]! : 0).map(Math.log)),
      ),
    );

  test("all cells filled", () => {
    const { values, factors } = part(true);
    const found = analysisOfVariance(values, factors);
    expect(found.factors[0]!.sumOfSquares).toSatisfy(relative(0.10663975040653373, 1e-10));
    expect(found.factors[0]!.pValue).toSatisfy(relative(0.41087081826674315, 1e-9));
    expect(found.factors[1]!.F).toSatisfy(relative(3.472436140634484, 1e-9));
    expect(found.factors[1]!.pValue).toSatisfy(relative(0.044961835611967094, 1e-9));
    expect(found.interaction).toMatchObject({ degreesOfFreedom: 2 });
    expect(found.interaction!.pValue).toSatisfy(relative(0.0545327184357653, 1e-9));
    expect(found.residual.degreesOfFreedom).toBe(28);
    expect(found.effects[0]![0]!.value).toSatisfy(relative(-0.12735580296680832, 1e-10));
    expect(found.effects[1]![1]!.value).toSatisfy(relative(-0.4413223035327932, 1e-10));
    expect(found.effects[1]![1]!.standardError).toSatisfy(relative(0.17253672398829142, 1e-9));
  });

  test("one cell empty", () => {
    const { values, factors } = part(false);
    const found = analysisOfVariance(values, factors);
    expect(found.factors[0]!.pValue).toSatisfy(relative(0.48903950434169585, 1e-9));
    expect(found.factors[1]!.pValue).toSatisfy(relative(0.06413332446332742, 1e-9));
    expect(found.interaction).toMatchObject({ degreesOfFreedom: 1 });
    expect(found.interaction!.pValue).toSatisfy(relative(0.018911954031910323, 1e-9));
    expect(found.residual.degreesOfFreedom).toBe(27);
  });
});

test("without repeats the interaction serves as residual", () => {
  // By hand: rows 1 2 3 and 2 3 7, grand mean 3; SS rows 6 (1), columns 13 (2), residual 3 (2).
  const { values, factors } = table([
    [[1], [2], [3]],
    [[2], [3], [7]],
  ]);
  const found = analysisOfVariance(values, factors);
  expect(found.interaction).toBeNull();
  expect(found.factors[0]!.sumOfSquares).toBeCloseTo(6, 12);
  expect(found.factors[1]!.sumOfSquares).toBeCloseTo(13, 12);
  expect(found.residual.sumOfSquares).toBeCloseTo(3, 12);
  expect(found.residual.degreesOfFreedom).toBe(2);
});

test.each([
  { why: "one level", values: [1, 2, 3], factors: [[0, 0, 0]] },
  { why: "as many levels as values", values: [1, 2], factors: [[0, 1]] },
  {
    why: "levels of two factors that never meet",
    values: [1, 2, 3, 4],
    factors: [
      [0, 0, 1, 1],
      [0, 0, 1, 1],
    ],
  },
  { why: "no spread at all inside the cells", values: [1, 1, 2, 2], factors: [[0, 0, 1, 1]] },
])("$why is refused", ({ values, factors }) => {
  expect(() => analysisOfVariance(values, factors)).toThrow(
    expect.objectContaining({ problem: expect.objectContaining({ code: "numeric.anova" }) }),
  );
});

import { describe, expect, test } from "vitest";
import { deviationsFromMean, effectiveSampleSize } from "../../shared/numeric/autocorrelation.ts";
import { changePenalty, changePoints } from "../../shared/numeric/changePoint.ts";
import { chiSquareUpperTail } from "../../shared/numeric/chiSquare.ts";
import { holm } from "../../shared/numeric/holm.ts";
import { lineThroughOrigin } from "../../shared/numeric/lineThroughOrigin.ts";
import { median, medianAbsoluteDeviation } from "../../shared/numeric/median.ts";
import { moments } from "../../shared/numeric/moments.ts";
import { straightLine } from "../../shared/numeric/straightLine.ts";
import { twoSidedPValue } from "../../shared/numeric/studentT.ts";
import { effectiveDegreesOfFreedom } from "../../shared/numeric/welchSatterthwaite.ts";
import { OutOfDomain } from "../../shared/quantity/problem.ts";

const NONE: number[] = [];

test.each([
  { what: "moments of nothing", action: () => moments(NONE) },
  { what: "moments of missing cells alone", action: () => moments([Number.NaN, Number.NaN]) },
  { what: "moments of an infinite reading", action: () => moments([1, Number.POSITIVE_INFINITY]) },
  { what: "moments of an empty stretch", action: () => moments([1, 2, 3], 2, 2) },
  { what: "deviations from the mean of nothing", action: () => deviationsFromMean(NONE) },
  { what: "effective sample size of nothing", action: () => effectiveSampleSize(NONE) },
  { what: "a median of nothing", action: () => median(NONE) },
  { what: "a deviation from the median of nothing", action: () => medianAbsoluteDeviation([Number.NaN]) },
  { what: "a line through no points", action: () => lineThroughOrigin({ x: NONE, y: NONE }) },
  { what: "a line through points at x = 0", action: () => lineThroughOrigin({ x: [0, 0], y: [1, 2] }) },
  { what: "x and y of different length", action: () => lineThroughOrigin({ x: [1, 2], y: [1] }) },
  { what: "a missing y", action: () => lineThroughOrigin({ x: [1, 2], y: [1, Number.NaN] }) },
  { what: "a point without any doubt", action: () => lineThroughOrigin({ x: [1], y: [1], uncertaintyY: [0] }) },
  { what: "a negative doubt", action: () => lineThroughOrigin({ x: [1], y: [1], uncertaintyY: [-1] }) },
  { what: "a straight line through two bare points", action: () => straightLine({ x: [1, 2], y: [1, 2] }) },
  { what: "a straight line at one x", action: () => straightLine({ x: [1, 1, 1], y: [1, 2, 3] }) },
  { what: "a shortest segment of half a sample", action: () => changePoints([1, 2, 3], { minimumLength: 0.5 }) },
  { what: "a negative penalty", action: () => changePoints([1, 2, 3], { minimumLength: 1, penalty: -1 }) },
  { what: "a p-value above 1", action: () => holm([0.1, 1.1]) },
  { what: "a p-value that is missing", action: () => holm([0.1, Number.NaN]) },
  { what: "a t that is not a number", action: () => twoSidedPValue(Number.NaN, 3) },
  { what: "no degrees of freedom", action: () => twoSidedPValue(1, 0) },
  { what: "a negative chi-square", action: () => chiSquareUpperTail(-1, 2) },
  {
    what: "a part with no degrees of freedom",
    action: () => effectiveDegreesOfFreedom([{ standardUncertainty: 1, degreesOfFreedom: 0 }]),
  },
])("$what is refused", ({ action }) => {
  expect(action).toThrow(OutOfDomain);
});

describe("missing cells", () => {
  const whole = [1.2, 0.7, 3.1, 2.2, 2.9, 0.4];
  const holed = [1.2, Number.NaN, 0.7, 3.1, Number.NaN, 2.2, 2.9, 0.4];

  test("are passed over by every summary", () => {
    expect(moments(holed)).toEqual(moments(whole));
    expect(median(holed)).toBe(median(whole));
    expect(medianAbsoluteDeviation(holed)).toBe(medianAbsoluteDeviation(whole));
    expect(deviationsFromMean(holed)).toEqual(deviationsFromMean(whole));
    expect(effectiveSampleSize(holed)).toEqual(effectiveSampleSize(whole));
    expect(changePenalty(holed)).toBe(changePenalty(whole));
  });

  test("do not shift the place of a change", () => {
    const step = [0, 0.1, Number.NaN, 0, 0.1, 5, 5.1, 5, Number.NaN, 5.1];
    expect(changePoints(step, { minimumLength: 2 })).toEqual([5]);
  });
});

describe("a stretch of a longer column", () => {
  const column = Float64Array.from([100, 1, 2, 4, 8, 100]);

  test("is summed up from its first row to the row before its end", () => {
    // By hand: mean 15/4; squares (2.75² + 1.75² + 0.25² + 4.25²) / 3.
    expect(moments(column, 1, 5).mean).toBeCloseTo(3.75, 14);
    expect(moments(column, 1, 5).variance).toBeCloseTo(28.75 / 3, 13);
    expect(effectiveSampleSize(column, 1, 5)).toEqual(effectiveSampleSize([1, 2, 4, 8]));
  });
});

test("a single number shows no spread and is worth one sample", () => {
  expect(moments([7])).toEqual({ count: 1, mean: 7, variance: 0, standardDeviation: 0 });
  expect(effectiveSampleSize([7])).toEqual({ effective: 1, inflation: 1 });
});

test("readings that are all equal count in full", () => {
  expect(effectiveSampleSize(new Float64Array(50).fill(3))).toEqual({
    effective: 50,
    inflation: 1,
  });
});

test("a drifting plateau is worth a handful of samples, however many were taken", () => {
  for (const count of [100, 10_000, 100_000]) {
    const { effective } = effectiveSampleSize(Float64Array.from({ length: count }, (_, i) => i / count));
    expect(effective).toBeGreaterThan(1);
    expect(effective).toBeLessThan(4);
  }
});

test("a single point gives a slope and its promised error, and no scatter", () => {
  const fit = lineThroughOrigin({ x: [2], y: [1], uncertaintyY: [0.1] });
  expect(fit).toMatchObject({
    slope: 0.5,
    standardErrorFromScatter: null,
    residualStandardDeviation: null,
    degreesOfFreedom: 0,
    residuals: [0],
    converged: true,
  });
  expect(fit.standardErrorFromUncertainty).toBeCloseTo(0.05, 14);
});

test("doubt in x alone is enough", () => {
  const fit = lineThroughOrigin({ x: [1, 2, 3], y: [2.02, 3.98, 6.01], uncertaintyX: [0.01, 0.01, 0.01] });
  // Equal doubt in x alone is least squares of x on y: slope Σy²/Σxy, by hand.
  const expected = (2.02 ** 2 + 3.98 ** 2 + 6.01 ** 2) / (2.02 + 2 * 3.98 + 3 * 6.01);
  expect(fit.slope).toBeCloseTo(expected, 10);
  expect(fit.converged).toBe(true);
});

test("points on the line leave no residuals", () => {
  const fit = lineThroughOrigin({ x: [1, 2, 4], y: [0.5, 1, 2] });
  expect(fit).toMatchObject({ slope: 0.5, chiSquared: 0, residuals: [0, 0, 0], standardErrorFromScatter: 0 });
});

test("no doubt at all has infinite degrees of freedom, and parts known well do not lower them", () => {
  expect(effectiveDegreesOfFreedom([])).toBe(Number.POSITIVE_INFINITY);
  const sure = { standardUncertainty: 2, degreesOfFreedom: Number.POSITIVE_INFINITY };
  expect(effectiveDegreesOfFreedom([sure])).toBe(Number.POSITIVE_INFINITY);
  // By hand: (1 + 4)² / (1/9) = 225.
  expect(effectiveDegreesOfFreedom([sure, { standardUncertainty: 1, degreesOfFreedom: 9 }])).toBeCloseTo(225, 10);
});

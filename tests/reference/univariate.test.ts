import { expect, test } from "vitest";
import { autocorrelation, deviationsFromMean } from "../../shared/numeric/autocorrelation.ts";
import { moments } from "../../shared/numeric/moments.ts";
import { relativeError } from "../relative.ts";
import { LEW, LOTTERY, MAVRO, MICHELSO, numAcc } from "./nist.data.ts";

// NIST StRD, Univariate Summary Statistics, certified values. The tolerances of SD are what double precision can give on
// these data: NumAcc3 and NumAcc4 hold ripples of 0.1 on levels of 1e6 and 1e7 that are not exact in binary.
test.each([
  { name: "Lew", data: LEW, mean: -177.435, sd: 277.332168044316, r1: -0.307304800605679, tolerance: 1e-12 },
  {
    name: "Lottery",
    data: LOTTERY,
    mean: 518.95871559633,
    sd: 291.699727470969,
    r1: -0.120948622967393,
    tolerance: 1e-12,
  },
  { name: "Mavro", data: MAVRO, mean: 2.001856, sd: 0.000429123454003053, r1: 0.937989183438248, tolerance: 1e-11 },
  { name: "Michelso", data: MICHELSO, mean: 299.8524, sd: 0.0790105478190518, r1: 0.535199668621283, tolerance: 1e-11 },
  { name: "NumAcc1", data: [10000001, 10000003, 10000002], mean: 10000002, sd: 1, r1: -0.5, tolerance: 1e-12 },
  { name: "NumAcc2", data: numAcc(1), mean: 1.2, sd: 0.1, r1: -0.999, tolerance: 1e-12 },
  { name: "NumAcc3", data: numAcc(1000000), mean: 1000000.2, sd: 0.1, r1: -0.999, tolerance: 1e-8 },
  { name: "NumAcc4", data: numAcc(10000000), mean: 10000000.2, sd: 0.1, r1: -0.999, tolerance: 1e-7 },
])("NIST $name: mean, standard deviation and lag-1 autocorrelation are the certified ones", (set) => {
  const { mean, standardDeviation } = moments(set.data);
  expect(relativeError(mean, set.mean)).toBeLessThan(1e-14);
  expect(relativeError(standardDeviation, set.sd)).toBeLessThan(set.tolerance);
  expect(relativeError(autocorrelation(deviationsFromMean(set.data), 1), set.r1)).toBeLessThan(set.tolerance);
});

// R 4.2.2, `acf(lh)`, printed to ten digits; data set `lh` of R (Diggle, Time Series, 1990).
test("the autocorrelation of the hormone series is that of R", () => {
  const lh = [
    2.4, 2.4, 2.4, 2.2, 2.1, 1.5, 2.3, 2.3, 2.5, 2.0, 1.9, 1.7, 2.2, 1.8, 3.2, 3.2, 2.7, 2.2, 2.2, 1.9, 1.9, 1.8, 2.7,
    3.0, 2.3, 2.0, 2.0, 2.9, 2.9, 2.7, 2.7, 2.3, 2.6, 2.4, 1.8, 1.7, 1.5, 1.4, 2.1, 3.3, 3.5, 3.5, 3.1, 2.6, 2.1, 3.4,
    3.0, 2.9,
  ];
  const expected = [1, 0.5755244755, 0.1818181818, -0.1447552448, -0.1748251748, -0.1496503497];
  const deviations = deviationsFromMean(lh);
  expected.forEach((r, lag) => {
    expect(autocorrelation(deviations, lag)).toBeCloseTo(r, 9);
  });
});

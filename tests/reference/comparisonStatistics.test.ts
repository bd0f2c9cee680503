import { expect, test } from "vitest";
import { fiellerInterval } from "../../shared/numeric/fieller.ts";
import { holm } from "../../shared/numeric/holm.ts";
import { median, medianAbsoluteDeviation } from "../../shared/numeric/median.ts";
import { moments } from "../../shared/numeric/moments.ts";
import { welch } from "../../shared/numeric/welch.ts";
import { effectiveDegreesOfFreedom } from "../../shared/numeric/welchSatterthwaite.ts";
import { coverageFactor } from "../../shared/quantity/uncertain.ts";
import { relativeError } from "../relative.ts";

// R 4.2.2: `t.test(extra ~ group, data = sleep)`; Student, Biometrika 6 (1908) 1.
test("Welch's test on Student's sleep data is that of R", () => {
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
  const result = welch(first, second);
  expect(relativeError(result.t, -1.8608134674868531)).toBeLessThan(1e-10);
  expect(relativeError(result.degreesOfFreedom, 17.7764735161785)).toBeLessThan(1e-10);
  expect(relativeError(result.pValue, 0.0793941401873582)).toBeLessThan(1e-10);
  expect(relativeError(result.difference, 0.75 - 2.33)).toBeLessThan(1e-10);
  const half = coverageFactor(result.degreesOfFreedom) * result.standardError;
  expect(relativeError(result.difference - half, -3.3654832307117104)).toBeLessThan(1e-8);
  expect(relativeError(result.difference + half, 0.2054832307117102)).toBeLessThan(1e-8);
});

const A = [0.2412, 0.2387, 0.243, 0.2405];
const B = [0.2295, 0.2321, 0.2288, 0.231, 0.2301];

// R 4.2.2: `t.test(log(A), log(B))`.
test("Welch's test on logarithms gives the ratio of two groups of coefficients with R's interval", () => {
  const result = welch(A.map(Math.log), B.map(Math.log));
  expect(relativeError(result.t, 10.038234880584)).toBeLessThan(1e-10);
  expect(relativeError(result.degreesOfFreedom, 5.518263931982)).toBeLessThan(1e-10);
  expect(relativeError(result.pValue, 9.448379053136e-5)).toBeLessThan(1e-9);
  const half = coverageFactor(result.degreesOfFreedom) * result.standardError;
  expect(Math.exp(result.difference)).toBeCloseTo(1.045801545724, 11);
  expect(Math.exp(result.difference - half)).toBeCloseTo(1.034203929674, 9);
  expect(Math.exp(result.difference + half)).toBeCloseTo(1.057529218037, 9);
});

// R 4.2.2: `p.adjust(p, "holm")`.
test.each([
  { p: [0.01, 0.02, 0.03, 0.04, 0.05], adjusted: [0.05, 0.08, 0.09, 0.09, 0.09] },
  {
    p: [0.0004, 0.0201, 0.0118, 0.324, 0.0095, 0.0019],
    adjusted: [0.0024, 0.0402, 0.038, 0.324, 0.038, 0.0095],
  },
  { p: [0.0021, 0.6, 0.013, 0.025], adjusted: [0.0084, 0.6, 0.039, 0.05] },
])("Holm's correction of $p is that of R, in the order given", ({ p, adjusted }) => {
  holm(p).forEach((value, i) => {
    expect(value).toBeCloseTo(adjusted[i]!, 12);
  });
});

// Fieller, J. Royal Statistical Society B 16 (1954) 175, evaluated with R 4.2.2 on the groups above.
test.each([
  {
    name: "pooled variance, 7 degrees of freedom",
    variances: [2.307142857143e-6 / 4, 2.307142857143e-6 / 5],
    dof: 7,
    interval: [1.035182721157, 1.056538657831],
  },
  {
    name: "own variances, Satterthwaite's degrees of freedom",
    variances: [3.163333333333e-6 / 4, 1.665e-6 / 5],
    dof: 5.5212383465,
    interval: [1.034187289738, 1.057514369106],
  },
])("Fieller's interval for a ratio of means: $name", ({ variances, dof, interval }) => {
  const found = fiellerInterval({
    numerator: moments(A).mean,
    denominator: moments(B).mean,
    varianceNumerator: variances[0]!,
    varianceDenominator: variances[1]!,
    coverageFactor: coverageFactor(dof),
  });
  expect(found![0]).toBeCloseTo(interval[0]!, 9);
  expect(found![1]).toBeCloseTo(interval[1]!, 9);
});

test("a denominator that can not be told from zero has no Fieller interval", () => {
  // g = 2.2² * 0.09 / 0.5² = 1.7424, by hand.
  const ratio = { numerator: 1, denominator: 0.5, varianceNumerator: 0.01, varianceDenominator: 0.09 };
  expect(fiellerInterval({ ...ratio, coverageFactor: 2.2 })).toBeNull();
  expect(fiellerInterval({ ...ratio, coverageFactor: 1.6 })).not.toBeNull();
});

// JCGM 100:2008 (GUM), H.1.6: u_c = 32 nm, nu_eff = 16 after truncation; unrounded 16.76455398.
test("the end gauge of the GUM has 16.76 effective degrees of freedom", () => {
  const parts = [
    { standardUncertainty: 25, degreesOfFreedom: 18 },
    { standardUncertainty: 9.7, degreesOfFreedom: 25.6 },
    { standardUncertainty: 2.9, degreesOfFreedom: 50 },
    { standardUncertainty: 16.6, degreesOfFreedom: 2 },
  ];
  expect(relativeError(effectiveDegreesOfFreedom(parts), 16.76455398)).toBeLessThan(1e-9);
});

// JCGM 100:2008 (GUM), G.4.1: nu_eff = 19.0; unrounded 18.9987423143. Repeats of 10, 5 and 15 readings.
test("the product of three quantities of the GUM has 19.0 effective degrees of freedom", () => {
  const parts = [
    { standardUncertainty: 0.25, degreesOfFreedom: 9 },
    { standardUncertainty: 0.57, degreesOfFreedom: 4 },
    { standardUncertainty: 0.82, degreesOfFreedom: 14 },
  ];
  const found = effectiveDegreesOfFreedom(parts);
  expect(found).toBeCloseTo(19.0, 1);
  expect(relativeError(found, 18.9987423143)).toBeLessThan(1e-9);
});

// R 4.2.2: `median` and `mad`.
test("median and median absolute deviation are those of R", () => {
  const y = [2.1, 3.9, 6.2, 7.8, 10.1, 12.2, 13.8, 30.0, 18.1];
  const z = y.map((value, i) => value - 2 * (i + 1));
  expect(median(z)).toBeCloseTo(0.1, 12);
  expect(medianAbsoluteDeviation(z)).toBeCloseTo(0.14826022185, 10);
});

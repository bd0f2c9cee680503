import { expect, test } from "vitest";
import { compareAll, compareVariants } from "../../shared/compare/compareVariants.ts";
import type { SpreadChoice } from "../../shared/model/comparison.ts";
import { relative } from "../relative.ts";
import { runs } from "../unit/compareRuns.ts";

/** Invented thrust coefficients of four and five mountings. */
const A = [0.2412, 0.2387, 0.243, 0.2405];
const B = [0.2295, 0.2321, 0.2288, 0.231, 0.2301];

const ratioOf = (baseline: readonly number[], variant: readonly number[], spreads?: SpreadChoice) =>
  compareVariants({
    ...{ baseline: runs("baseline", baseline), variant: runs("variant", variant) },
    ...(spreads && { spreads }),
  }).thrustCoefficientRatio;

/** scipy 1.17.1 `stats.ttest_ind(log(A), log(B), equal_var=...)` and its `confidence_interval(.95)`, exponentiated. */
test.each([
  {
    ...{ spreads: "pooled" as const, test: "Student's", t: 10.390047673958291, degreesOfFreedom: 7 },
    ...{ pValue: 1.6615360435036702e-5, interval: [1.0351967629972034, 1.0565149661715403] },
  },
  // The same from R 4.2.2 `t.test(log(A), log(B))`.
  {
    ...{ spreads: "separate" as const, test: "Welch's", t: 10.03823488058412, degreesOfFreedom: 5.518263931981765 },
    ...{ pValue: 9.448379053136638e-5, interval: [1.034203929674085, 1.0575292180368556] },
  },
])("replicated runs, spreads $spreads: $test test on the logarithms", ({ spreads, t, interval, ...expected }) => {
  const ratio = ratioOf(B, A, spreads);
  expect(ratio.value).toSatisfy(relative(1.0458015457240815, 1e-12));
  expect(ratio.interval95[0]).toSatisfy(relative(interval[0]!, 1e-8));
  expect(ratio.interval95[1]).toSatisfy(relative(interval[1]!, 1e-8));
  expect(ratio.degreesOfFreedom).toSatisfy(relative(expected.degreesOfFreedom, 1e-10));
  expect(ratio.pValue).toSatisfy(relative(expected.pValue, 1e-8));
  expect(Math.log(ratio.value) / (ratio.standardUncertainty / ratio.value)).toSatisfy(relative(t, 1e-10));
  expect(ratio.basis).toBe("replicates");
});

/** Exponentiated, so that their logarithms are the numbers of the data set and their ratio is the difference of its means. */
test.each([
  // R 4.2.2 `t.test(extra ~ group, data = sleep)`, and with `var.equal = TRUE`; scipy 1.17.1 `ttest_ind` gives the same.
  {
    ...{ spreads: "separate" as const, degreesOfFreedom: 17.7764735161785, pValue: 0.0793941401873582 },
    interval: [-3.3654832307117104, 0.2054832307117102],
  },
  {
    ...{ spreads: "pooled" as const, degreesOfFreedom: 18, pValue: 0.07918671421593822 },
    interval: [-3.3638740322875984, 0.20387403228759915],
  },
])("Student's sleep data, Biometrika 6 (1908) 1, as logarithms of coefficients, spreads $spreads", (expected) => {
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0].map(Math.exp);
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4].map(Math.exp);
  const ratio = ratioOf(second, first, expected.spreads);
  const standardError = ratio.standardUncertainty / ratio.value;
  expect(Math.log(ratio.value) / standardError).toSatisfy(relative(-1.8608134674868531, 1e-10));
  expect(ratio.degreesOfFreedom).toSatisfy(relative(expected.degreesOfFreedom, 1e-10));
  expect(ratio.pValue).toSatisfy(relative(expected.pValue, 1e-8));
  expect(Math.log(ratio.interval95[0])).toSatisfy(relative(expected.interval[0]!, 1e-8));
  expect(Math.log(ratio.interval95[1])).toSatisfy(relative(expected.interval[1]!, 1e-8));
  // scipy 1.17.1 `2 * stats.f.cdf(F, 9, 9)`, F = 0.7983426179983923 from numpy 2.4.6 `var(ddof=1)`.
  expect(ratio.spreads!.pValue).toSatisfy(relative(0.7427199317260453, 1e-8));
});

/** NIST/SEMATECH e-Handbook, 1.3.5.3, AUTO83B: 249 and 79 cars; t with equal and with unequal variances as printed there. */
test.each([
  { spreads: "pooled" as const, t: -12.62059, degreesOfFreedom: 326 },
  { spreads: "separate" as const, t: -12.94627, degreesOfFreedom: 136.875 },
])("the two-sample example of NIST's handbook, spreads $spreads", ({ spreads, t, degreesOfFreedom }) => {
  // Groups of this mean and standard deviation: nothing else of the readings goes into the test.
  const group = (oddCount: number, mean: number, deviation: number) =>
    Array.from({ length: oddCount }, (_, i) => Math.exp(mean + (i === 0 ? 0 : deviation * (-1) ** i)));
  const ratio = ratioOf(group(79, 30.48101, 6.10771), group(249, 20.14458, 6.4147), spreads);
  expect(Math.log(ratio.value) / (ratio.standardUncertainty / ratio.value)).toSatisfy(relative(t, 1e-6));
  expect(ratio.degreesOfFreedom).toSatisfy(relative(degreesOfFreedom, 1e-5));
});

test("two spreads that differ beyond chance in one of ten cases each keep their own, and the sentence says so", () => {
  // By hand: logarithms ± 0.001 and ± 0.05 about their means, F = 2500 with 1 and 1 degrees of freedom; P(F_1,1 > f) =
  // 1 - (2/π) atan √f, so p = 2 (1 - (2/π) atan 50) = 0.02546.
  const found = compareVariants({
    baseline: runs("a", [0.2 * Math.exp(0.001), 0.2 * Math.exp(-0.001)]),
    variant: runs("b", [0.3 * Math.exp(0.05), 0.3 * Math.exp(-0.05)]),
  });
  const { spreads, degreesOfFreedom } = found.thrustCoefficientRatio;
  expect(spreads).toMatchObject({ used: "separate" });
  expect(spreads!.pValue).toSatisfy(relative(2 * (1 - (2 / Math.PI) * Math.atan(50)), 1e-9));
  expect(degreesOfFreedom).toBeLessThan(1.01);
  expect(found.sentence).toContain("two mountings each, each variant with a spread of its own");
});

/**
 * Fieller (1954). Separate: own variances and Satterthwaite degrees of freedom of the ratio, 5.5212383465, R 4.2.2. Pooled:
 * roots of (m_A - r m_B)² = t² (m_A² v/4 + r² m_B² v/5), v = (3 s_A²/m_A² + 4 s_B²/m_B²)/7, t with 7 degrees of freedom,
 * by scipy 1.17.1 `optimize.brentq` and `stats.t.ppf`.
 */
test.each([
  { spreads: "separate" as const, interval: [1.034187289738, 1.057514369106] },
  { spreads: "pooled" as const, interval: [1.0351955954378966, 1.0565206599309787] },
])("the cross-check is Fieller's interval, spreads $spreads", ({ spreads, interval }) => {
  const { fieller95 } = ratioOf(B, A, spreads);
  expect(fieller95![0]).toSatisfy(relative(interval[0]!, 1e-8));
  expect(fieller95![1]).toSatisfy(relative(interval[1]!, 1e-8));
});

test("p-values of several variants are adjusted as by Holm", () => {
  // Holm, Scand. J. Statistics 6 (1979) 65, step-down by hand: sorted p times 3, 2, 1, never falling.
  const groups = [
    runs("base", B),
    runs("far", A),
    runs("near", [0.2318, 0.2331, 0.2298, 0.232]),
    runs("same", [0.2293, 0.2325, 0.2284, 0.2313]),
  ];
  const found = compareAll({ groups, baseline: "base" }).map((c) => c.thrustCoefficientRatio);
  const [far, near, same] = found.map((ratio) => ratio.pValue) as [number, number, number];
  expect(far).toBeLessThan(near);
  expect(near).toBeLessThan(same);
  const byHand = [3 * far, Math.max(3 * far, 2 * near), Math.max(3 * far, 2 * near, same)].map((p) => Math.min(1, p));
  found.forEach((ratio, i) => {
    expect(ratio.adjustedPValue).toSatisfy(relative(byHand[i]!, 1e-14));
  });
});

/**
 * One mounting against one, with doubt inside the runs only: ln(0.30/0.20) with relative standard uncertainties 0.01
 * (8 degrees of freedom) and 0.02 (5): u² = 0.0005, ν = 0.0005²/(0.01⁴/8 + 0.02⁴/5) = 7.51880 by hand (JCGM 100:2008,
 * G.2b), t(.975) = 2.331947529990873 (scipy 1.17.1 `stats.t.ppf(.975, nu)`).
 */
test("single runs are compared by the doubt inside them, combined by Welch-Satterthwaite", () => {
  const { thrustCoefficientRatio: ratio } = compareVariants({
    baseline: runs("one", [0.2], { independent: 0.02, degreesOfFreedom: 5 }),
    variant: runs("other", [0.3], { independent: 0.01, degreesOfFreedom: 8 }),
  });
  const degreesOfFreedom = 0.0005 ** 2 / (0.01 ** 4 / 8 + 0.02 ** 4 / 5);
  expect(ratio.degreesOfFreedom).toSatisfy(relative(degreesOfFreedom, 1e-10));
  expect(ratio.interval95[1]).toSatisfy(relative(1.5 * Math.exp(2.331947529990873 * Math.sqrt(0.0005)), 1e-8));
  expect(ratio.basis).toBe("withinRun");
});

/**
 * T ~ K_T n² and P ~ C_P n³ at one diameter and density, so at equal P thrust goes as K_T C_P^(−2/3); momentum theory
 * says the same as T ~ FM^(2/3). K_T 0.30 over 0.25, C_P 0.22 over 0.20: 1.2/1.1^(2/3) = 1.126109..., FM ratio
 * 1.2^1.5/1.1 = 1.195018... by hand.
 */
test("thrust at equal shaft power and static merit follow from both coefficients", () => {
  const found = compareVariants({
    baseline: runs("printed", [0.25], { powerCoefficient: 0.2, independent: 0.01 }),
    variant: runs("sanded", [0.3], { powerCoefficient: 0.22, independent: 0.01 }),
  });
  expect(found.equalShaftPowerRatio!.value).toSatisfy(relative(1.2 / 1.1 ** (2 / 3), 1e-12));
  expect(found.staticMeritRatio!.value).toSatisfy(relative(1.2 ** 1.5 / 1.1, 1e-12));
  expect(found.staticMeritRatio!.pValue).toSatisfy(relative(found.equalShaftPowerRatio!.pValue, 1e-9));
});

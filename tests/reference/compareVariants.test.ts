import { expect, test } from "vitest";
import { compareAll, compareVariants } from "../../shared/compare/compareVariants.ts";
import { relative } from "../relative.ts";
import { runs } from "../unit/compareRuns.ts";

/** Invented thrust coefficients of four and five mountings. */
const A = [0.2412, 0.2387, 0.243, 0.2405];
const B = [0.2295, 0.2321, 0.2288, 0.231, 0.2301];

test("replicated runs give the ratio, interval and p-value of Welch's test on the logarithms", () => {
  // R 4.2.2 `t.test(log(A), log(B))`, exponentiated.
  const { thrustCoefficientRatio: ratio } = compareVariants({ baseline: runs("B", B), variant: runs("A", A) });
  expect(ratio.value).toSatisfy(relative(1.045801545724, 1e-10));
  expect(ratio.interval95[0]).toSatisfy(relative(1.034203929674, 1e-8));
  expect(ratio.interval95[1]).toSatisfy(relative(1.057529218037, 1e-8));
  expect(ratio.degreesOfFreedom).toSatisfy(relative(5.518263931982, 1e-10));
  expect(ratio.pValue).toSatisfy(relative(9.448379053136e-5, 1e-8));
  expect(Math.log(ratio.value) / (ratio.standardUncertainty / ratio.value)).toSatisfy(relative(10.038234880584, 1e-10));
  expect(ratio.basis).toBe("replicates");
});

/** Exponentiated, so that their logarithms are the numbers of the data set and their ratio is the difference of its means. */
test("Student's sleep data, as logarithms of coefficients, give the t, degrees of freedom and interval of R", () => {
  // R 4.2.2: `t.test(extra ~ group, data = sleep)`; Student, Biometrika 6 (1908) 1.
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0].map(Math.exp);
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4].map(Math.exp);
  const { thrustCoefficientRatio: ratio } = compareVariants({
    baseline: runs("second", second),
    variant: runs("first", first),
  });
  const standardError = ratio.standardUncertainty / ratio.value;
  expect(Math.log(ratio.value) / standardError).toSatisfy(relative(-1.8608134674868531, 1e-10));
  expect(ratio.degreesOfFreedom).toSatisfy(relative(17.7764735161785, 1e-10));
  expect(ratio.pValue).toSatisfy(relative(0.0793941401873582, 1e-8));
  expect(Math.log(ratio.interval95[0])).toSatisfy(relative(-3.3654832307117104, 1e-8));
  expect(Math.log(ratio.interval95[1])).toSatisfy(relative(0.2054832307117102, 1e-8));
});

test("the cross-check is Fieller's interval with separate variances", () => {
  // Fieller (1954) with own variances and Satterthwaite degrees of freedom of the ratio, 5.5212383465; R 4.2.2.
  const { fieller95 } = compareVariants({ baseline: runs("B", B), variant: runs("A", A) }).thrustCoefficientRatio;
  expect(fieller95![0]).toSatisfy(relative(1.034187289738, 1e-8));
  expect(fieller95![1]).toSatisfy(relative(1.057514369106, 1e-8));
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

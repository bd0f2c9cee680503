import { describe, expect, test } from "vitest";
import { fUpperTail } from "../../shared/numeric/fDistribution.ts";
import { incompleteBeta } from "../../shared/numeric/incompleteBeta.ts";
import { noncentralT } from "../../shared/numeric/noncentralT.ts";
import { smallestDifference, tTestPower, tTestSize } from "../../shared/numeric/tTestPower.ts";
import { relative } from "../relative.ts";

test.each([
  { x: 0.3, a: 2, b: 3.5, expected: 0.411702502342565 },
  { x: 0.9, a: 10, b: 0.5, expected: 0.15164090963471 },
])("the incomplete beta function at $x is that of R 4.2.2 `pbeta`", ({ x, a, b, expected }) => {
  expect(incompleteBeta(x, a, b)).toSatisfy(relative(expected, 1e-12));
});

// R 4.2.2 `qf`.
test.each([
  { dof: [1, 1], at95: 161.447638797588, at99: 4052.180695476822 },
  { dof: [1, 4], at95: 7.708647422177, at99: 21.197689584391 },
  { dof: [2, 6], at95: 5.143252849785, at99: 10.924766500838 },
  { dof: [3, 12], at95: 3.490294819498, at99: 5.952544681546 },
  { dof: [4, 20], at95: 2.866081402016, at99: 4.430690161438 },
  { dof: [20, 60], at95: 1.747984133123, at99: 2.19780590629 },
] as const)("5 and 1 of 100 ratios with $dof degrees of freedom lie above R's quantiles", ({ dof, at95, at99 }) => {
  expect(fUpperTail(at95, dof)).toSatisfy(relative(0.05, 1e-10));
  expect(fUpperTail(at99, dof)).toSatisfy(relative(0.01, 1e-10));
});

// R 4.2.2 `pt(t, df, ncp)`; the last two scipy 1.17.1 `stats.nct.cdf(12, 3.5, 40)` and `stats.nct.sf(8, 4, 9)`.
test.each([
  { t: 2, dof: 10, delta: 1, expected: 0.80761156253031 },
  { t: 2.228138852, dof: 10, delta: 2, expected: 0.56044793642951 },
  { t: 3, dof: 4, delta: 1.5, expected: 0.82075897505823 },
  { t: 1, dof: 2, delta: 0.5, expected: 0.63446646243233 },
  { t: -1, dof: 5, delta: 1, expected: 0.03080735326087 },
  { t: 2.776445105, dof: 4, delta: 3, expected: 0.3807424628662 },
  { t: 12, dof: 3.5, delta: 40, expected: 5.692160922326514e-8 },
  { t: 8, dof: 4, delta: 9, expected: 1 - 0.706940040830977 },
])("noncentral t at $t, $dof degrees of freedom, noncentrality $delta", ({ t, dof, delta, expected }) => {
  expect(Math.abs(noncentralT(t, dof, delta) - expected)).toBeLessThan(1e-9);
});

/** Cohen, "A power primer", Psychological Bulletin 112 (1992) 155, table 2: mean difference, power 0.80, two groups. */
test.each([
  { effect: 0.2, level: 0.01, size: 586 },
  { effect: 0.5, level: 0.01, size: 95 },
  { effect: 0.8, level: 0.01, size: 38 },
  { effect: 0.2, level: 0.05, size: 393 },
  { effect: 0.5, level: 0.05, size: 64 },
  { effect: 0.8, level: 0.05, size: 26 },
])("Cohen's table asks $size of each for an effect of $effect at a level of $level", ({ effect, level, size }) => {
  const planned = { design: "twoSample" as const, standardDeviation: 1, level };
  // Cohen rounds to the nearest whole number.
  expect(Math.round(tTestSize(planned, { difference: effect, power: 0.8 }).exact!)).toBe(size);
});

/** R 4.2.2 `power.t.test(strict = TRUE, tol = 1e-10)`. */
describe("power of a two-sided two-sample t test", () => {
  const planned = (standardDeviation: number) => ({ design: "twoSample" as const, standardDeviation, level: 0.05 });

  test.each([
    { difference: 0.01, sd: 0.01, power: 0.8, exact: 16.71472245, whole: 17 },
    { difference: 0.01, sd: 0.01, power: 0.9, exact: 22.02108843, whole: 23 },
    { difference: 0.01, sd: 0.02, power: 0.8, exact: 63.76561019, whole: 64 },
    { difference: 0.01, sd: 0.02, power: 0.9, exact: 85.03128414, whole: 86 },
    { difference: 0.02, sd: 0.01, power: 0.8, exact: 5.08999457, whole: 6 },
    { difference: 0.02, sd: 0.01, power: 0.9, exact: 6.3867551, whole: 7 },
    { difference: 0.03, sd: 0.01, power: 0.8, exact: 3.07000908, whole: 4 },
    { difference: 0.03, sd: 0.02, power: 0.8, exact: 8.06029428, whole: 9 },
    { difference: 0.05, sd: 0.01, power: 0.8, exact: 2.11721991, whole: 3 },
    { difference: 0.05, sd: 0.02, power: 0.8, exact: 3.76181313, whole: 4 },
    { difference: 0.05, sd: 0.02, power: 0.9, exact: 4.57478369, whole: 5 },
  ])(
    "$difference at a spread of $sd with chance $power takes $whole each",
    ({ difference, sd, power, exact, whole }) => {
      const found = tTestSize(planned(sd), { difference, power });
      expect(found.exact).toSatisfy(relative(exact, 1e-6));
      expect(found.size).toBe(whole);
    },
  );

  test.each([
    { size: 2, power: 0.218307074848 },
    { size: 3, power: 0.462640811891 },
    { size: 4, power: 0.656875875095 },
    { size: 5, power: 0.790542377973 },
    { size: 8, power: 0.960220772673 },
    { size: 10, power: 0.98817898852 },
  ])("$size each see twice the spread with chance $power", ({ size, power }) => {
    expect(tTestPower(planned(0.01), { difference: 0.02, size })).toSatisfy(relative(power, 1e-8));
  });

  test.each([
    { size: 3, difference: 0.0307089227 },
    { size: 5, difference: 0.0202443934 },
    { size: 10, difference: 0.0132494739 },
  ])("$size each see $difference at least", ({ size, difference }) => {
    expect(smallestDifference(planned(0.01), { size, power: 0.8 })).toSatisfy(relative(difference, 1e-7));
  });

  test("the example of R's own page: 20 each, difference and spread 1", () => {
    expect(tTestPower(planned(1), { difference: 1, size: 20 })).toSatisfy(relative(0.868953027725, 1e-9));
  });

  test("pairs", () => {
    const paired = { design: "paired" as const, standardDeviation: 0.01, level: 0.05 };
    expect(tTestSize(paired, { difference: 0.02, power: 0.8 }).exact).toSatisfy(relative(4.2207194037, 1e-7));
  });

  test("what two see already, and what a thousand do not, is said", () => {
    expect(tTestSize(planned(0.01), { difference: 0.5, power: 0.8 })).toEqual({ size: 2, exact: null });
    expect(tTestSize(planned(1), { difference: 0.01, power: 0.8 })).toEqual({ size: null, exact: null });
  });
});

import { expect, test } from "vitest";
import { brownForsythe } from "../../shared/numeric/brownForsythe.ts";
import { twoSidedPValue } from "../../shared/numeric/studentT.ts";

const LOOSE = [8.2, 9.1, 7.4, 12.8, 5.9, 10.6, 8.8, 13.1];
const TIGHT = [8.9, 9.2, 9.0, 8.6, 9.4, 9.1, 8.7];

test("the test of equal spread agrees with SciPy 1.17.1, scipy.stats.levene(a, b, center='median')", () => {
  const { statistic, pValue, varianceRatio, degreesOfFreedom } = brownForsythe(LOOSE, TIGHT);
  expect(statistic).toBeCloseTo(7.790077223530809, 10);
  expect(pValue).toBeCloseTo(0.015288764664656018, 10);
  // numpy 2.4.6, np.var(a, ddof=1) / np.var(b, ddof=1)
  expect(varianceRatio).toBeCloseTo(81.89405487804869, 9);
  expect(degreesOfFreedom).toBe(13);
});

/** NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.3, upper critical values of F with 1 and n degrees of freedom. */
test.each([
  { chance: 0.05, dof: 10, critical: 4.965 },
  { chance: 0.05, dof: 13, critical: 4.667 },
  { chance: 0.01, dof: 13, critical: 9.074 },
])("F = $critical with 1 and $dof degrees of freedom is reached with chance $chance", ({ chance, dof, critical }) => {
  expect(twoSidedPValue(Math.sqrt(critical), dof)).toBeCloseTo(chance, 4);
});

test("two readings, or readings that do not differ, are refused", () => {
  expect(() => brownForsythe([1, 2], TIGHT)).toThrow(/at least 3/);
  expect(() => brownForsythe([1, 1, 1], [2, 2, 2])).toThrow(/readings that differ/);
});

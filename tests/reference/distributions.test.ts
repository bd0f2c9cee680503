import { describe, expect, test } from "vitest";
import { chiSquareUpperTail } from "../../shared/numeric/chiSquare.ts";
import { twoSidedPValue } from "../../shared/numeric/studentT.ts";
import { coverageFactor, NORMAL_975 } from "../../shared/quantity/uncertain.ts";
import { relativeError } from "../relative.ts";

// R 4.2.2: `qt(.975, df)`.
const STUDENT_975 = [
  [1, 12.7062047361747],
  [1.5, 6.0166631044279],
  [2, 4.3026527297495],
  [2.5, 3.5746548420037],
  [3, 3.1824463052837],
  [4, 2.7764451051978],
  [5, 2.5705818356363],
  [6, 2.446911851145],
  [7, 2.3646242515928],
  [8, 2.3060041352042],
  [9, 2.2621571627982],
  [9.33, 2.2500190367011],
  [10, 2.2281388519863],
  [16, 2.1199052992213],
  [17.776, 2.1028213103802],
  [20, 2.0859634472659],
  [30, 2.0422724563012],
  [60, 2.0002978220143],
  [120, 1.9799304050824],
] as const;

describe("Student's t", () => {
  test.each(STUDENT_975)("for %d degrees of freedom the 95 %% coverage factor is %d", (dof, factor) => {
    expect(relativeError(coverageFactor(dof), factor)).toBeLessThan(1e-10);
    expect(relativeError(twoSidedPValue(factor, dof), 0.05)).toBeLessThan(1e-10);
  });

  // R 4.2.2: `2 * pt(-t, df)`.
  test.each([
    [1, 3, 0.391002218955771],
    [2, 4.5, 0.108257907181125],
    [3, 10, 0.01334365502257],
    [5, 17.7764735161785, 0.000096253136691],
  ])("t = %d with %d degrees of freedom has a two-sided p of %d", (t, dof, p) => {
    expect(relativeError(twoSidedPValue(t, dof), p)).toBeLessThan(1e-10);
    expect(twoSidedPValue(-t, dof)).toBe(twoSidedPValue(t, dof));
  });

  // R 4.2.2: `qnorm(.975)`.
  test("infinite degrees of freedom are the normal distribution", () => {
    expect(coverageFactor(Infinity)).toBe(1.959963984540054);
    expect(relativeError(twoSidedPValue(NORMAL_975, Infinity), 0.05)).toBeLessThan(1e-12);
    expect(relativeError(twoSidedPValue(NORMAL_975, 1e8), twoSidedPValue(NORMAL_975, Infinity))).toBeLessThan(1e-7);
  });
});

// R 4.2.2: `qchisq(p, df)` for p of .025, .95 and .975.
test.each([
  [1, 0.000982069117, 3.841458820694, 5.023886187315],
  [2, 0.050635615969, 5.991464547108, 7.377758908228],
  [3, 0.215795282624, 7.814727903251, 9.348403604496],
  [5, 0.831211613487, 11.070497693516, 12.83250199403],
  [10, 3.246972780237, 18.307038053275, 20.483177350807],
  [20, 9.590777392265, 31.410432844231, 34.169606902838],
])("the chi-square tail for %d degrees of freedom is that of R", (dof, low, high, higher) => {
  expect(chiSquareUpperTail(low, dof)).toBeCloseTo(0.975, 9);
  expect(chiSquareUpperTail(high, dof)).toBeCloseTo(0.05, 10);
  expect(chiSquareUpperTail(higher, dof)).toBeCloseTo(0.025, 10);
});

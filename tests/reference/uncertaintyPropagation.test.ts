import { describe, expect, test } from "vitest";
import { type Contribution, withContributions } from "../../shared/bench/contributions.ts";
import { combined, judgedTogether } from "../../shared/numeric/combined.ts";
import { lineThroughOrigin } from "../../shared/numeric/lineThroughOrigin.ts";
import { moments } from "../../shared/numeric/moments.ts";
import { propagate } from "../../shared/numeric/propagation.ts";
import { straightLine } from "../../shared/numeric/straightLine.ts";
import { twoSidedPValue } from "../../shared/numeric/studentT.ts";

/**
 * JCGM 100:2008, Evaluation of measurement data: Guide to the expression of uncertainty in measurement (GUM), annexes G
 * and H. Printed digits are rounded: half a unit in the last one is allowed, unless said otherwise.
 */

describe("GUM H.1, end gauge", () => {
  /** Table H.1, nm: standard, comparator difference, difference of expansion coefficients, difference of temperatures. */
  const { standardUncertainty, degreesOfFreedom } = combined([
    { standardUncertainty: 25, degreesOfFreedom: 18 },
    { standardUncertainty: 9.7, degreesOfFreedom: 25.6 },
    { standardUncertainty: 2.9, degreesOfFreedom: 50 },
    { standardUncertainty: 16.6, degreesOfFreedom: 2 },
  ]);

  test("has a combined standard uncertainty of 32 nm and 16 effective degrees of freedom", () => {
    expect(Math.abs(standardUncertainty - 32)).toBeLessThan(0.5);
    // The Guide cuts the decimals off (G.4.1); 16.76455398 from the same four numbers in numpy 2.4.6.
    expect(Math.floor(degreesOfFreedom)).toBe(16);
    expect(degreesOfFreedom).toBeCloseTo(16.76455398, 7);
  });

  test("is expanded at 99 % by 2.92 to 93 nm", () => {
    // H.1.6: t_99(16) = 2.92 and U_99 = 2.92 × 32 nm = 93 nm; 92.5 nm with u_c unrounded.
    expect(Math.abs(twoSidedPValue(2.92, Math.floor(degreesOfFreedom)) - 0.01)).toBeLessThan(0.00005);
    expect(Math.abs(2.92 * standardUncertainty - 93)).toBeLessThan(1);
  });
});

test("parts judged by one estimate that share none of its doubt are GUM G.2b, those that share all have its degrees of freedom", () => {
  const parts = [
    { standardUncertainty: 25, degreesOfFreedom: 18 },
    { standardUncertainty: 9.7, degreesOfFreedom: 25.6 },
    { standardUncertainty: 2.9, degreesOfFreedom: 50 },
    { standardUncertainty: 16.6, degreesOfFreedom: 2 },
  ];
  const apart = parts.map((part) => ({ ...part, commonDegreesOfFreedom: Infinity }));
  // As for H.1 above.
  expect(judgedTogether(apart).degreesOfFreedom).toBeCloseTo(16.76455398, 7);
  const one = parts.map((part) => ({ ...part, degreesOfFreedom: 12 }));
  expect(judgedTogether(one).degreesOfFreedom).toBeCloseTo(12, 12);
});

test("GUM G.4.1: relative doubts of 0.25 %, 0.57 % and 0.82 % give 1.03 %, 19.0 degrees of freedom, 2.2 % at 95 %", () => {
  const { standardUncertainty, degreesOfFreedom, coverageFactor, expanded95 } = combined([
    { standardUncertainty: 0.25, degreesOfFreedom: 9 },
    { standardUncertainty: 0.57, degreesOfFreedom: 4 },
    { standardUncertainty: 0.82, degreesOfFreedom: 14 },
  ]);
  expect(Math.abs(standardUncertainty - 1.03)).toBeLessThan(0.005);
  expect(Math.abs(degreesOfFreedom - 19)).toBeLessThan(0.05);
  // Unrounded 18.9987423143 and t 2.0930240544 (numpy 2.4.6, scipy 1.17.1).
  expect(degreesOfFreedom).toBeCloseTo(18.9987423143, 8);
  expect(coverageFactor).toBeCloseTo(2.0930240544, 4);
  expect(Math.abs(expanded95 - 2.2)).toBeLessThan(0.05);
});

describe("GUM H.2, resistance, reactance and impedance measured together", () => {
  /** Table H.2: volt, ampere, radian. */
  const V = [5.007, 4.994, 5.005, 4.99, 4.999];
  const I = [0.019663, 0.019639, 0.01964, 0.019685, 0.019678];
  const phi = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const inputs = [V, I, phi];
  const [v, i, p] = inputs.map((values) => moments(values).mean) as [number, number, number];
  const covariance = inputs.map((a) => inputs.map((b) => covarianceOfMeans(a, b)));
  const values = [(v / i) * Math.cos(p), (v / i) * Math.sin(p), v / i];
  const SENSITIVITIES = [
    [Math.cos(p) / i, (-v * Math.cos(p)) / i ** 2, (-v * Math.sin(p)) / i],
    [Math.sin(p) / i, (-v * Math.sin(p)) / i ** 2, (v * Math.cos(p)) / i],
    [1 / i, -v / i ** 2, 0],
  ];
  const { standardUncertainties, covariance: ofResults } = propagate(SENSITIVITIES, covariance);

  // Table H.3, and u(X) recomputed from table H.2: 0.2956, printed 0.295.
  test.each([
    { name: "R", k: 0, value: 127.732, u: 0.071, tolerance: 0.0005 },
    { name: "X", k: 1, value: 219.847, u: 0.295, tolerance: 0.001 },
    { name: "Z", k: 2, value: 254.26, u: 0.236, tolerance: 0.0005 },
  ])("$name is $value Ω with a standard uncertainty of $u Ω", ({ k, value, u, tolerance }) => {
    expect(Math.abs(values[k]! - value)).toBeLessThan(0.0005);
    expect(Math.abs(standardUncertainties[k]! - u)).toBeLessThan(tolerance);
  });

  test.each([
    { pair: "R and X", k: 0, l: 1, r: -0.588 },
    { pair: "R and Z", k: 0, l: 2, r: -0.485 },
    { pair: "X and Z", k: 1, l: 2, r: 0.993 },
  ])("$pair are correlated by $r", ({ k, l, r }) => {
    const correlation = ofResults[k]![l]! / (standardUncertainties[k]! * standardUncertainties[l]!);
    expect(Math.abs(correlation - r)).toBeLessThan(0.0006);
  });

  /**
   * As a run combines its coefficients: what two numbers share is a cause of one name that acts on both, with its sign.
   * The covariance of table H.2 is the same as that of three causes, by its Cholesky factor.
   */
  test.each([
    { name: "R", k: 0, value: 127.732, u: 0.071, tolerance: 0.0005 },
    { name: "X", k: 1, value: 219.847, u: 0.295, tolerance: 0.001 },
    { name: "Z", k: 2, value: 254.26, u: 0.236, tolerance: 0.0005 },
  ])("$name has a standard uncertainty of $u Ω also by causes that its inputs share", ({ k, value, u, tolerance }) => {
    const shared = lowerFactor(covariance);
    const contributions = SENSITIVITIES[k]!.map(
      (weight, input): Contribution => ({
        ...{ weight, independent: 0, degreesOfFreedom: Infinity },
        parts: shared[input]!.map((change, cause) => ({
          ...{ name: `cause ${cause}`, key: `cause ${cause}`, change, degreesOfFreedom: Infinity },
        })),
      }),
    );
    const result = withContributions(values[k]!, contributions);
    expect(Math.abs(result.value - value)).toBeLessThan(0.0005);
    expect(Math.abs(result.standardUncertainty - u)).toBeLessThan(tolerance);
  });
});

/** L of V = L Lᵀ. */
function lowerFactor(V: readonly (readonly number[])[]): number[][] {
  const L: number[][] = V.map((row) => row.map(() => 0));
  for (let i = 0; i < V.length; i++) {
    for (let j = 0; j <= i; j++) {
      const rest = V[i]![j]! - L[i]!.reduce((sum, one, k) => (k < j ? sum + one * L[j]![k]! : sum), 0);
      L[i]![j] = i === j ? Math.sqrt(rest) : rest / L[j]![j]!;
    }
  }
  return L;
}

function covarianceOfMeans(a: readonly number[], b: readonly number[]): number {
  const [ma, mb] = [moments(a).mean, moments(b).mean];
  return a.reduce((sum, value, set) => sum + (value - ma) * (b[set]! - mb), 0) / (a.length * (a.length - 1));
}

test("GUM H.3: a correction read off a calibration line at 30 °C is -0.1494 °C with 0.0041 °C", () => {
  /** Table H.6: thermometer reading and observed correction, °C; b = y1 + y2 (t - 20). */
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const line = straightLine({ x: t.map((value) => value - 20), y: b });
  const V = [
    [line.interceptStandardError ** 2, line.covariance],
    [line.covariance, line.slopeStandardError ** 2],
  ];
  expect(Math.abs(line.intercept + 10 * line.slope + 0.1494)).toBeLessThan(0.00005);
  expect(Math.abs(propagate([[1, 10]], V).standardUncertainties[0]! - 0.0041)).toBeLessThan(0.00005);
  expect(Math.abs(line.covariance / (line.interceptStandardError * line.slopeStandardError) + 0.93)).toBeLessThan(
    0.0005,
  );
});

describe("GUM H.5, days that differ by more than the readings of one day", () => {
  /** Table H.9: means of ten days and standard deviations of the five readings of each, µV above 10 V. */
  const days = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41];
  const within = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86];
  const pooled = Math.hypot(...within) / Math.sqrt(10);
  const line = lineThroughOrigin({
    x: days.map(() => 1),
    y: days,
    uncertaintyY: days.map(() => pooled / Math.sqrt(5)),
  });

  test("the mean is 97 µV, and the scatter of the days gives it 18 µV", () => {
    expect(Math.abs(line.slope - 97)).toBeLessThan(0.5);
    expect(Math.abs(line.standardErrorFromScatter! - 18)).toBeLessThan(0.5);
  });

  test("chi-square over its degrees of freedom is the variance ratio of 2.25, for 9 degrees of freedom", () => {
    // 2.25 is from 128² / 85²; with all digits 2.2615 (numpy 2.4.6).
    expect(Math.abs(line.chiSquared / line.degreesOfFreedom - 2.2615)).toBeLessThan(0.0001);
    expect(line.degreesOfFreedom).toBe(9);
  });
});

test("a covariance that does not fit the sensitivities is refused", () => {
  expect(() => propagate([[1, 2]], [[1]])).toThrow(
    expect.objectContaining({ problem: expect.objectContaining({ code: "numeric.propagation" }) }),
  );
});

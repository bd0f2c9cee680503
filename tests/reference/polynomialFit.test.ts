import { describe, expect, test } from "vitest";
import { correctedInformationCriterion } from "../../shared/numeric/informationCriterion.ts";
import { polynomialFit } from "../../shared/numeric/polynomialFit.ts";

/**
 * NIST Statistical Reference Datasets, Linear Regression: Pontius (Pontius, load cell calibration, NIST) and Wampler1 to
 * Wampler5 (Wampler, Journal of the American Statistical Association 65 (1970) 549), certified values.
 * Data of Pontius: deflection under 20 loads, applied twice. Wampler: x = 0 to 20, fifth order; 3, 4 and 5 add the same
 * disturbance times 1, 100 and 10 000, so that their certified standard deviations are in these ratios.
 */
const PONTIUS = {
  x: [0, 1].flatMap(() => Array.from({ length: 20 }, (_, i) => 150_000 * (i + 1))),
  y: [
    ...[0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146],
    ...[1.20001, 1.30822, 1.41599, 1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844],
    ...[0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739, 0.76596, 0.87474, 0.983, 1.0915],
    ...[1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829],
  ],
  coefficients: [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14],
  standardDeviations: [0.107938612033077e-3, 0.157817399981659e-9, 0.486652849992036e-16],
  residualStandardDeviation: 0.205177424076185e-3,
};

const X = Array.from({ length: 21 }, (_, i) => i);
const polynomial = (step: number) => X.map((x) => [0, 1, 2, 3, 4, 5].reduce((sum, k) => sum + step ** k * x ** k, 0));
const DISTURBANCE = [
  ...[759, -2048, 2048, -2048, 2523, -2048, 2048, -2048, 1838, -2048, 2048],
  ...[-2048, 1838, -2048, 2048, -2048, 2523, -2048, 2048, -2048, 759],
];
const DISTURBED = {
  standardDeviations: [
    2152.3262467817, 2363.55173469681, 779.343524331583, 101.47550755035, 5.64566512170752, 0.112324854679312,
  ],
  residualStandardDeviation: 2360.14502379268,
};

/** Correct digits of the worst of several numbers. */
function digits(got: readonly number[], certified: readonly number[]): number {
  return Math.min(...certified.map((c, i) => -Math.log10(Math.abs(got[i]! / c - 1) || 1e-16)));
}

const errorsOf = (covariance: readonly (readonly number[])[]) => covariance.map((row, i) => Math.sqrt(row[i]!));

describe("NIST polynomials come out as certified", () => {
  test("Pontius: coefficients, their standard deviations and the scatter", () => {
    const fit = polynomialFit({ ...PONTIUS, order: 2 });
    expect(digits(fit.coefficients, PONTIUS.coefficients)).toBeGreaterThan(9);
    expect(digits(errorsOf(fit.covariance), PONTIUS.standardDeviations)).toBeGreaterThan(9);
    const scatter = Math.sqrt(fit.chiSquared / fit.degreesOfFreedom);
    expect(digits([scatter], [PONTIUS.residualStandardDeviation])).toBeGreaterThan(9);
  });

  test.each([
    { name: "Wampler1", step: 1 },
    { name: "Wampler2", step: 0.1 },
  ])("$name: coefficients, and no scatter", ({ step }) => {
    const fit = polynomialFit({ x: X, y: polynomial(step), order: 5 });
    expect(
      digits(
        fit.coefficients,
        [0, 1, 2, 3, 4, 5].map((k) => step ** k),
      ),
    ).toBeGreaterThan(8);
    expect(Math.sqrt(fit.chiSquared / fit.degreesOfFreedom)).toBeLessThan(1e-8);
  });

  test.each([
    { name: "Wampler3", size: 1 },
    { name: "Wampler4", size: 100 },
    { name: "Wampler5", size: 10_000 },
  ])("$name: coefficients, their standard deviations and the scatter", ({ size }) => {
    const y = polynomial(1).map((value, i) => value + size * DISTURBANCE[i]!);
    const fit = polynomialFit({ x: X, y, order: 5 });
    // The disturbance is orthogonal to the polynomial, so that its size costs digits of the coefficients.
    expect(digits(fit.coefficients, [1, 1, 1, 1, 1, 1])).toBeGreaterThan(9 - Math.log10(size));
    const certified = DISTURBED.standardDeviations.map((value) => size * value);
    expect(digits(errorsOf(fit.covariance), certified)).toBeGreaterThan(9);
    const scatter = Math.sqrt(fit.chiSquared / fit.degreesOfFreedom);
    expect(digits([scatter], [size * DISTURBED.residualStandardDeviation])).toBeGreaterThan(9);
  });
});

/**
 * Ten points with stated standard uncertainties, solved by numpy 2.4.6 `polyfit(x, y, 2, w=1/u, cov="unscaled")` (and by
 * scipy 1.17.1 `curve_fit(sigma=u, absolute_sigma=True)`, the same to 8 digits); with doubt in x by repeating polyfit
 * with w = 1/hypot(u, p'(x) u_x) 200 times.
 */
const WEIGHTED = {
  x: [0.05, 0.12, 0.2, 0.31, 0.42, 0.5, 0.61, 0.72, 0.8, 0.9],
  y: [0.30187, 0.2886, 0.2771, 0.2543, 0.22483, 0.19783, 0.15755, 0.1116, 0.08185, 0.03517],
  uncertaintyY: [0.002, 0.003, 0.002, 0.004, 0.002, 0.003, 0.002, 0.004, 0.003, 0.002],
};
const NUMPY = {
  coefficients: [0.30815757480992945, -0.11559153352170395, -0.20979155378927813],
  covariance: [
    [4.119939447655526e-6, -1.7901610658342666e-5, 1.5731609785550683e-5],
    [-1.7901610658342672e-5, 0.00010920815006409058, -0.00010875589521440877],
    [1.573160978555069e-5, -0.00010875589521440877, 0.00011562530061786179],
  ],
  bothAxes: {
    coefficients: [0.30775329057372963, -0.11264460248153058, -0.21338594233426256],
    standardErrors: [0.0022936816228727114, 0.013318723228777826, 0.01472524941472431],
    chiSquared: 3.117616333171117,
  },
};

describe("a weighted polynomial", () => {
  test("has the coefficients and the covariance that numpy finds", () => {
    const fit = polynomialFit({ ...WEIGHTED, order: 2 });
    expect(digits(fit.coefficients, NUMPY.coefficients)).toBeGreaterThan(9);
    expect(digits(fit.covariance.flat(), NUMPY.covariance.flat())).toBeGreaterThan(9);
  });

  test("with doubt in x too has those that numpy finds with effective variances", () => {
    const fit = polynomialFit({ ...WEIGHTED, uncertaintyX: WEIGHTED.x.map(() => 0.006), order: 2 });
    expect(fit.converged).toBe(true);
    expect(digits(fit.coefficients, NUMPY.bothAxes.coefficients)).toBeGreaterThan(7);
    expect(digits(errorsOf(fit.covariance), NUMPY.bothAxes.standardErrors)).toBeGreaterThan(7);
    expect(digits([fit.chiSquared], [NUMPY.bothAxes.chiSquared])).toBeGreaterThan(6);
  });

  test("has a band that is the covariance laid on the powers, and influences that give the curve back", () => {
    const fit = polynomialFit({ ...WEIGHTED, order: 2 });
    const x = 0.7;
    const powers = [1, x, x * x];
    const variance = powers.reduce(
      (sum, a, i) => sum + powers.reduce((inner, b, j) => inner + a * b * NUMPY.covariance[i]![j]!, 0),
      0,
    );
    expect(digits([fit.standardErrorAt(x)], [Math.sqrt(variance)])).toBeGreaterThan(7);
    const byInfluences = fit.influencesAt(x).reduce((sum, pull, i) => sum + pull * WEIGHTED.y[i]!, 0);
    expect(byInfluences).toBeCloseTo(fit.at(x), 12);
    expect((fit.at(x + 1e-6) - fit.at(x - 1e-6)) / 2e-6).toBeCloseTo(fit.slopeAt(x), 7);
  });

  test.each([
    { order: 1.5, x: [0, 1, 2], why: "order that is no whole number" },
    { order: -1, x: [0, 1, 2], why: "negative order" },
    { order: 2, x: [0, 1, 1], why: "fewer different x than coefficients" },
  ])("is refused for a $why", ({ order, x }) => {
    expect(() => polynomialFit({ x, y: [1, 2, 3], order })).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "numeric.polynomial" }) }),
    );
  });
});

/**
 * Burnham & Anderson, Model Selection and Multimodel Inference, 2nd ed. (2002), eq. 2.4 on the least-squares form of
 * section 2.2.2: AICc = n ln(RSS/n) + 2K + 2K(K+1)/(n-K-1). Numbers by hand: n = 10, RSS = 20, K = 3.
 */
test("the corrected information criterion is the printed formula", () => {
  const criterion = correctedInformationCriterion({ chiSquared: 20, points: 10, coefficients: 2 });
  expect(criterion).toBeCloseTo(10 * Math.LN2 + 6 + 24 / 6, 12);
  expect(() => correctedInformationCriterion({ chiSquared: 1, points: 5, coefficients: 3 })).toThrow(/at least 6/);
});

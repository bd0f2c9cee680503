import { describe, expect, test } from "vitest";
import { type FitPoint, fitThroughOrigin } from "../../shared/bench/coefficientFit.ts";
import { spreadPoints } from "../../shared/bench/plateauSpread.ts";
import { relative } from "../relative.ts";

const x = [2, 4, 8, 12, 16];
const y = [0.412, 0.781, 1.655, 2.35, 3.29];
const u = [0.004, 0.004, 0.005, 0.006, 0.008];
const pointsOf = (thrusts: readonly number[]): FitPoint[] =>
  x.map((xi, i) => ({
    ...{ x: xi, y: thrusts[i]!, scatter: u[i]!, scatterDegreesOfFreedom: 100, rounding: 0, repeatability: 0 },
    ...{ roundingX: 0, tare: null, perTare: 0, tareUncertainty: 0 },
  }));

/**
 * numpy 2.4.6, scipy 1.17.1: K0 weighted by 1/u²; t = brentq of Σ (y - K x)²/(u² + (t K0 x)²) - 4, K weighted anew for each
 * t; K at the root and 1/sqrt(Σ w x²). The rule is that of Paule & Mandel, J. Res. NBS 87 (1982) 377.
 */
describe("plateaus that differ by more than their own doubts", () => {
  const found = spreadPoints(pointsOf(y));
  const fit = fitThroughOrigin(found, false);

  test("have the spread that makes chi-square its degrees of freedom, in proportion to the thrust", () => {
    found.forEach((point, i) => {
      expect(point.spread!.uncertainty).toSatisfy(relative(0.028553187078007452 * 0.2017090036692069 * x[i]!, 1e-9));
      expect(point.spread!.degreesOfFreedom).toBe(4);
    });
  });

  test("are weighed by it: coefficient and standard uncertainty as by scipy", () => {
    expect(fit.coefficient).toSatisfy(relative(0.2018578936402519, 1e-10));
    expect(fit.independent).toSatisfy(relative(0.002618865171616113, 1e-8));
    expect(fit.degreesOfFreedom).toBeLessThan(5);
  });
});

test("plateaus that agree within their doubts have none", () => {
  const exact = x.map((xi, i) => 0.2 * xi + [0.5, -0.5, 0.6, -0.4, 0.3][i]! * u[i]!);
  expect(spreadPoints(pointsOf(exact)).every(({ spread }) => spread === undefined)).toBe(true);
});

test("plateaus that a zero that is off explains have none", () => {
  const shifted = x.map((xi, i) => 0.2 * xi + 0.1 + [0.5, -0.5, 0.6, -0.4, 0.3][i]! * u[i]!);
  expect(spreadPoints(pointsOf(shifted)).every(({ spread }) => spread === undefined)).toBe(true);
});

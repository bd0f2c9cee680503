import { expect, test } from "vitest";
import { calibrationLine, readingAt } from "../../shared/calibration/calibrationLine.ts";
import { hysteresisOf } from "../../shared/calibration/hysteresis.ts";
import { nonlinearityOf } from "../../shared/calibration/nonlinearity.ts";
import { outliersOf } from "../../shared/calibration/outliers.ts";
import { relativeError } from "../relative.ts";
import { NORRIS } from "./nist.data.ts";

const pointsOf = (x: readonly number[], y: readonly number[]) => x.map((applied, i) => ({ applied, reading: y[i]! }));

/**
 * JCGM 100:2008 (GUM), H.3, table H.6 and H.3.3 to H.3.4: y1 -0.1712, s 0.0029; y2 0.00218, s 0.00067; r -0.930;
 * s 0.0035; b(30 °C) -0.1494, u 0.0041. Published digits are rounded: half a unit of the last.
 */
test("the calibration line of the GUM gives the published intercept, slope, doubts and prediction", () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const line = calibrationLine(
    pointsOf(
      t.map((value) => value - 20),
      b,
    ),
  );
  expect(Math.abs(line.intercept - -0.1712)).toBeLessThan(0.00005);
  expect(Math.abs(line.interceptStandardError - 0.0029)).toBeLessThan(0.00005);
  expect(Math.abs(line.slope - 0.00218)).toBeLessThan(0.000005);
  expect(Math.abs(line.slopeStandardError - 0.00067)).toBeLessThan(0.000005);
  const correlation = line.covariance / (line.interceptStandardError * line.slopeStandardError);
  expect(Math.abs(correlation - -0.93)).toBeLessThan(0.0005);
  expect(Math.abs(line.residualStandardDeviation - 0.0035)).toBeLessThan(0.00005);
  expect(line.degreesOfFreedom).toBe(9);
  const at30 = readingAt(line, 10);
  expect(Math.abs(at30.value - -0.1494)).toBeLessThan(0.00005);
  expect(Math.abs(at30.standardUncertainty - 0.0041)).toBeLessThan(0.00005);
});

// NIST StRD, Linear Regression, Norris (a calibration of ozone monitors), certified values.
test("NIST Norris comes out to eleven digits as a calibration", () => {
  const line = calibrationLine(pointsOf(NORRIS.x, NORRIS.y));
  expect(relativeError(line.intercept, -0.262323073774029)).toBeLessThan(1e-11);
  expect(relativeError(line.slope, 1.00211681802045)).toBeLessThan(1e-11);
  expect(relativeError(line.interceptStandardError, 0.232818234301152)).toBeLessThan(1e-10);
  expect(relativeError(line.slopeStandardError, 0.000429796848199937)).toBeLessThan(1e-10);
  expect(relativeError(line.residualStandardDeviation, 0.884796396144373)).toBeLessThan(1e-10);
});

/**
 * Quadratic least squares and its t test, computed independently: python3, numpy 2.4.6 `linalg.lstsq` on 1, x - mean,
 * (x - mean)², covariance s² (A'A)⁻¹, scipy 1.17.1 `stats.t.sf`.
 */
test.each([
  {
    name: "Norris",
    points: pointsOf(NORRIS.x, NORRIS.y),
    ...{
      quadratic: -2.0634314950029875e-6,
      u: 1.5685758518465587e-6,
      p: 0.1974152687564973,
      part: 3.5792487754297993e-4,
    },
  },
  {
    name: "a lever that tilts under load",
    points: pointsOf([0, 500, 1000, 1500, 2000, 2500, 3000, 3500], [2, 505, 1010, 1512, 2009, 2502, 2991, 3476]),
    ...{
      quadratic: -7.119047619075225e-6,
      u: 5.049640206306896e-7,
      p: 3.2312144900929625e-5,
      part: 3.5833273411717765e-3,
    },
  },
])("the curvature of $name is that of a quadratic fit", ({ points, quadratic, u, p, part }) => {
  const found = nonlinearityOf(calibrationLine(points))!;
  expect(relativeError(found.quadratic, quadratic)).toBeLessThan(1e-7);
  expect(relativeError(found.standardUncertainty, u)).toBeLessThan(1e-7);
  expect(relativeError(found.pValue, p)).toBeLessThan(1e-6);
  expect(relativeError(found.partOfSpan, part)).toBeLessThan(1e-7);
});

/**
 * Externally studentised residuals with Bonferroni's correction, computed independently with numpy and scipy from the hat
 * matrix: in Norris the farthest has p = 0.1198, in the second table point 5 has p = 7.7e-8 and no other is below 1.
 */
test("an outlier is named where studentised residuals say so, and only there", () => {
  expect(outliersOf(calibrationLine(pointsOf(NORRIS.x, NORRIS.y)))).toEqual([]);
  const slip = pointsOf([0, 500, 1000, 1500, 2000, 2500, 3000, 3500], [1, 501, 1002, 1503, 2040, 2504, 3006, 3506]);
  expect(outliersOf(calibrationLine(slip))).toEqual([4]);
});

/** scipy 1.17.1 `stats.ttest_rel(down, up)`: t 5.082340866101494, 6 degrees of freedom, p 0.002260324666561681. */
test("hysteresis is the paired t test of the way down against the way up", () => {
  const loads = [0, 500, 1000, 1500, 2000, 2500, 3000];
  const up = pointsOf([...loads, 3500], [0, 499, 997, 1496, 1996, 2497, 2998, 3502]);
  const down = pointsOf(loads, [1, 506, 1010, 1512, 2012, 2510, 3006]).reverse();
  const found = hysteresisOf(calibrationLine([...up, ...down]))!;
  expect(found.loads).toBe(7);
  expect(relativeError(found.difference, 10.571428571428571)).toBeLessThan(1e-12);
  expect(relativeError(found.standardUncertainty, 2.0800313969372906)).toBeLessThan(1e-9);
  expect(relativeError(found.pValue, 0.002260324666561681)).toBeLessThan(1e-8);
});

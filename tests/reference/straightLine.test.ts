import { expect, test } from "vitest";
import { straightLine } from "../../shared/numeric/straightLine.ts";
import { relativeError } from "../relative.ts";
import { NORRIS } from "./nist.data.ts";

// NIST StRD, Linear Regression, Norris, certified values.
test("NIST Norris: intercept, slope, standard errors and residuals are the certified ones to 11 digits", () => {
  const fit = straightLine(NORRIS);
  expect(relativeError(fit.intercept, -0.262323073774029)).toBeLessThan(1e-11);
  expect(relativeError(fit.slope, 1.00211681802045)).toBeLessThan(1e-13);
  expect(relativeError(fit.interceptStandardError, 0.232818234301152)).toBeLessThan(1e-11);
  expect(relativeError(fit.slopeStandardError, 0.000429796848199937)).toBeLessThan(1e-11);
  expect(relativeError(fit.chiSquared, 26.6173985294224)).toBeLessThan(1e-11);
  expect(fit.degreesOfFreedom).toBe(34);
});

// JCGM 100:2008 (GUM), H.3, thermometer calibration; digits beyond the printed ones recomputed from the printed data.
test("the calibration line of the GUM comes out with its standard errors and correlation", () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const fit = straightLine({ x: t.map((value) => value - 20), y: b });
  expect(relativeError(fit.intercept, -0.171203790131)).toBeLessThan(1e-8);
  expect(relativeError(fit.slope, 0.00218269774)).toBeLessThan(1e-8);
  expect(relativeError(fit.interceptStandardError, 0.0028775978)).toBeLessThan(1e-7);
  expect(relativeError(fit.slopeStandardError, 0.0006679388)).toBeLessThan(1e-6);
  const correlation = fit.covariance / (fit.interceptStandardError * fit.slopeStandardError);
  expect(correlation).toBeCloseTo(-0.9304296031, 8);
});

// R 4.2.2, `lm(y ~ x, weights = 1/u^2)` rescaled to known u: standard error over sigma, with sigma² = chi² / dof.
test("known doubt in y alone gives the weighted line of R", () => {
  const fit = straightLine({
    x: [0.6, 1.3, 2.4, 3.8, 5.4, 7.3],
    y: [0.19, 0.405, 0.762, 1.19, 1.713, 2.288],
    uncertaintyY: [0.01, 0.012, 0.015, 0.02, 0.026, 0.034],
  });
  expect(fit.intercept).toBeCloseTo(-1.26601576715895e-5, 12);
  expect(relativeError(fit.slope, 0.31492024173003)).toBeLessThan(1e-12);
  const sigma = Math.sqrt(fit.chiSquared / fit.degreesOfFreedom);
  expect(relativeError(fit.interceptStandardError * sigma, 0.00406336008767627)).toBeLessThan(1e-10);
  expect(relativeError(fit.slopeStandardError * sigma, 0.00161399869204314)).toBeLessThan(1e-10);
});

const PEARSON = {
  x: [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4],
  y: [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5],
};
const fromWeights = (weights: readonly number[]) => weights.map((weight) => 1 / Math.sqrt(weight));

// Pearson's data (1901) with York's weights (1966). Intercept and slope: Reed, American Journal of Physics 60 (1992) 59.
// Standard errors, S and the covariance: York et al., American Journal of Physics 72 (2004) 367, Table II, to its digits.
test("Pearson's data with York's weights give the published line and standard errors", () => {
  const fit = straightLine({
    ...PEARSON,
    uncertaintyX: fromWeights([1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1]),
    uncertaintyY: fromWeights([1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500]),
  });
  expect(relativeError(fit.intercept, 5.479910224033)).toBeLessThan(1e-9);
  expect(relativeError(fit.slope, -0.480533407446)).toBeLessThan(1e-9);
  expect(relativeError(fit.interceptStandardError, 0.294970735493)).toBeLessThan(1e-9);
  expect(relativeError(fit.slopeStandardError, 0.057985009001)).toBeLessThan(1e-9);
  expect(relativeError(fit.covariance, -0.016472544658)).toBeLessThan(1e-9);
  expect(relativeError(fit.chiSquared, 11.866353194061)).toBeLessThan(1e-9);
  expect(fit.interceptStandardError).toBeCloseTo(0.29497, 5);
  expect(fit.slopeStandardError).toBeCloseTo(0.05798, 4);
  expect(fit.converged).toBe(true);
});

// Deming's line on the same points in closed form (R 4.2.2); equal doubts are Pearson's own orthogonal line, 5.784 - 0.5456 x.
test.each([
  { ratio: 1, intercept: 5.78404377453, slope: -0.545561197521 },
  { ratio: 4, intercept: 5.768025674539, slope: -0.541367977628 },
  { ratio: 0.25, intercept: 5.815915403167, slope: -0.553904555803 },
])("equal doubts with a variance ratio of $ratio give Deming's line", ({ ratio, intercept, slope }) => {
  const fit = straightLine({
    ...PEARSON,
    uncertaintyX: PEARSON.x.map(() => 0.1),
    uncertaintyY: PEARSON.x.map(() => 0.1 * Math.sqrt(ratio)),
  });
  expect(relativeError(fit.intercept, intercept)).toBeLessThan(1e-9);
  expect(relativeError(fit.slope, slope)).toBeLessThan(1e-9);
});

test("doubt in x that is nearly nothing gives the same line as no doubt in x", () => {
  const uncertaintyY = PEARSON.x.map((_, i) => 0.1 + 0.01 * i);
  const plain = straightLine({ ...PEARSON, uncertaintyY });
  const both = straightLine({ ...PEARSON, uncertaintyY, uncertaintyX: PEARSON.x.map(() => 1e-9) });
  expect(relativeError(both.slope, plain.slope)).toBeLessThan(1e-12);
  expect(relativeError(both.slopeStandardError, plain.slopeStandardError)).toBeLessThan(1e-12);
});

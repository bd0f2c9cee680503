import { expect, test } from "vitest";
import { chiSquareUpperTail } from "../../shared/numeric/chiSquare.ts";
import { lineThroughOrigin } from "../../shared/numeric/lineThroughOrigin.ts";
import { relativeError } from "../relative.ts";
import { NO_INT_1, NO_INT_2 } from "./nist.data.ts";

// NIST StRD, Linear Regression, NoInt1 and NoInt2, certified values.
test.each([
  {
    name: "NoInt1",
    data: NO_INT_1,
    slope: 2.07438016528926,
    error: 0.0165289256198347,
    deviation: 3.56753034006338,
    squares: 127.272727272727,
    freedom: 10,
  },
  {
    name: "NoInt2",
    data: NO_INT_2,
    slope: 0.727272727272727,
    error: 0.0420827318078432,
    deviation: 0.369274472937998,
    squares: 0.272727272727273,
    freedom: 2,
  },
])("NIST $name: slope, standard error and residuals are the certified ones to 12 digits", (set) => {
  const fit = lineThroughOrigin(set.data);
  expect(relativeError(fit.slope, set.slope)).toBeLessThan(1e-12);
  expect(relativeError(fit.standardErrorFromScatter!, set.error)).toBeLessThan(1e-12);
  expect(relativeError(fit.residualStandardDeviation!, set.deviation)).toBeLessThan(1e-12);
  expect(relativeError(fit.chiSquared, set.squares)).toBeLessThan(2e-12);
  expect(fit.degreesOfFreedom).toBe(set.freedom);
  expect(fit.standardErrorFromUncertainty).toBeNull();
});

const x = [0.6, 1.3, 2.4, 3.8, 5.4, 7.3];
const y = [0.19, 0.405, 0.762, 1.19, 1.713, 2.288];
const uncertaintyY = [0.01, 0.012, 0.015, 0.02, 0.026, 0.034];

// R 4.2.2, `lm(y ~ 0 + x, weights = 1/u^2)`; the error from u alone is 1/sqrt(sum(x^2/u^2)).
test("a weighted line through the origin is that of R", () => {
  const fit = lineThroughOrigin({ x, y, uncertaintyY });
  expect(relativeError(fit.slope, 0.31491647290271)).toBeLessThan(1e-12);
  expect(relativeError(fit.standardErrorFromScatter!, 0.000955736607812566)).toBeLessThan(1e-10);
  expect(relativeError(fit.residualStandardDeviation!, 0.389714211029273)).toBeLessThan(1e-10);
  expect(relativeError(fit.standardErrorFromUncertainty!, 0.002452403789147)).toBeLessThan(1e-10);
  expect(relativeError(fit.chiSquared, 0.759385831391)).toBeLessThan(1e-10);
  expect(chiSquareUpperTail(fit.chiSquared, fit.degreesOfFreedom)).toBeCloseTo(0.979551197, 9);
  expect(fit.converged).toBe(true);
});

test("without weights it is that of R too", () => {
  const fit = lineThroughOrigin({ x, y });
  expect(relativeError(fit.slope, 0.314650429799427)).toBeLessThan(1e-12);
  expect(relativeError(fit.standardErrorFromScatter!, 0.000840368467258)).toBeLessThan(1e-10);
});

// scipy 1.10.1, `minimize_scalar` of Σ (y - b x)² / (u_y² + b² u_x²); standard error by York's formula with adjusted x.
test("with doubt in x as well the slope is the minimum that scipy finds", () => {
  const fit = lineThroughOrigin({ x, y, uncertaintyY, uncertaintyX: x.map((value) => 0.01 * value) });
  expect(fit.slope).toBeCloseTo(0.314912053028, 9);
  expect(relativeError(fit.chiSquared, 0.580112557782)).toBeLessThan(1e-9);
  expect(relativeError(fit.standardErrorFromUncertainty!, 0.002853145464)).toBeLessThan(1e-6);
  expect(fit.converged).toBe(true);
});

// R 4.2.2, `lm(y ~ 0 + x)` on repeated points.
test("repeated points give the slope, standard error and residual sum of R", () => {
  const fit = lineThroughOrigin({
    x: [1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4],
    y: [1.02, 0.98, 1.01, 2.05, 1.97, 2.02, 3.11, 3.02, 3.06, 4.2, 4.11, 4.16],
  });
  expect(relativeError(fit.slope, 1.02822222222222)).toBeLessThan(1e-12);
  expect(relativeError(fit.standardErrorFromScatter!, 0.00520446152383573)).toBeLessThan(1e-10);
  expect(relativeError(fit.chiSquared, 0.02681555555556)).toBeLessThan(1e-10);
});

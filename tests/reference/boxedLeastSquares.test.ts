import { describe, expect, test } from "vitest";
import { boxedLeastSquares } from "../../shared/numeric/boxedLeastSquares.ts";

const t = [0, 1, 2, 3, 4, 5];
const y = [5.1, 3.2, 1.9, 1.3, 0.75, 0.45];
const decay = ([a, b]: readonly number[]) => t.map((at, i) => a! * Math.exp(-b! * at) - y[i]!);

/**
 * y = a exp(-b t). scipy 1.17.1, optimize.least_squares([2, 1], bounds, xtol = ftol = gtol = 1e-15); chi squared is twice
 * its cost, heldAt its active_mask, the covariance numpy.linalg.inv(jac.T @ jac).
 */
const CASES = [
  { low: [0, 0], high: [10, 5], solution: [5.1045247, 0.4758338], chiSquared: 0.01215831, heldAt: [null, null] },
  { low: [0, 0], high: [4.5, 5], solution: [4.5, 0.4188632], chiSquared: 0.43956714, heldAt: ["high", null] },
  { low: [0, 0.7], high: [10, 5], solution: [5.5583484, 0.7], chiSquared: 1.31663947, heldAt: [null, "low"] },
] as const;

describe("least squares inside bounds agrees with scipy", () => {
  test.each(CASES)("a in $low.0 to $high.0, b in $low.1 to $high.1", ({ low, high, solution, chiSquared, heldAt }) => {
    const fit = boxedLeastSquares({ start: [2, 1], low, high, residuals: decay });
    expect(fit.converged).toBe(true);
    fit.solution.forEach((value, i) => {
      expect(value).toBeCloseTo(solution[i]!, 6);
    });
    expect(fit.chiSquared).toBeCloseTo(chiSquared, 7);
    expect(fit.heldAt).toEqual(heldAt);
  });
});

test("the derivatives at the solution give scipy's covariance", () => {
  const { jacobian: J } = boxedLeastSquares({ start: [2, 1], low: [0, 0], high: [10, 5], residuals: decay });
  const sum = (i: number, j: number) => J.reduce((total, row) => total + row[i]! * row[j]!, 0);
  const determinant = sum(0, 0) * sum(1, 1) - sum(0, 1) ** 2;
  expect(sum(1, 1) / determinant).toBeCloseTo(0.8685121, 5);
  expect(-sum(0, 1) / determinant).toBeCloseTo(0.08124962, 6);
  expect(sum(0, 0) / determinant).toBeCloseTo(0.02613749, 6);
});

test("a model without an answer beyond a line is followed up to it", () => {
  // sqrt(x) = -1 has no solution; the least of (sqrt(x) + 1)² on x ≥ 0 is at 0.
  const fit = boxedLeastSquares({
    start: [4],
    low: [0],
    high: [10],
    residuals: ([x]) => [Math.sqrt(x! - 0.5) + 1],
  });
  expect(fit.solution[0]).toBeCloseTo(0.5, 3);
});

test("a start without an answer is refused", () => {
  expect(() => boxedLeastSquares({ start: [1], low: [0], high: [2], residuals: () => [Number.NaN] })).toThrow(
    expect.objectContaining({ problem: expect.objectContaining({ code: "numeric.least-squares" }) }),
  );
});

import { expect, test } from "vitest";
import { bracketedRoot } from "../../shared/numeric/rootFinding.ts";

// Closed forms, and roots that scipy 1.17.1 `brentq(f, low, high, xtol=1e-15, rtol=8.9e-16)` gives.
test.each([
  { name: "x² - 2", f: (x: number) => x * x - 2, low: 0, high: 2, root: Math.SQRT2 },
  { name: "cos x - x", f: (x: number) => Math.cos(x) - x, low: 0, high: 1, root: 0.7390851332151607 },
  { name: "x³ - 2x - 5 (Wallis)", f: (x: number) => x ** 3 - 2 * x - 5, low: 2, high: 3, root: 2.0945514815423265 },
  { name: "e^x - 1e6", f: (x: number) => Math.exp(x) - 1e6, low: 0, high: 100, root: Math.log(1e6) },
  { name: "a root at the low end", f: (x: number) => x - 1, low: 1, high: 5, root: 1 },
  { name: "a root at the high end", f: (x: number) => x - 5, low: 1, high: 5, root: 5 },
  { name: "ends in falling order", f: (x: number) => x * x - 2, low: 2, high: 0, root: Math.SQRT2 },
  { name: "a step", f: (x: number) => (x < 0.3 ? -1 : 1), low: 0, high: 1, root: 0.3 },
  { name: "a large scale", f: (x: number) => 1 - 3e8 / x, low: 1e3, high: 1e12, root: 3e8 },
])("finds the root of $name", ({ f, low, high, root }) => {
  const found = bracketedRoot(f, low, high);
  expect(found.converged).toBe(true);
  expect(Math.abs(found.root - root)).toBeLessThanOrEqual(2e-12 * Math.abs(root));
});

test("a flat triple root, where the secant crawls, still converges", () => {
  const found = bracketedRoot((x) => (x - 1) ** 3, 0, 5, { relativeTolerance: 1e-9, maximumSteps: 200 });
  expect(found.converged).toBe(true);
  expect(found.root).toBeCloseTo(1, 8);
});

test("a root at zero is found to the rounding of the bracket", () => {
  const found = bracketedRoot((x) => x + x ** 3, -1, 2);
  expect(found.converged).toBe(true);
  expect(Math.abs(found.root)).toBeLessThan(1e-15);
});

test("smooth functions take far fewer steps than halving would", () => {
  // Halving [0, 2] to 1e-12 takes 41 steps.
  expect(bracketedRoot((x) => x * x - 2, 0, 2).steps).toBeLessThan(12);
});

test("running out of steps is told, not hidden", () => {
  const found = bracketedRoot((x) => Math.cos(x) - x, 0, 1, { maximumSteps: 2 });
  expect(found).toMatchObject({ converged: false, steps: 2 });
});

test("ends of one sign are refused with their values", () => {
  expect(() => bracketedRoot((x) => x * x + 1, -1, 3)).toThrow(/2 at -1 and 10 at 3/);
});

test("a function that gives no number is refused", () => {
  expect(() => bracketedRoot((x) => Math.sqrt(x), -1, 3)).toThrow(/NaN/);
});

import { describe, expect, test } from "vitest";
import {
  copperCoefficientAt,
  runawayCurrent,
  steadyWinding,
  windingTemperatureRise,
} from "../../shared/motor/windingTemperature.ts";
import { relative } from "../relative.ts";

/** IEC 60028:1925: the resistance of annealed copper grows by 0.00393 of its value at 20 °C per kelvin. */
test("a copper winding 100 K warmer than 20 °C has 39.3 % more resistance", () => {
  expect(windingTemperatureRise(0.393)).toBeCloseTo(100, 9);
});

/**
 * IEC 60034-1, 8.6.2.3.3: (t2 + k)/(t1 + k) = R2/R1 with k = 235 for copper (from memory). From 20 °C both rules are the
 * same to the digits of k: 1/0.00393 - 20 = 234.45.
 */
test("the rise agrees with the resistance method of IEC 60034-1 within 0.3 %", () => {
  const warm = 80;
  const ratio = (warm + 235) / (20 + 235);
  expect(Math.abs(windingTemperatureRise(ratio - 1) / (warm - 20) - 1)).toBeLessThan(0.003);
});

/** Copper of 0.1 Ω at 20 °C, 20 A: 40 W at 20 °C; the exact factor 1.2358 makes it 49.432 W at 80 °C (IEC 60028:1925). */
test.each([
  [293.15, 40],
  [353.15, 49.432],
])("the loss of a winding held at %d K is %d W", (surroundings, loss) => {
  const held = { resistance: 0.1, resistanceTemperature: 293.15, surroundings, thermalResistance: 0 };
  expect(steadyWinding(held, { current: 20, otherLoss: 0 }).loss).toSatisfy(relative(loss, 1e-12));
});

/** (234.5 + t)/254.5 of IEC 60228 annex B for copper, to four digits of the constant. */
test("the coefficient is referred to the temperature of the stated resistance", () => {
  expect(copperCoefficientAt(293.15)).toBe(0.003_93);
  expect(copperCoefficientAt(333.15)).toSatisfy(relative(1 / (234.5 + 60), 3e-4));
});

/**
 * scipy 1.17.1 `brentq(lambda t: t - T_w - R_th (I² R_0 (1 + a (t - T_0)) + P), 100, 1e5, xtol=1e-13, rtol=1e-15)`,
 * a = 0.00393/(1 + 0.00393 (T_0 - 293.15)).
 */
test.each([
  // I, P, R_0, T_0, T_w, R_th, then T, R, loss
  [20, 0, 0.1, 293.15, 293.15, 1, 340.6108448030375, 0.11865211200759374, 47.460844803037496],
  [12, 3.5, 0.085, 298.15, 285.15, 1.6, 311.3287576777512, 0.08931752464301751, 12.861723548594522],
  [15, 6, 0.12, 313.15, 278.15, 0.9, 307.3351549332164, 0.11745755522576012, 26.427949925796028],
])("at %d A and %d W of other loss a winding settles where scipy finds it", (current, otherLoss, ...rest) => {
  const [resistance, resistanceTemperature, surroundings, thermalResistance, T, R, loss] = rest;
  const winding = { resistance, resistanceTemperature, surroundings, thermalResistance };
  const found = steadyWinding(winding, { current, otherLoss });
  expect(found.temperature).toSatisfy(relative(T, 1e-12));
  expect(found.resistance).toSatisfy(relative(R, 1e-12));
  expect(found.loss).toSatisfy(relative(loss, 1e-12));
});

/** a R_th I² R_0 = 1 by hand: 1/sqrt(0.00393 · 2 · 0.1) = 35.67 A. */
describe("thermal runaway", () => {
  const winding = { resistance: 0.1, resistanceTemperature: 293.15, surroundings: 293.15, thermalResistance: 2 };

  test("has a current of its own, and none without heating", () => {
    expect(runawayCurrent(winding)).toSatisfy(relative(1 / Math.sqrt(0.00393 * 2 * 0.1), 1e-14));
    expect(runawayCurrent({ ...winding, thermalResistance: 0 })).toBe(Number.POSITIVE_INFINITY);
  });

  test("a hair below it is hot and finite, at it and above it is refused by name and never below zero", () => {
    const most = runawayCurrent(winding);
    expect(steadyWinding(winding, { current: 0.999 * most, otherLoss: 0 }).temperature).toBeGreaterThan(1e5);
    for (const current of [most * (1 + 1e-15), 2 * most, 100 * most]) {
      expect(() => steadyWinding(winding, { current, otherLoss: 0 })).toThrow(
        expect.objectContaining({
          problem: expect.objectContaining({
            code: "motor.thermal-runaway",
            found: expect.stringMatching(/from 35\.7 A/),
          }),
        }),
      );
    }
  });
});

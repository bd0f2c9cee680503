import { expect, test } from "vitest";
import { windingTemperatureRise } from "../../shared/motor/windingTemperature.ts";

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

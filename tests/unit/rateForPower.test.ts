import { expect, test } from "vitest";
import type { Predictor } from "../../shared/propeller/prediction/predictor.ts";
import { rateForPower } from "../../shared/propeller/prediction/rateForPower.ts";

const predictor = (torqueCoefficient: number): Predictor => ({
  ...{ diameter: 0.1, warnings: [] },
  at: () => ({ state: "known", thrustCoefficient: 0.4, torqueCoefficient, warnings: [] }),
});

test("the rotation rate that takes a shaft power is that of P = 2π K_Q ρ n³ D⁵", () => {
  // By hand: 2π · 0.04 · 1000 kg/m³ · (50/s)³ · (0.1 m)⁵ = 100 π W.
  expect(rateForPower(predictor(0.04), 1000, 100 * Math.PI)).toBeCloseTo(50, 10);
});

test("a propeller that takes no power has none", () => {
  expect(rateForPower(predictor(0), 1000, 100)).toBe(0);
});

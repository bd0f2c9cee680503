import { expect, test } from "vitest";
import type { Reduction } from "../../shared/model/reduction.ts";
import { recipeOf, reduce, tableOf } from "../unit/benchTable.ts";
import { simulatedRamp } from "./benchSimulatedRamp.ts";
import { uniformFrom } from "./benchSimulatedRun.ts";
import { covers, normalisedErrors, share } from "./coverage.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
] as const;

interface Outcome {
  readonly truth: number;
  readonly lag: number;
  readonly reduction: Reduction;
}

/** A ramp up and down on a stand drawn at random; true K_T between 0.1 and 0.5, thrust late by up to 0.4 s. */
function drawnRamp(index: number): Outcome {
  const uniform = uniformFrom(9000 + index);
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const ramp = {
    thrustCoefficient: between(0.1, 0.5),
    samplingRate: [10, 20, 50, 80][Math.floor(4 * uniform())]!,
    topRate: between(25, 60),
    rise: between(20, 60),
    fall: between(20, 60),
    rest: between(4, 8),
    noiseFloor: between(0.02, 0.3),
    correlationTime: uniform() < 0.5 ? 0 : between(0.05, 1),
    rateNoise: between(0, 0.3),
    lag: uniform() < 0.3 ? 0 : between(-0.1, 0.4),
    zero: between(-3, 3),
    drift: uniform() < 0.3 ? 0 : between(-0.15, 0.15),
    bend: between(0.8, 1.2),
  };
  const recipe = recipeOf(USES, { plateaus: { mode: "sweep" } });
  const table = tableOf(simulatedRamp(ramp, uniform));
  return { truth: ramp.thrustCoefficient, lag: ramp.lag, reduction: reduce({ table, recipe }) };
}

const OUTCOMES = Array.from({ length: 300 }, (_, index) => drawnRamp(index));

test("the 95 % interval from a slow ramp covers the truth in 92 to 98 % of 300 simulated ramps", () => {
  const covered = share(OUTCOMES.map(({ truth, reduction }) => covers(reduction.thrustCoefficient.interval95, truth)));
  expect(covered).toBeGreaterThanOrEqual(0.92);
  expect(covered).toBeLessThanOrEqual(0.98);
});

test("the interval of the lag covers the true lag in 90 to 99 % of the same ramps, and every search settles", () => {
  expect(OUTCOMES.every(({ reduction }) => reduction.sweep!.converged)).toBe(true);
  const covered = share(OUTCOMES.map(({ lag, reduction }) => covers(reduction.sweep!.lag.interval95, lag)));
  expect(covered).toBeGreaterThanOrEqual(0.9);
  expect(covered).toBeLessThanOrEqual(0.99);
});

test("normalised errors have mean 0 and deviation 1", () => {
  const { mean, deviation } = normalisedErrors(
    OUTCOMES.map(({ truth, reduction }) => ({ found: reduction.thrustCoefficient, truth })),
  );
  expect(Math.abs(mean)).toBeLessThan(3 / Math.sqrt(300));
  expect(deviation).toBeGreaterThan(0.8);
  expect(deviation).toBeLessThan(1.2);
});

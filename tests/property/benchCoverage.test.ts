import { expect, test } from "vitest";
import type { Reduction } from "../../shared/model/reduction.ts";
import { propellerOf, recipeOf, reduce } from "../unit/benchTable.ts";
import { normalFrom, type Stand, simulatedLog, uniformFrom } from "./benchSimulatedRun.ts";

/** A stand as a workshop has it, drawn at random; true K_T between 0.1 and 0.5. */
function drawnStand(uniform: () => number): Stand {
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const count = 4 + Math.floor(6 * uniform());
  const top = between(25, 60);
  const up = Array.from({ length: count }, (_, i) => (top * (i + 2)) / (count + 1));
  const steps = uniform() < 0.4 ? [...up, ...up.slice(0, -1).reverse()] : up;
  return {
    thrustCoefficient: between(0.1, 0.5),
    diameter: 0.076,
    samplingRate: [10, 20, 50, 80][Math.floor(4 * uniform())]!,
    steps,
    dwell: between(4, 10),
    rest: between(4, 8),
    noiseFloor: between(0.005, 0.08),
    noisePart: between(0, 0.02),
    correlation: uniform() < 0.5 ? 0 : between(0.2, 0.9),
    rateNoise: between(0, 0.3),
    sag: uniform() < 0.5 ? 0 : between(0, 0.02),
    settlingTime: between(0.05, 0.4),
    zero: between(-3, 3),
    drift: uniform() < 0.3 ? 0 : between(-0.15, 0.15),
    driftBend: between(0.6, 1.6),
    thrustStep: [0, 0.01, 0.05, 0.1][Math.floor(4 * uniform())]!,
    rateStep: [0, 1 / 60, 1 / 6, 1][Math.floor(4 * uniform())]!,
    glitchChance: uniform() < 0.5 ? 0 : 0.003,
    withCommand: uniform() < 0.6,
    plateauScatter: uniform() < 0.5 ? 0 : between(0, 0.01),
  };
}

interface Outcome {
  readonly truth: number;
  readonly reduction: Reduction;
}

/** One run whose scale, tachometer and callipers are off as their stated uncertainties say. */
function simulatedRun(index: number): Outcome {
  const uniform = uniformFrom(1000 + index);
  const normal = normalFrom(uniform);
  const stand = drawnStand(uniform);
  const table = simulatedLog(stand, uniform);
  const calibration = uniform() < 0.5 ? 0 : 0.01 * uniform();
  const diameterUncertainty = uniform() < 0.5 ? 0 : 2e-4;
  const factor = 1 / (1 + calibration * normal());
  const columns = [["time", "s"], ["thrust", "N"], ["rotationRate", "rev/s"], ...(stand.withCommand ? [["command", "us"]] : [])];
  const recipe = recipeOf(columns as [string, string][], {
    corrections: { thrust: { factor, relativeUncertainty: calibration } },
  });
  const measuredDiameter = stand.diameter + diameterUncertainty * normal();
  const propeller = propellerOf({ diameter: measuredDiameter, diameterUncertainty });
  return { truth: stand.thrustCoefficient, reduction: reduce({ table, recipe, propeller }) };
}

const covers = ([low, high]: readonly [number, number], truth: number) => low <= truth && truth <= high;

test("the 95 % interval of the thrust coefficient covers the truth in 90 to 99 % of 300 simulated logs", () => {
  const outcomes = Array.from({ length: 300 }, (_, index) => simulatedRun(index));
  const covered = outcomes.filter(({ truth, reduction }) => covers(reduction.thrustCoefficient.interval95, truth)).length;
  expect(covered / outcomes.length).toBeGreaterThanOrEqual(0.9);
  expect(covered / outcomes.length).toBeLessThanOrEqual(0.99);
});

import { expect, test } from "vitest";
import type { Reduction } from "../../shared/model/reduction.ts";
import { propellerOf, recipeOf, reduce, tableOf } from "../unit/benchTable.ts";
import { normalFrom, type Stand, simulatedLog, uniformFrom } from "./benchSimulatedRun.ts";
import { covers, normalisedErrors, share } from "./coverage.ts";

/** A stand as a workshop has it, drawn at random; true K_T between 0.1 and 0.5. */
function drawnStand(uniform: () => number): Stand {
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const count = 4 + Math.floor(6 * uniform());
  const top = between(25, 60);
  const up = Array.from({ length: count }, (_, i) => (top * (i + 2)) / (count + 1));
  const steps = uniform() < 0.4 ? [...up, ...up.slice(0, -1).reverse()] : up;
  return {
    thrustCoefficient: between(0.1, 0.5),
    torqueCoefficient: 0.03,
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
  readonly steps: number;
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
  const columns = [
    ["time", "s"],
    ["thrust", "N"],
    ["rotationRate", "rev/s"],
    ["torque", "N·m"],
    ...(stand.withCommand ? [["command", "us"]] : []),
  ];
  const recipe = recipeOf(columns as [string, string][], {
    corrections: { thrust: { factor, relativeUncertainty: calibration } },
  });
  const measuredDiameter = stand.diameter + diameterUncertainty * normal();
  const propeller = propellerOf({ diameter: measuredDiameter, diameterUncertainty });
  return { steps: stand.steps.length, truth: stand.thrustCoefficient, reduction: reduce({ table, recipe, propeller }) };
}

const OUTCOMES = Array.from({ length: 300 }, (_, index) => simulatedRun(index));

test("the 95 % interval of the thrust coefficient covers the truth in 90 to 99 % of 300 simulated logs", () => {
  const covered = share(OUTCOMES.map(({ truth, reduction }) => covers(reduction.thrustCoefficient.interval95, truth)));
  expect(covered).toBeGreaterThanOrEqual(0.9);
  expect(covered).toBeLessThanOrEqual(0.99);
});

test("the standard uncertainty is neither too small nor too large: normalised errors have mean 0 and deviation 1", () => {
  const { mean, deviation } = normalisedErrors(
    OUTCOMES.map(({ truth, reduction }) => ({ found: reduction.thrustCoefficient, truth })),
  );
  // Three standard errors of a mean of 300 numbers.
  expect(Math.abs(mean)).toBeLessThan(3 / Math.sqrt(300));
  expect(deviation).toBeGreaterThan(0.8);
  expect(deviation).toBeLessThan(1.25);
});

test("the intervals of exponent and intercept cover 2 and 0 in 90 to 99 % of the same logs", () => {
  for (const covered of [
    share(OUTCOMES.map(({ reduction }) => covers(reduction.exponent!.interval95, 2))),
    share(OUTCOMES.map(({ reduction }) => covers(reduction.intercept!.interval95, 0))),
  ]) {
    expect(covered).toBeGreaterThanOrEqual(0.9);
    expect(covered).toBeLessThanOrEqual(0.99);
  }
});

test("the intervals of power coefficient and static merit cover the truth in 90 to 99 % of the same logs", () => {
  const C_P = 2 * Math.PI * 0.03;
  const power = OUTCOMES.map(({ reduction }) => covers(reduction.powerCoefficient!.interval95, C_P));
  const merit = OUTCOMES.map(({ truth, reduction }) =>
    covers(reduction.staticMerit!.interval95, truth ** 1.5 / (C_P * Math.sqrt(Math.PI / 2))),
  );
  for (const covered of [share(power), share(merit)]) {
    expect(covered).toBeGreaterThanOrEqual(0.9);
    expect(covered).toBeLessThanOrEqual(0.99);
  }
});

test("at least 97 of 100 steps that were run become a plateau, and no step becomes two in 95 of 100 logs", () => {
  const run = OUTCOMES.reduce((sum, { steps }) => sum + steps, 0);
  const found = OUTCOMES.reduce((sum, { steps, reduction }) => sum + Math.min(steps, reduction.plateaus.length), 0);
  expect(found / run).toBeGreaterThanOrEqual(0.97);
  expect(share(OUTCOMES.map(({ steps, reduction }) => reduction.plateaus.length <= steps))).toBeGreaterThanOrEqual(
    0.95,
  );
});

/** Readings of a kitchen scale and an optical tachometer noted by hand, each a little off by itself. */
function notebookRun(index: number): { truth: number; interval: readonly [number, number] } {
  const uniform = uniformFrom(5000 + index);
  const normal = normalFrom(uniform);
  const truth = 0.1 + 0.4 * uniform();
  const [gramStep, rpmStep, part] = [
    [1, 2, 5][Math.floor(3 * uniform())]!,
    [1, 10][Math.floor(2 * uniform())]!,
    0.01 * uniform(),
  ];
  const rows = [0, ...Array.from({ length: 4 + Math.floor(6 * uniform()) }, (_, i) => 900 + 350 * i), 0];
  const turns = rows.map((rpm) => (rpm > 0 ? rpm * (1 + 0.1 * uniform()) : 0));
  const zero = 40 * (uniform() - 0.5);
  const grams = turns.map((rpm) => {
    const newton = truth * DENSITY_18 * (rpm / 60) ** 2 * 0.076 ** 4 * (1 + part * normal());
    return Math.round((newton / 9.80665e-3 + zero) / gramStep) * gramStep;
  });
  const rpm = turns.map((value) => Math.round(value / rpmStep) * rpmStep);
  const table = tableOf({ rpm, grams }, { resolutions: [rpmStep, gramStep] });
  const recipe = recipeOf([
    ["rotationRate", "rpm"],
    ["thrust", "g"],
  ]);
  return { truth, interval: reduce({ table, recipe }).thrustCoefficient.interval95 };
}

/** Fresh water of 18 °C, kg/m³; IAPWS SR6-08(2011). */
const DENSITY_18 = 998.598;

test("the interval from a notebook of single readings covers the truth in 90 to 99 % of 300 simulated tables", () => {
  const covered = share(
    Array.from({ length: 300 }, (_, i) => notebookRun(i)).map(({ truth, interval }) => covers(interval, truth)),
  );
  expect(covered).toBeGreaterThanOrEqual(0.9);
  expect(covered).toBeLessThanOrEqual(0.99);
});

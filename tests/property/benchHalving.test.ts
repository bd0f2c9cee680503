import { expect, test } from "vitest";
import { budgetOf } from "../../shared/bench/budget.ts";
import { runFactsOf } from "../../shared/bench/reduceRun.ts";
import type { Budget } from "../../shared/model/budget.ts";
import { median } from "../../shared/numeric/median.ts";
import { propellerOf, recipeOf, SOURCE } from "../unit/benchTable.ts";
import { quietStand, type Stand, simulatedLog, uniformFrom } from "./benchSimulatedRun.ts";

const RECIPE = recipeOf([
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["command", "us"],
]);

function budgetFrom(stand: Partial<Stand>, seed: number): Budget {
  const table = simulatedLog(quietStand(stand), uniformFrom(seed));
  return budgetOf(runFactsOf({ table, recipe: RECIPE, propeller: propellerOf(), source: SOURCE })).thrustCoefficient;
}

const width = ({ result: { interval95 } }: Budget) => interval95[1] - interval95[0];
const steps = (count: number) => Array.from({ length: count }, (_, i) => 15 + (30 * i) / (count - 1));
const morePlateaus = (stand: Partial<Stand>, factor: number) => ({
  ...stand,
  steps: steps(Math.ceil(5 / factor ** 2)),
});

/** The stand, what is advised there, and the stand with that done; `factor`: on the cause, as the advice has it. */
const ADVICE: readonly {
  readonly what: string;
  readonly stand: Partial<Stand>;
  readonly advised: RegExp;
  readonly better: (stand: Partial<Stand>, factor: number) => Partial<Stand>;
}[] = [
  {
    what: "more plateaus where readings are noisy",
    stand: { noiseFloor: 0.4, noisePart: 0, rest: 60, dwell: 4 },
    advised: /^Run \d+ plateaus in place of 5/,
    better: morePlateaus,
  },
  {
    what: "more plateaus where noise grows with the thrust",
    stand: { noiseFloor: 0.05, noisePart: 0.1, rest: 20, dwell: 4 },
    advised: /^Run \d+ plateaus in place of 5/,
    better: morePlateaus,
  },
  {
    what: "more plateaus where they scatter by themselves",
    stand: { noiseFloor: 0.05, noisePart: 0.01, plateauScatter: 0.01 },
    advised: /^Run \d+ plateaus in place of 5/,
    better: morePlateaus,
  },
  {
    what: "longer rests where the zero is noisy",
    stand: { noiseFloor: 0.4, noisePart: 0, rest: 3, dwell: 20 },
    advised: /^Rest \d.* times as long for the zero/,
    better: (stand, factor) => ({ ...stand, rest: 3 / factor ** 2 }),
  },
  {
    what: "less drift where the zero drifts",
    stand: { noiseFloor: 0.02, drift: 0.6 },
    advised: /^Keep the zero of the scale's drift between rests to/,
    better: (stand, factor) => ({ ...stand, drift: 0.6 * factor }),
  },
];

test.each(ADVICE)("doing what is advised about halves the interval: $what", ({ stand, advised, better }) => {
  const ratios = Array.from({ length: 12 }, (_, i) => i + 1).flatMap((seed) => {
    const before = budgetFrom(stand, seed);
    const { sentence, factor } = before.halving;
    return advised.test(sentence) ? [width(budgetFrom(better(stand, factor!), seed + 100)) / width(before)] : [];
  });
  // In some draws two causes together are named instead.
  expect(ratios.length).toBeGreaterThanOrEqual(6);
  expect(median(ratios)).toBeGreaterThan(0.4);
  expect(median(ratios)).toBeLessThan(0.6);
});

test("reading a scale more finely does better than halve: the plateaus gain as well as the zero", () => {
  const stand = { noiseFloor: 0.002, noisePart: 0, thrustStep: 0.2, steps: steps(9) };
  const before = budgetFrom(stand, 1);
  expect(before.halving.sentence).toMatch(/^Read the zero of the scale to/);
  const after = budgetFrom({ ...stand, thrustStep: 0.2 * before.halving.factor! }, 101);
  expect(width(after) / width(before)).toBeLessThan(0.55);
});

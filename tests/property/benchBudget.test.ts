import { describe, expect, test } from "vitest";
import { budgetOf } from "../../shared/bench/budget.ts";
import { DRAWS, monteCarloOfRun } from "../../shared/bench/monteCarloOfRun.ts";
import { runFactsOf } from "../../shared/bench/reduceRun.ts";
import { type Budget, MonteCarlo, RunBudget } from "../../shared/model/budget.ts";
import { effectiveDegreesOfFreedom } from "../../shared/numeric/welchSatterthwaite.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { drawnRequest } from "../coverage/drawnRun.ts";
import { propellerOf, recipeOf, SOURCE, tableOf } from "../unit/benchTable.ts";
import { quietStand, simulatedLog, uniformFrom } from "./benchSimulatedRun.ts";

/** Runs of stands of all kinds: other noise, drift, steps, calibrations and diameters in each. */
const RUNS = Array.from({ length: 25 }, (_, i) => runFactsOf(drawnRequest(i + 1).request));
const BUDGETS = RUNS.map(budgetOf);
const QUANTITIES = ["thrustCoefficient", "powerCoefficient", "staticMerit"] as const;
const all = () => BUDGETS.flatMap((run) => QUANTITIES.map((quantity) => run[quantity]!));

/** Grams of a kitchen scale against turns of a tachometer, typed from a notebook. */
const notebook = (grams: readonly number[], more: object = {}) =>
  runFactsOf({
    table: tableOf({ rpm: [0, 900, 1300, 1700, 2100, 0], grams }, { resolutions: [10, 1] }),
    recipe: recipeOf(
      [
        ["rotationRate", "rpm"],
        ["thrust", "g"],
      ],
      more,
    ),
    propeller: propellerOf({ diameterUncertainty: 1e-4 }),
    source: SOURCE,
  });

describe("the budget of a run", () => {
  test("has rows whose squares add up to the square of the published standard uncertainty", () => {
    for (const { rows, result } of all()) {
      const total = Math.hypot(...rows.map((row) => row.standardUncertainty));
      expect(total / result.standardUncertainty).toBeCloseTo(1, 9);
    }
  });

  test("adds up as well where plateaus scatter beyond their doubts, and for typed rows", () => {
    for (const grams of [
      [0, 48, 101, 172, 262, 0],
      [5, 44, 121, 160, 301, 6],
    ]) {
      const { rows, result } = budgetOf(notebook(grams)).thrustCoefficient;
      expect(Math.hypot(...rows.map((row) => row.standardUncertainty)) / result.standardUncertainty).toBeCloseTo(1, 9);
    }
  });

  test("gives each row the product of its input and its sensitivity, the greatest first, shares that sum to one", () => {
    for (const { rows } of all()) {
      for (const row of rows) {
        expect(row.standardUncertainty).toBeCloseTo(Math.abs(row.sensitivity) * row.inputUncertainty, 15);
      }
      expect(rows.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
      expect(rows.map(({ share }) => share)).toEqual(rows.map(({ share }) => share).sort((a, b) => b - a));
    }
  });

  test("publishes the interval that its coverage factor and its standard uncertainty give", () => {
    for (const { result, degreesOfFreedom, coverageFactor } of all()) {
      const again = uncertain(result.value, result.standardUncertainty, degreesOfFreedom ?? Infinity);
      expect(again.interval95[1]).toBeCloseTo(result.interval95[1], 8);
      expect(coverageFactor).toBeGreaterThanOrEqual(1.9599);
    }
  });

  test("has the degrees of freedom of Welch and Satterthwaite, the plateaus judged as one", () => {
    RUNS.forEach(({ thrust }, i) => {
      const { rows, degreesOfFreedom } = BUDGETS[i]!.thrustCoefficient;
      const common = rows.filter(({ key }) => !key.startsWith("thrust:"));
      const expected = effectiveDegreesOfFreedom([
        { standardUncertainty: thrust.fit.independent, degreesOfFreedom: thrust.fit.degreesOfFreedom },
        ...common.map((row) => ({ ...row, degreesOfFreedom: row.degreesOfFreedom ?? Infinity })),
      ]);
      expect((degreesOfFreedom ?? 1e9) / Math.min(expected, 1e9)).toBeCloseTo(1, 6);
    });
  });

  test("counts a diameter that is off by 1 % as 4 % of K_T, 5 % of C_P and 1 % of the merit", () => {
    const relative = ({ rows, result }: Budget) => {
      const row = rows.find(({ source }) => source === "diameter")!;
      return (row.sensitivity * 0.076) / result.value;
    };
    for (const run of BUDGETS) {
      expect(relative(run.thrustCoefficient)).toBeCloseTo(-4, 1);
      expect(relative(run.powerCoefficient!)).toBeCloseTo(-5, 1);
      expect(relative(run.staticMerit!)).toBeCloseTo(-1, 1);
    }
  });

  test("fits its schema", () => {
    for (const run of BUDGETS) expect(RunBudget.safeParse(run).error?.issues ?? []).toEqual([]);
  });
});

describe("what would halve the interval", () => {
  test("is a calibration where the calibration rules, to less than half of what it is known to", () => {
    const facts = notebook([0, 48, 101, 172, 262, 0], { corrections: { thrust: { relativeUncertainty: 0.2 } } });
    const { halving } = budgetOf(facts).thrustCoefficient;
    expect(halving).toMatchObject({ single: true, causes: ["calibration of the thrust"] });
    expect(halving.factor!).toBeLessThan(0.5);
    expect(halving.sentence).toMatch(
      /^Calibrate the thrust to \d.*\s% \(now 20\s%, standard uncertainty\): that alone halves/,
    );
  });

  test("does halve it: one run again with the calibration it asks for", () => {
    const widthWith = (relativeUncertainty: number) => {
      const facts = notebook([0, 48, 101, 172, 262, 0], { corrections: { thrust: { relativeUncertainty } } });
      const { result, halving } = budgetOf(facts).thrustCoefficient;
      return { width: result.interval95[1] - result.interval95[0], factor: halving.factor! };
    };
    const before = widthWith(0.2);
    expect(widthWith(0.2 * before.factor).width / before.width).toBeCloseTo(0.5, 2);
  });

  test("names two causes where no single one does, and says how much is left where two do not", () => {
    const kinds = new Set(all().map(({ halving: { single, factor } }) => `${single} ${factor === null}`));
    expect(kinds.size).toBeGreaterThan(1);
    for (const { halving } of all()) {
      expect(halving.sentence).not.toMatch(/NaN|undefined|null/);
      expect(halving.causes.length).toBeGreaterThan(0);
    }
  });
});

function finished(facts: (typeof RUNS)[number], draws: number, seed: number) {
  const work = monteCarloOfRun(facts, { draws, seed });
  const told: number[] = [];
  for (;;) {
    const step = work.next();
    if (step.done) return { told, result: step.value };
    told.push(step.value);
  }
}

describe("the Monte Carlo check of a run", () => {
  test("agrees with the first order of JCGM 100 for runs as stands give them", () => {
    const results = RUNS.slice(0, 8).flatMap((facts) => finished(facts, DRAWS.usual, 1).result.results);
    expect(results.length).toBe(24);
    expect(results.filter(({ agrees }) => agrees).length).toBeGreaterThanOrEqual(22);
  });

  test("gives nearly the same interval as the first order where every doubt is small and well known", () => {
    for (const facts of RUNS.slice(0, 3)) {
      const [K] = finished(facts, 50_000, 4).result.results;
      const width = ([low, high]: readonly [number, number]) => high - low;
      expect(Math.abs(width(K!.interval95) / width(K!.firstOrder95) - 1)).toBeLessThan(0.1);
    }
  });

  test("shows what the first order can not: a diameter known to 10 % leans the thrust coefficient to large values", () => {
    const facts = notebook([0, 48, 101, 172, 262, 0]);
    const wide = runFactsOf({ ...requestOf(facts), propeller: propellerOf({ diameterUncertainty: 0.0076 }) });
    const [K] = finished(wide, 20_000, 2).result.results;
    // E[(1+e)^-4] = 1 + 10 s² for a small s: 10 % off for s = 10 %, and more by the next term.
    expect(K!.mean / wide.thrust.fit.coefficient).toBeGreaterThan(1.08);
    expect(K!.agrees).toBe(false);
    expect(K!.shortest95[1] - K!.shortest95[0]).toBeLessThan(K!.interval95[1] - K!.interval95[0]);
  });

  /** A scale of half a newton a step that stands still: nine tenths of the variance are one rectangle, common to all. */
  test("has the narrower interval of a rectangle where the step of the scale at rest rules", () => {
    const steps = Array.from({ length: 12 }, (_, i) => 41.3 + 0.37 * i);
    const still = { noiseFloor: 0.002, noisePart: 0, thrustStep: 0.5, rateNoise: 0.05 };
    const facts = runFactsOf({
      table: simulatedLog(quietStand({ ...still, steps, dwell: 3 }), uniformFrom(3)),
      recipe: recipeOf([
        ["time", "s"],
        ["thrust", "N"],
        ["rotationRate", "rev/s"],
        ["command", "us"],
      ]),
      propeller: propellerOf(),
      source: SOURCE,
    });
    const { rows, result } = budgetOf(facts).thrustCoefficient;
    expect(rows[0]).toMatchObject({ source: "tareResolution", distribution: "rectangular" });
    expect(rows[0]!.share).toBeCloseTo(0.922, 3);
    const [K] = finished(facts, 100_000, 3).result.results;
    /**
     * Half-width of a rectangle and a normal part, in standard uncertainties, the rectangle having 0.922 of the variance;
     * scipy 1.17.1: s = sqrt(.078/.922); h = sqrt(3); F = lambda x: quad(lambda r: norm.cdf((x-r)/s), -h, h)[0]/(2*h);
     * brentq(lambda x: F(x) - .975, .5, 4)/sqrt(1 + s*s) = 1.7251. First order: 1.9600.
     */
    const half = (K!.interval95[1] - K!.interval95[0]) / 2;
    expect(Math.abs(half / result.standardUncertainty / 1.7251 - 1)).toBeLessThan(0.01);
    expect(Math.abs(K!.standardUncertainty / result.standardUncertainty - 1)).toBeLessThan(0.01);
    expect(K!).toMatchObject({ agrees: false, settled: true });
  });

  test("gives the same numbers for the same seed, others for another, and tells its progress", () => {
    const [a, b, c] = [7, 7, 8].map((seed) => finished(RUNS[0]!, 2000, seed));
    expect(a).toEqual(b);
    expect(c!.result.results[0]!.mean).not.toBe(a!.result.results[0]!.mean);
    expect(a!.told).toEqual([0, 0.5]);
    expect(MonteCarlo.safeParse(a!.result).error?.issues ?? []).toEqual([]);
  });

  test("refuses so few draws that an end of the interval would rest on a handful", () => {
    expect(() => finished(RUNS[0]!, 10, 1)).toThrow("1000 to 1000000");
  });
});

function requestOf({ table, recipe, propeller }: (typeof RUNS)[number]) {
  return { table, recipe, propeller, source: SOURCE };
}

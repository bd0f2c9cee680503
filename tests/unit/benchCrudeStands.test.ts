import { describe, expect, test } from "vitest";
import type { Level } from "../../shared/bench/levels.ts";
import { pooledScatter, scatterAtRest } from "../../shared/bench/pooledScatter.ts";
import { isRamp } from "../../shared/bench/ramp.ts";
import { readingStep } from "../../shared/bench/readingStep.ts";
import { type SampleMean, sampleMean } from "../../shared/bench/sampleMean.ts";
import { settledFrom } from "../../shared/bench/settling.ts";
import { spikesIn } from "../../shared/bench/spikes.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { recipeOf, reduce, tableOf } from "./benchTable.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["command", "1"],
] as const;

/** Even noise from -0.5 to 0.5: Park & Miller, Communications of the ACM 31 (1988) 1192. */
function noiseFrom(start: number): () => number {
  let state = start;
  return () => {
    state = (16807 * state) % 2147483647;
    return state / 2147483647 - 0.5;
  };
}

interface Stand {
  readonly levels: readonly number[];
  readonly hold?: number;
  /** Time constant of the propeller, s. */
  readonly tau?: number;
  /** Zero of the scale at a part of the run, N. */
  readonly zero?: (part: number) => number;
}

/** A stand at 20 Hz with a known coefficient of 0.2 of a 76 mm propeller in fresh water; command 0 is rest. */
function standOf({ levels, hold = 6, tau = 0, zero = () => 0.5 }: Stand) {
  const noise = noiseFrom(7);
  const steps = [0, ...levels, 0];
  const columns = { time: [] as number[], thrust: [] as number[], rate: [] as number[], command: [] as number[] };
  const rows = 20 * hold;
  let n = 0;
  steps.forEach((level, step) => {
    for (let k = 0; k < rows; k++) {
      const target = 100 * level;
      n = tau === 0 ? target : n + (target - n) * (1 - Math.exp(-1 / (20 * tau)));
      const part = (step * rows + k) / (rows * steps.length);
      columns.time.push((step * rows + k) / 20);
      columns.command.push(level);
      columns.rate.push(n + (n > 1 ? 0.05 * noise() : 0));
      columns.thrust.push(0.2 * 998.6 * n * n * 0.0762 ** 4 + zero(part) + 0.05 * noise());
    }
  });
  return columns;
}

const codesOf = (reduction: ReturnType<typeof reduce>) => reduction.warnings.map(({ code }) => code);

describe("a throttle that is written with no more digits than its steps need", () => {
  test.each([
    { name: "tenths", factor: 1, resolution: 0.1 },
    { name: "whole numbers from 0 to 10", factor: 10, resolution: 1 },
  ])("in $name gives every held step", ({ factor, resolution }) => {
    const columns = standOf({ levels: [0.2, 0.3, 0.4, 0.5, 0.6] });
    const command = columns.command.map((level) => level * factor);
    const table = tableOf({ ...columns, command }, { resolutions: [null, null, null, resolution] });
    const reduction = reduce({ table, recipe: recipeOf(USES) });
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.plateaus.every(({ foundBy }) => foundBy === "command")).toBe(true);
  });

  test("that climbs without steps leaves the rotation rate to tell the held ones", () => {
    const columns = standOf({ levels: [0.2, 0.3, 0.4, 0.5, 0.6] });
    const command = columns.time.map((time) => (time < 6 || time > 36 ? 0 : time / 60));
    const reduction = reduce({ table: tableOf({ ...columns, command }), recipe: recipeOf(USES) });
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.plateaus.every(({ foundBy }) => foundBy === "rotationRate")).toBe(true);
  });
});

test("a held step that is too short once it has settled is told, with what to do", () => {
  // The step from rest takes longest to settle.
  const columns = standOf({ levels: [0.8, 0.7, 0.6, 0.5], hold: 4, tau: 0.3 });
  const recipe = recipeOf(USES, { plateaus: { mode: "automatic", minimumDuration: 2.4 } });
  const reduction = reduce({ table: tableOf(columns), recipe });
  const late = reduction.rejected.filter(({ because }) => because === "too short once it had settled");
  expect([reduction.plateaus.length, late.length]).toEqual([3, 1]);
  expect(codesOf(reduction)).toContain("bench.settled-too-late");
});

test("a zero that wanders out and back between two rests widens the coefficient to contain the truth, and is told", () => {
  const columns = standOf({
    levels: [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8],
    zero: (part) => 0.5 + 0.6 * Math.sin(Math.PI * part),
  });
  const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES) });
  const truth = (0.2 * 0.0762 ** 4) / 0.076 ** 4;
  const [low, high] = reduction.thrustCoefficient.interval95;
  expect(low).toBeLessThan(truth);
  expect(high).toBeGreaterThan(truth);
  const message = reduction.warnings.find(({ code }) => code === "bench.scatter")!.message;
  expect(message).toContain("log a rest between the steps too");
});

describe("wild readings", () => {
  const steady = (count: number) => {
    const noise = noiseFrom(11);
    return Float64Array.from({ length: count }, () => 20 + noise());
  };

  test("that stand as exact 0 amid thousands are drop-outs, up to every fifth one", () => {
    const values = steady(200).map((value, i) => (i % 5 === 2 ? 0 : value));
    expect(spikesIn(values, 0, 0).glitches).toHaveLength(40);
  });

  test("that come singly and from far are glitches although they are more than one in twenty", () => {
    const values = steady(200).map((value, i) => (i % 12 === 3 ? value + 300 : value));
    expect(spikesIn(values, 0).glitches).toHaveLength(17);
  });

  test("in a row at the start are the end of the step before, and no glitch", () => {
    const values = steady(200).map((value, i) => (i < 3 ? value - 40 / (i + 1) : value));
    const { glitches, tails } = spikesIn(values, 0);
    expect([glitches.length, tails.length]).toEqual([0, 3]);
  });

  test("are none in the slow end of a step, long or short, and a spike upon it is still one", () => {
    const passing = steady(400).map((value, i) => value - 30 * Math.exp(-i / 20));
    expect(spikesIn(passing, 0).glitches).toEqual([]);
    const struck = passing.map((value, i) => (i === 200 || i === 300 ? value + 40 : value));
    expect(spikesIn(struck, 0).glitches).toEqual([200, 300]);
  });

  test("in the last hundredth of a long stretch are of the next step, wherever missing readings lie", () => {
    const long = steady(4000).map((value, i) => (i > 3980 && i % 7 === 0 ? value + 20 : i % 3 ? value : Number.NaN));
    expect(spikesIn(long, 0).glitches).toEqual([]);
  });

  test("that are too many and hang together are let stand, and counted", () => {
    const values = steady(200).map((value, i) => (i > 80 && i < 120 ? value + 300 : value));
    expect(spikesIn(values, 0)).toEqual({ glitches: [], tails: [], kept: 39 });
  });
});

describe("the step of a reading", () => {
  const noise = noiseFrom(3);
  const raw = Float64Array.from({ length: 500 }, () => 400 + 40 * noise());
  test.each([
    { name: "5 g of a scale that prints tenths", step: 5 },
    { name: "0.4 g of a converter that prints tenths", step: 0.4 },
  ])("is found: $name", ({ step }) => {
    const near = raw.map((value) => 400 + (value - 400) * (step / 20));
    const values = near.map((value) => Math.round((Math.round(value / step) * step) / 0.1) * 0.1);
    expect(readingStep(values, 0.1)).toBeCloseTo(step, 6);
  });

  test("is the last decimal where the readings take every value, and where they hardly change", () => {
    expect(
      readingStep(
        raw.map((value) => Math.round(value * 10) / 10),
        0.1,
      ),
    ).toBe(0.1);
    const quiet = Float64Array.from({ length: 500 }, (_, i) => 100 * Math.floor(i / 100));
    expect(readingStep(quiet, 0.1)).toBe(0.1);
  });
});

describe("readings that hang together", () => {
  /** First-order autoregression of coefficient 0.97: 65 readings for one. */
  const slow = (start: number, count: number) => {
    const noise = noiseFrom(start);
    let value = 0;
    return Float64Array.from({ length: 400 + count }, () => {
      value = 0.97 * value + noise();
      return value;
    }).subarray(400);
  };
  const means = [1, 2, 3, 4, 5, 6, 7, 8].map((start) => sampleMean(slow(start, 200), 0));

  test("are not believed to be independent in one plateau that shows little of it by chance", () => {
    const others = Array.from({ length: 400 }, (_, i) => sampleMean(slow(20 + i, 200), 0));
    const shown = (mean: SampleMean) => mean.scatter / mean.standardDeviation;
    const lucky = others.reduce((least, mean) => (shown(mean) < shown(least) ? mean : least));
    const pooled = pooledScatter([...means, lucky]);
    // 65 readings for one, of which 200 hold three: three tenths of the standard deviation at least is left in the mean.
    for (const [i, mean] of [...means, lucky].entries()) {
      expect(pooled[i]!.scatter).toBeGreaterThan(0.3 * mean.standardDeviation);
    }
    expect(shown(lucky)).toBeLessThan(0.3);
  });

  test("beside noise of its own that is stronger in some are told apart: each mean has its own doubt", () => {
    const white = Array.from({ length: 8 }, (_, i) => noiseFrom(200 + i));
    const strengths = [3, 3, 3, 3, 0.1, 0.1, 0.1, 0.1];
    const mixed = strengths.map((strength, i) =>
      sampleMean(
        slow(i + 1, 200).map((value) => strength * value + 3 * white[i]!()),
        0,
      ),
    );
    const parts = pooledScatter(mixed).map(({ scatter }, i) => scatter / mixed[i]!.standardDeviation);
    // Exact: sqrt((1 + part · 50)/200) with the part of the variance that is slow, 0.94 and 0.02: 0.49 and 0.10. Alike they
    // would all have 0.35; few series of few slow readings part them half the way or more.
    for (const part of parts.slice(4)) expect(part).toBeLessThan(0.26);
    for (const part of parts.slice(0, 4)) expect(part).toBeGreaterThan(0.35);
  });

  test("give means whose doubt is known from few of them: all share the degrees of freedom of one estimate", () => {
    for (const { degreesOfFreedom } of pooledScatter(means)) expect(degreesOfFreedom).toBeLessThan(10);
    const loose = [1, 2, 3, 4].map((start) => sampleMean(Float64Array.from({ length: 200 }, noiseFrom(start)), 0));
    for (const { degreesOfFreedom } of pooledScatter(loose)) expect(degreesOfFreedom).toBeGreaterThan(30);
  });

  test("at rest as when running tell the rests how slowly the scale wanders; turbulence of the run does not", () => {
    const rest = sampleMean(slow(100, 80), 0);
    const faint = { ...rest, standardDeviation: 0.1 * means[0]!.standardDeviation };
    expect(scatterAtRest([faint], means)[0]!.scatter).toBeCloseTo(rest.scatter, 12);
    const asLoud = { ...rest, standardDeviation: means[0]!.standardDeviation };
    expect(scatterAtRest([asLoud], means)[0]!.scatter).toBeGreaterThan(1.5 * asLoud.scatter);
  });
});

describe("thousands marks", () => {
  const valuesOf = (text: string) => {
    const { columns } = readLog(new TextEncoder().encode(text), "typed.csv");
    return columns.map((column) => [...column]);
  };

  test.each([
    { name: "quoted, between commas", text: '"rpm","thrust (g)"\n"1,780","537"\n"2,520","1,076"\n' },
    { name: "points, between semicolons", text: "rpm;thrust [g]\n1.780;537\n2.520;1.076\n" },
    { name: "a drawn table", text: "rpm | thrust (g)\n--- | ---\n1,780 | 537\n2,520 | 1,076\n" },
  ])("are read where a column of whole numbers below 1000 proves them: $name", ({ text }) => {
    expect(valuesOf(text)).toEqual([
      [1780, 2520],
      [537, 1076],
    ]);
  });

  test("are not seen in decimals that begin with 0 or have other numbers of digits", () => {
    expect(valuesOf("rpm;thrust [kg]\n1780;0,537\n2520;1,076\n")[1]).toEqual([0.537, 1.076]);
    expect(valuesOf("rpm;thrust [kg]\n1780;0,54\n2520;1,076\n")[1]).toEqual([0.54, 1.076]);
  });
});

describe("a stretch", () => {
  const noisy = (count: number, start: number) => {
    const noise = noiseFrom(start);
    return Float64Array.from({ length: count }, () => 20 + noise() + noise() + noise());
  };

  test("of plain noise is settled: fewer than one in two hundred passes for moving", () => {
    const moving = Array.from({ length: 1000 }, (_, i) => settledFrom(noisy(60, 4711 + 97 * i), { tolerance: 0 }));
    expect(moving.filter((from) => from === null).length).toBeLessThan(5);
  });

  test("in which every tenth reading is a spike is settled as early as without them", () => {
    const values = noisy(160, 5).map((value, i) => (i % 10 === 3 ? value + 300 : value));
    expect(settledFrom(values, { tolerance: 0.05 })).toBeLessThan(40);
  });

  test("that runs up for a quarter of its length is settled after that, and one that runs up for half of it is not", () => {
    const runUp = (until: number) =>
      noisy(160, 5).map((value, i) => (i < until ? value - 30 * (1 - i / until) : value));
    expect(settledFrom(runUp(40), { tolerance: 0.05 })).toBeGreaterThanOrEqual(36);
    expect(settledFrom(runUp(86), { tolerance: 0.05 })).toBeNull();
  });
});

describe("levels that follow one another in one direction", () => {
  const LENGTH = 100;
  const levelsIn = (signal: Float64Array) =>
    Array.from({ length: signal.length / LENGTH }, (_, i): Level => {
      const [first, end] = [i * LENGTH, (i + 1) * LENGTH];
      return { first, end, mean: signal.subarray(first, end).reduce((sum, value) => sum + value, 0) / LENGTH };
    });
  const ramps = (valueAt: (step: number, at: number) => number) => {
    const signal = Float64Array.from({ length: 6 * LENGTH }, (_, i) => valueAt(Math.floor(i / LENGTH), i % LENGTH));
    const levels = levelsIn(signal);
    return levels.map(({ first }, i) => isRamp(levels, i, signal, first + LENGTH / 2));
  };

  test("by equal steps that each settle with a twentieth of their length are no ramp", () => {
    expect(ramps((step, at) => step + 1 - Math.exp(-at / (LENGTH / 20)))).not.toContain(true);
  });

  test("are a ramp where the signal climbs evenly all along", () => {
    expect(ramps((step, at) => step + at / LENGTH)).not.toContain(false);
  });
});

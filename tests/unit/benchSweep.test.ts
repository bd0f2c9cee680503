import { describe, expect, test } from "vitest";
import { sweepInWords } from "../../shared/bench/sweepInWords.ts";
import { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { type Ramp, simulatedRamp } from "../property/benchSimulatedRamp.ts";
import { uniformFrom } from "../property/benchSimulatedRun.ts";
import { recipeOf, reduce, tableOf } from "./benchTable.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
] as const;

const RAMP: Ramp = {
  thrustCoefficient: 0.2,
  samplingRate: 20,
  topRate: 45,
  rise: 40,
  fall: 40,
  rest: 5,
  noiseFloor: 0.05,
  correlationTime: 0.1,
  rateNoise: 0.05,
  lag: 0.15,
  zero: 0.8,
  drift: 0.1,
  bend: 1,
};
const reduced = (more: Partial<Ramp> = {}, recipe: object = {}) =>
  reduce({
    table: tableOf(simulatedRamp({ ...RAMP, ...more }, uniformFrom(3))),
    recipe: recipeOf(USES, { plateaus: { mode: "sweep" }, ...recipe }),
  });
const codes = ({ warnings }: Reduction) => warnings.map(({ code }) => code);

describe("a slow ramp up and down", () => {
  const reduction = reduced();

  test("gives the coefficient and the lag that made it, from the whole trace", () => {
    const [low, high] = reduction.thrustCoefficient.interval95;
    expect(low).toBeLessThan(0.2);
    expect(high).toBeGreaterThan(0.2);
    expect(high - low).toBeLessThan(0.004);
    expect(Math.abs(reduction.sweep!.lag.value - 0.15)).toBeLessThan(0.05);
    expect(reduction.sweep!.converged).toBe(true);
  });

  test("shows bins of rotation rate, flagged as such, and is a document of the model", () => {
    expect(reduction.plateaus.length).toBeGreaterThan(15);
    expect(reduction.plateaus.every(({ foundBy }) => foundBy === "binned")).toBe(true);
    expect(Reduction.parse(JSON.parse(JSON.stringify(reduction)))).toEqual(reduction);
    expect(reduction.thrustFit.coefficient).toEqual(reduction.thrustCoefficient);
  });

  test("parts the ways up and down, also in the bin in which the ramp turns round", () => {
    expect(reduction.plateaus.some(({ span }) => span.start < 44.5 && span.end > 45.5)).toBe(false);
    for (const { thrust } of reduction.plateaus) expect(thrust.standardUncertainty).toBeLessThan(0.05);
  });

  test("names its method, its lag and both ways", () => {
    const text = sweepInWords(reduction).join(" ");
    expect(text).toContain("Prais & Winsten 1954");
    expect(text).toMatch(/Thrust comes 0\.1\d* ± 0\.0\d+\ss after the rotation rate/);
    expect(text).toMatch(/way up would give 0\.\d+ ± 0\.\d+ and the way down 0\.\d+ ± 0\.\d+, 1\.\d\s% apart/);
  });

  test("carries calibration, diameter and zero of the scale as plateaus do", () => {
    const calibrated = reduced({}, { corrections: { thrust: { relativeUncertainty: 0.01 } } });
    const change = Math.sqrt(
      calibrated.thrustCoefficient.standardUncertainty ** 2 - reduction.thrustCoefficient.standardUncertainty ** 2,
    );
    expect(change).toBeCloseTo(0.002, 4);
    expect(reduction.thrustFit.components.map(({ name }) => name).join()).toContain("zero of the scale");
  });

  test("scales: thrust twice as great gives twice the coefficient and the same lag", () => {
    const doubled = reduced({}, { corrections: { thrust: { factor: 2 } } });
    expect(doubled.thrustCoefficient.value).toBeCloseTo(2 * reduction.thrustCoefficient.value, 9);
    expect(doubled.sweep!.lag.value).toBeCloseTo(reduction.sweep!.lag.value, 6);
  });
});

test("a ramp too fast for its lag is told with the difference between up and down", () => {
  const fast = reduced({ rise: 8, fall: 8, lag: 0.3 });
  expect(codes(fast)).toContain("bench.sweep-too-fast");
  expect(fast.sweep!.lagEffect).toBeLessThan(-0.05);
  const [low, high] = fast.thrustCoefficient.interval95;
  expect(low).toBeLessThan(0.2);
  expect(high).toBeGreaterThan(0.2);
  expect(codes(reduced())).not.toContain("bench.sweep-too-fast");
});

test("a scale that fades on the way down passes for thrust ahead of the rate; that is told, and the interval reaches halfway to both ways", () => {
  const sticky = reduced({ friction: 0.05, lag: 0 });
  expect(codes(sticky)).toContain("bench.sweep-early-thrust");
  const { value, standardUncertainty } = sticky.thrustCoefficient;
  expect(value).toBeGreaterThan(0.19);
  expect(value).toBeLessThan(0.2);
  expect(standardUncertainty).toBeGreaterThan((0.02 * value) / Math.sqrt(3));
});

test("a ramp one way says so, and its interval still holds the truth", () => {
  const up = reduced({ fall: 0 });
  expect(codes(up)).toContain("bench.sweep-one-way");
  expect(up.sweep!.down).toBeNull();
  const [low, high] = up.thrustCoefficient.interval95;
  expect(low).toBeLessThan(0.2);
  expect(high).toBeGreaterThan(0.2);
});

test("without a rest the zero is fitted with the thrust, and that is told", () => {
  const bare = reduced({ drift: 0 }, { tare: { mode: "none" } });
  expect(bare.sweep!.freeZero).toBe(true);
  expect(codes(bare)).toContain("bench.sweep-free-zero");
  const [low, high] = bare.thrustCoefficient.interval95;
  expect(low).toBeLessThan(0.2);
  expect(high).toBeGreaterThan(0.2);
});

test("a stretch left out with a reason does not count in the regression", () => {
  const whole = reduced();
  const part = reduced({}, { leftOut: [{ start: 40, end: 50, reason: "something caught on the blades" }] });
  expect(part.sweep!.blocks).toBeLessThan(whole.sweep!.blocks);
  expect(part.plateaus.some(({ used }) => !used)).toBe(true);
});

const refusal = (action: () => unknown) => {
  try {
    action();
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown.problem;
  }
  return null;
};

test("a log without clock can not be a sweep, nor can one of a few held rows", () => {
  const { thrust, rate } = simulatedRamp(RAMP, uniformFrom(3));
  const recipe = recipeOf(USES.slice(1), { plateaus: { mode: "sweep" } });
  expect(refusal(() => reduce({ table: tableOf({ thrust, rate }), recipe }))?.code).toBe("bench.sweep-without-clock");
  const short = { rise: 0.5, fall: 0.5, samplingRate: 10 };
  expect(refusal(() => reduced(short))?.code).toBe("bench.sweep-too-short");
});

test("a ramp that is searched for plateaus is refused with the offer of a sweep", () => {
  const problem = refusal(() => reduced({}, { plateaus: { mode: "automatic" } }))!;
  expect(problem.code).toBe("bench.ramp-without-plateaus");
  expect(problem.mend).toContain("sweep");
});

import { describe, expect, test } from "vitest";
import { randomSource } from "../../samples/generator/random.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { recipeOf, reduce, tableOf } from "./benchTable.ts";

const DIAMETER = 0.076;
const DENSITY = fluidProperties({ kind: "fresh", temperature: 291.15 }).density;
/** An invented propeller: K_T(J) and C_P(J). */
const K_T = (J: number) => 0.28 - 0.22 * J - 0.12 * J ** 2;
const C_P = (J: number) => 0.21 - 0.06 * J - 0.13 * J ** 2;

interface Step {
  readonly speed: number;
  /** rev/s; negative: turning astern, with 0.6 of the thrust and the power of C_P(0). */
  readonly rate: number;
  readonly command?: number;
}

/** Rest, the steps of 6 s each with 2 s on the way from speed to speed, rest; 20 readings a second. */
function towColumns(steps: readonly Step[], { signed = false, noise = 1 } = {}) {
  const random = randomSource(7, 3);
  const columns = { time: [], thrust: [], torque: [], rate: [], speed: [], command: [] } as Record<string, number[]>;
  let time = 0;
  const add = (speed: number, rate: number, command: number) => {
    const n = Math.abs(rate);
    const J = n > 0 ? speed / (n * DIAMETER) : 0;
    const thrust = (rate < 0 ? -0.6 * K_T(0) : K_T(J)) * DENSITY * n ** 2 * DIAMETER ** 4;
    const torque = ((rate < 0 ? C_P(0) : C_P(J)) / (2 * Math.PI)) * DENSITY * n ** 2 * DIAMETER ** 5;
    columns.time!.push(Math.round(time * 1000) / 1000);
    columns.thrust!.push((n > 0 ? thrust : 0) + 0.3 + 0.02 * noise * random.normal());
    columns.torque!.push((n > 0 ? torque : 0) + 2e-4 * noise * random.normal());
    columns.rate!.push((signed ? rate : n) * (1 + 5e-4 * noise * random.normal()));
    columns.speed!.push(speed + 0.003 * noise * random.normal());
    columns.command!.push(command);
    time += 0.05;
  };
  const rest = () => {
    for (let i = 0; i < 80; i++) add(0, 0, 1500);
  };
  rest();
  let before = 0;
  for (const { speed, rate, command = 1500 + 10 * rate } of steps) {
    if (speed !== before) for (let i = 0; i < 40; i++) add(before + ((speed - before) * i) / 40, rate, command);
    for (let i = 0; i < 120; i++) add(speed, rate, command);
    before = speed;
  }
  rest();
  return columns;
}

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["torque", "N·m"],
  ["rotationRate", "rev/s"],
  ["advanceSpeed", "m/s"],
  ["command", "us"],
] as const;
const UNSIGNED = USES.map(([role, unit]) =>
  role === "command" ? (["ignore", "1"] as const) : ([role, unit] as const),
);
const STILL = USES.map(([role, unit]) =>
  role === "advanceSpeed" ? (["ignore", "1"] as const) : ([role, unit] as const),
);

const codes = ({ warnings }: Reduction) => warnings.map(({ code }) => code);
const covers = ({ interval95: [low, high] }: { interval95: readonly [number, number] }, truth: number) =>
  low <= truth && truth <= high;

const TOW = [0, 0.6, 1.2, 1.8, 2.4, 3].map((speed) => ({ speed, rate: 50 }));

describe("a carriage that steps its speed under a constant throttle", () => {
  const reduction = reduce({ table: tableOf(towColumns(TOW)), recipe: recipeOf(USES) });
  const advance = reduction.advance!;

  test("gives a plateau a speed", () => {
    expect(reduction.plateaus.map(({ used }) => used)).toEqual(TOW.map(() => true));
    expect(advance.points.map(({ speed }) => Number(speed.value.toFixed(1)))).toEqual(TOW.map(({ speed }) => speed));
    expect(advance.speedFrom).toBe("column");
  });

  test("gives curves of the second order that hold the propeller", () => {
    expect(advance.thrustCurve).toMatchObject({ order: 2, orderFrom: "informationCriterion", converged: true });
    for (const { advanceRatio: J, thrustCoefficient, powerCoefficient } of advance.samples) {
      expect(Math.abs(thrustCoefficient.value - K_T(J))).toBeLessThan(3 * thrustCoefficient.standardUncertainty);
      expect(Math.abs(powerCoefficient!.value - C_P(J))).toBeLessThan(3 * powerCoefficient!.standardUncertainty);
    }
  });

  test("takes the bollard coefficient from the plateau at rest, without an exponent", () => {
    expect(advance.bollard).toBe("plateaus");
    expect(covers(reduction.thrustCoefficient, 0.28)).toBe(true);
    expect(reduction.exponent).toBeNull();
  });

  test("finds zero thrust beyond the plateaus, and says so", () => {
    // Root of 0.28 - 0.22 J - 0.12 J² by the quadratic formula.
    const root = (-0.22 + Math.sqrt(0.22 ** 2 + 4 * 0.12 * 0.28)) / (2 * 0.12);
    expect(advance.zeroThrust!.isExtrapolated).toBe(true);
    expect(Math.abs(advance.zeroThrust!.advanceRatio.value - root)).toBeLessThan(0.05);
    expect(codes(reduction)).toContain("bench.zero-thrust-continued");
  });

  test("is a document of the model, and stays one through JSON", () => {
    expect(Reduction.parse(JSON.parse(JSON.stringify(reduction)))).toEqual(reduction);
  });

  test("shares the error of the speed between all plateaus, which is told where no one stated it", () => {
    expect(codes(reduction)).toContain("bench.no-speed-uncertainty");
    const recipe = recipeOf(USES, { corrections: { advanceSpeed: { relativeUncertainty: 0.02 } } });
    const stated = reduce({ table: tableOf(towColumns(TOW)), recipe });
    expect(codes(stated)).not.toContain("bench.no-speed-uncertainty");
    const [before, after] = [reduction, stated].map(({ advance: found }) => found!.zeroThrust!.advanceRatio);
    const added = Math.sqrt(after!.standardUncertainty ** 2 - before!.standardUncertainty ** 2);
    expect(added / after!.value).toBeCloseTo(0.02, 3);
    expect(stated.thrustCoefficient.standardUncertainty).toBeCloseTo(
      reduction.thrustCoefficient.standardUncertainty,
      9,
    );
  });
});

describe("speeds that no column holds", () => {
  const sweep = [20, 25, 30, 40, 50, 60].map((rate) => ({ speed: 1, rate }));

  test("one speed for a throttle sweep gives the curve of a run with a column", () => {
    const recipe = recipeOf(STILL, { advanceSpeeds: { mode: "constant", speed: 1, relativeUncertainty: 0.01 } });
    const { advance } = reduce({ table: tableOf(towColumns(sweep)), recipe });
    expect(advance!.speedFrom).toBe("recipe");
    for (const { advanceRatio, thrustCoefficient } of advance!.points)
      expect(Math.abs(thrustCoefficient.value - K_T(advanceRatio.value))).toBeLessThan(0.004);
  });

  test("speeds by spans of time go to the plateaus inside, and the others are at rest", () => {
    const steps = [0, 0.8, 1.6, 2.4].map((speed) => ({ speed, rate: 50 }));
    const { time, speed } = towColumns(steps, { noise: 0 });
    const spans = steps.slice(1).map(({ speed: wanted }) => {
      const inside = time!.filter((_, i) => Math.abs(speed![i]! - wanted) < 1e-9);
      return { start: inside[0]!, end: inside.at(-1)!, speed: wanted };
    });
    const held = spans.map(({ start, end }) => ({ start: start + 0.5, end: end - 0.5 }));
    const recipe = recipeOf(STILL, {
      advanceSpeeds: { mode: "spans", spans },
      plateaus: { mode: "spans", spans: [{ start: 5, end: 9 }, ...held] },
    });
    const { advance } = reduce({ table: tableOf(towColumns(steps)), recipe });
    expect(advance!.points.map((point) => point.speed.value)).toEqual([0, 0.8, 1.6, 2.4]);
    expect(advance!.bollard).toBe("plateaus");
  });

  test("a column and stated speeds together are refused", () => {
    const recipe = recipeOf(USES, { advanceSpeeds: { mode: "constant", speed: 1 } });
    expect(() => reduce({ table: tableOf(towColumns(sweep)), recipe })).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "bench.speed-twice" }) }),
    );
  });
});

describe("a run at rest", () => {
  const steps = [20, 30, 40, 50].map((rate) => ({ speed: 0, rate }));

  test("with a column of speeds near zero is a bollard run", () => {
    const [withSpeed, without] = [USES, STILL].map((uses) =>
      reduce({ table: tableOf(towColumns(steps)), recipe: recipeOf(uses) }),
    );
    expect(withSpeed!.advance).toBeNull();
    expect(withSpeed!.thrustCoefficient.value).toBeCloseTo(without!.thrustCoefficient.value, 6);
    expect(withSpeed!.exponent!.value).toBeCloseTo(2, 2);
  });

  test("with one plateau at speed keeps that out of the line, and says so", () => {
    const reduction = reduce({
      table: tableOf(towColumns([...steps, { speed: 1.5, rate: 50 }])),
      recipe: recipeOf(USES),
    });
    expect(reduction.advance).toBeNull();
    expect(covers(reduction.thrustCoefficient, 0.28)).toBe(true);
    expect(codes(reduction)).toContain("bench.advance-left-out");
  });
});

test("a stated order is kept, one beyond the plateaus is refused", () => {
  const table = tableOf(towColumns(TOW.slice(1, 4)));
  const linear = reduce({ table, recipe: recipeOf(USES, { advanceOrder: 1 }) });
  expect(linear.advance!.thrustCurve).toMatchObject({ order: 1, orderFrom: "stated" });
  expect(codes(linear)).toContain("bench.bollard-continued");
  expect(() => reduce({ table, recipe: recipeOf(USES, { advanceOrder: 4 }) })).toThrow(
    expect.objectContaining({ problem: expect.objectContaining({ code: "bench.advance-order" }) }),
  );
});

test("plateaus of nearly one advance ratio make no curve: refused with the ratios that were found", () => {
  const table = tableOf(towColumns([1, 1.02, 1.04].map((speed) => ({ speed, rate: 50 }))));
  expect(() => reduce({ table, recipe: recipeOf(USES) })).toThrow(InputProblem);
});

describe("plateaus that turn astern", () => {
  const steps = [30, 40, 50, -30, -40, -50].map((rate) => ({ speed: 0, rate }));

  test.each([
    { told: "the sign of the rotation rate", foundBy: "rotationRate", uses: UNSIGNED, signed: true },
    { told: "the command below its idle value", foundBy: "command", uses: USES, signed: false },
    { told: "the sign of the thrust", foundBy: "thrust", uses: UNSIGNED, signed: false },
  ])("told by $told are reduced apart", ({ foundBy, uses, signed }) => {
    const reduction = reduce({ table: tableOf(towColumns(steps, { signed })), recipe: recipeOf(uses) });
    expect(covers(reduction.thrustCoefficient, 0.28)).toBe(true);
    expect(reduction.reverse).toMatchObject({ foundBy, plateaus: [4, 5, 6] });
    expect(covers(reduction.reverse!.thrustCoefficient, 0.6 * 0.28)).toBe(true);
    expect(covers(reduction.reverse!.toForward, 0.6)).toBe(true);
    expect(reduction.reverse!.powerCoefficient!.value).toBeCloseTo(0.21, 2);
    expect(codes(reduction)).toContain("bench.reverse");
  });

  test("the calibration of the scale cancels in the ratio astern over ahead", () => {
    const recipe = recipeOf(USES, { corrections: { thrust: { relativeUncertainty: 0.05 } } });
    const { reverse } = reduce({ table: tableOf(towColumns(steps)), recipe });
    expect(reverse!.thrustCoefficient.standardUncertainty / reverse!.thrustCoefficient.value).toBeGreaterThan(0.05);
    expect(reverse!.toForward.standardUncertainty / reverse!.toForward.value).toBeLessThan(0.01);
  });

  test("a towed propeller that is driven beyond zero thrust does not count as turning astern", () => {
    const beyond = [0, 1.5, 3, 4.2, 4.8].map((speed) => ({ speed, rate: 50 }));
    const { reverse, advance } = reduce({ table: tableOf(towColumns(beyond)), recipe: recipeOf(UNSIGNED) });
    expect(reverse).toBeNull();
    expect(advance!.zeroThrust!.isExtrapolated).toBe(false);
    expect(advance!.points.at(-1)!.thrustCoefficient.value).toBeLessThan(0);
  });
});

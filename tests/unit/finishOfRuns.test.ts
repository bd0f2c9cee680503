import { describe, expect, test } from "vitest";
import { finishOfRuns } from "../../shared/compare/finishOfRuns.ts";
import type { Plateau } from "../../shared/model/reduction.ts";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { type RunSketch, run } from "./compareRuns.ts";

const BLADE = {
  given: "outline",
  outline: { diameter: 0.076, bladeCount: 3, pitchRatio: 0.9, chordAt07: 0.02 },
} as const;
const plateau = (rate: number, used = true) => ({ used, rotationRate: uncertain(rate, 0) }) as Plateau;
const PLATEAUS = [plateau(40), plateau(60), plateau(500, false)];
const sketched = (name: string, sketch: Partial<RunSketch>) => ({
  name,
  reduction: run({ thrustCoefficient: 0.3, powerCoefficient: 0.28, independent: 0.004, plateaus: PLATEAUS, ...sketch }),
});

describe("the question that two runs ask", () => {
  const common = { "diameter:76": 0.005, "calibration:1": 0.01 };
  const { finishes, rotationRate } = finishOfRuns(BLADE, [
    sketched("as printed", { common }),
    sketched("sanded", { thrustCoefficient: 0.34, common: { "diameter:76": 0.005, "calibration:2": 0.02 } }),
  ]);
  const [before, after] = finishes.map(({ measured }) => measured[0]!);

  test("has the torque coefficient of the power, C_P/2π, and the whole doubt of each", () => {
    expect(before!.torqueCoefficient.value).toBeCloseTo(0.28 / (2 * Math.PI), 12);
    expect(before!.thrustCoefficient.standardUncertainty).toBeCloseTo(0.3 * Math.hypot(0.004, 0.005, 0.01), 12);
  });

  test("shares only causes that both runs have under one key", () => {
    expect(before!.thrustCoefficient.commonUncertainty).toBeCloseTo(0.3 * 0.005, 12);
    expect(after!.thrustCoefficient.commonUncertainty).toBeCloseTo(0.34 * 0.005, 12);
  });

  test("correlates thrust and torque through the causes that reach both", () => {
    const shared = 0.005 ** 2 + 0.01 ** 2;
    expect(before!.correlation).toBeCloseTo(shared / (shared + 0.004 ** 2), 9);
  });

  test("stands at the mean rotation rate of the plateaus that count", () => {
    expect(rotationRate).toBe(50);
  });

  test("has an answer", () => {
    const question = finishOfRuns(BLADE, [sketched("as printed", { common }), sketched("sanded", { common })]);
    expect(finishFit(question).finishes).toHaveLength(2);
  });
});

test("a run without torque is refused by its name", () => {
  const { powerFit: _, ...rest } = sketched("sanded", {}).reduction;
  const without = { name: "sanded", reduction: { ...rest, powerFit: null } };
  expect(() => finishOfRuns(BLADE, [sketched("as printed", {}), without])).toThrow(
    expect.objectContaining({ problem: expect.objectContaining({ code: "compare.no-torque", where: "sanded" }) }),
  );
});

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { sampleLogs } from "../../samples/generator/logs.ts";
import { TRUE_FALL, TRUE_PROPELLERS } from "../../samples/generator/truth.ts";
import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { Recipe } from "../../shared/model/recipe.ts";

/** The reference is the generator's own input, which no code under test has read. */
const FILE = "tow-pitch-1-0.csv";
const RUN = DEMO.runs.find(({ file }) => file === FILE)!;
const AT_REST = sampleLogs().find(({ fileName }) => fileName === FILE)!.truth;

/** Of pitch ratio 1.0: roots of 1 - 0.8 J - 0.31 J² and of dη/dJ = 0, by hand from the quadratic formula and by scan. */
const fall = ([linear, square]: readonly [number, number], J: number) => 1 + linear * J + square * J ** 2;
const K_T = (J: number) => AT_REST.thrustCoefficient * fall(TRUE_FALL.thrust, J);
const K_Q = (J: number) => AT_REST.torqueCoefficient * fall(TRUE_FALL.torque, J);
const eta = (J: number) => (J * K_T(J)) / (2 * Math.PI * K_Q(J));
const ZERO = (-0.8 + Math.sqrt(0.8 ** 2 + 4 * 0.31)) / (2 * 0.31);
const BEST = Array.from({ length: 9000 }, (_, i) => i * 1e-4).reduce((a, b) => (eta(b) > eta(a) ? b : a));

const reduction = reduceRun({
  table: readLog(new Uint8Array(readFileSync(new URL(`../../samples/logs/${FILE}`, import.meta.url))), FILE),
  recipe: Recipe.parse(RUN.recipe),
  propeller: Propeller.parse(DEMO.propellers[RUN.propeller!]),
  source: { sha256: "0".repeat(64), program: "test" },
});
const advance = reduction.advance!;

const holds = ({ interval95: [low, high] }: { interval95: readonly [number, number] }, truth: number) =>
  low <= truth && truth <= high;

describe("the towed demonstration log", () => {
  test("gives a plateau for each speed of the carriage, one of them at rest", () => {
    expect(advance.points).toHaveLength(10);
    expect(advance.points.filter(({ isAtRest }) => isAtRest)).toHaveLength(1);
    expect(advance.bollard).toBe("plateaus");
  });

  test("the bands hold the true curves at nine in ten advance ratios or more", () => {
    const { samples } = advance;
    const share = (hits: boolean[]) => hits.filter(Boolean).length / hits.length;
    expect(
      share(samples.map(({ advanceRatio: J, thrustCoefficient }) => holds(thrustCoefficient, K_T(J)))),
    ).toBeGreaterThan(0.9);
    expect(
      share(samples.map(({ advanceRatio: J, torqueCoefficient }) => holds(torqueCoefficient!, K_Q(J)))),
    ).toBeGreaterThan(0.9);
  });

  test("the bands are no wider than 6 % of the coefficient at rest", () => {
    for (const {
      thrustCoefficient: { interval95 },
    } of advance.samples)
      expect((interval95[1] - interval95[0]) / AT_REST.thrustCoefficient).toBeLessThan(0.06);
  });

  test("zero thrust, best efficiency and its place hold the truth in their intervals", () => {
    expect(advance.zeroThrust!.isExtrapolated).toBe(false);
    expect(holds(advance.zeroThrust!.advanceRatio, ZERO)).toBe(true);
    expect(holds(advance.peak!.efficiency, eta(BEST))).toBe(true);
    expect(holds(advance.peak!.advanceRatio, BEST)).toBe(true);
  });

  test("the curves are of the second order, as the propeller is", () => {
    expect(advance.thrustCurve).toMatchObject({ order: 2, orderFrom: "informationCriterion" });
    expect(advance.powerCurve).toMatchObject({ order: 2, orderFrom: "informationCriterion" });
  });

  test("the description of the demonstration does not give the fall with the advance ratio away", () => {
    const numbers = JSON.stringify(DEMO)
      .match(/-?\d+(\.\d+)?/g)!
      .map(Number);
    for (const part of [...TRUE_FALL.thrust, ...TRUE_FALL.torque]) expect(numbers).not.toContain(part);
    expect(numbers).not.toContain(TRUE_PROPELLERS.pitch10.thrustCoefficient);
  });
});

import { describe, expect, test } from "vitest";
import { advanceRows, advanceWords, openWaterChart, withOrder } from "../../web/views/bench/advanceModel.ts";
import {
  spansOfPlateaus,
  speedSpanGap,
  speedSpans,
  speedUncertainty,
  withAdvanceSpeed,
  withSpeedSpans,
  withSpeedUncertainty,
} from "../../web/views/bench/advanceSpeeds.ts";
import { coefficientFacts } from "../../web/views/bench/coefficientsModel.ts";
import { recipeOf, reduce, tableOf } from "./benchTable.ts";
import { reductionOf } from "./webBenchReduction.fixture.ts";

const USES = [
  ["thrust", "N"],
  ["torque", "N·m"],
  ["rotationRate", "rev/s"],
  ["advanceSpeed", "m/s"],
] as const;
const SPEEDS = [0.4, 0.8, 1.2, 1.6, 2, 2.4, 2.8, 3.2];

function towed() {
  const J = SPEEDS.map((speed) => speed / (40 * 0.076));
  const [force, twist] = [998.6 * 40 ** 2 * 0.076 ** 4, 998.6 * 40 ** 2 * 0.076 ** 5];
  const table = tableOf({
    thrust: [0, ...J.map((j) => (0.28 - 0.24 * j - 0.07 * j * j) * force)],
    torque: [0, ...J.map((j) => (0.034 - 0.01 * j - 0.012 * j * j) * twist)],
    rate: [0, ...J.map(() => 40)],
    speed: [0, ...SPEEDS],
  });
  return reduce({ table, recipe: recipeOf(USES) });
}

describe("a run with advance speed", () => {
  const reduction = towed();
  const chart = openWaterChart(reduction.advance!);

  test("is answered with thrust at rest, zero thrust and best efficiency", () => {
    expect(advanceWords(reduction)!.answer).toMatch(
      /^K_T falls from 0\.28.* at rest \(continued\) to zero at J = 0\.9\d.*; the best efficiency is 0\.\d+.* at J = 0\.\d+/,
    );
  });

  test("is drawn as plateaus and curves of K_T, 10 K_Q and efficiency, the part to rest apart", () => {
    const ids = chart.series.map(({ id }) => id);
    expect(ids).toEqual([
      ...["thrust-points", "thrust-curve", "thrust-continued"],
      ...["torque-points", "torque-curve", "torque-continued"],
      ...["efficiency-points", "efficiency-curve", "efficiency-continued"],
    ]);
    const torque = chart.series.find(({ id }) => id === "torque-points")!.points[0]!;
    expect(torque.y).toBeCloseTo(10 * reduction.advance!.points[0]!.torqueCoefficient!.value, 12);
    expect(chart.markers).toEqual([{ x: reduction.advance!.zeroThrust!.advanceRatio.value, label: "zero thrust" }]);
  });

  test("leaves an efficiency that falls without end off the picture, and in the table", () => {
    const points = chart.series.find(({ id }) => id === "efficiency-points")!.points;
    expect(Math.min(...points.map(({ y }) => y))).toBeGreaterThan(-0.1);
    expect(advanceRows(reduction.advance!)).toHaveLength(SPEEDS.length);
    expect(advanceRows(reduction.advance!).at(-1)!.cells[4]).toMatch(/^−0\.\d/);
  });

  test("shows no exponent, which plateaus at speed do not tell", () => {
    expect(coefficientFacts(reduction).map(({ symbol }) => symbol)).toEqual(["K_T", "C_P", "K_Q", "FM"]);
  });
});

test("a bollard run says nothing of advance", () => {
  expect(advanceWords(reductionOf())).toBeNull();
});

describe("the recipe", () => {
  const recipe = recipeOf([["thrust", "N"]]);

  test("takes one speed for the run, keeps its uncertainty, and lets go of it", () => {
    const towed = withSpeedUncertainty(withAdvanceSpeed(recipe, 1.2), 0.02);
    expect(withAdvanceSpeed(towed, 1.5).advanceSpeeds).toEqual({
      mode: "constant",
      speed: 1.5,
      relativeUncertainty: 0.02,
    });
    expect(withAdvanceSpeed(towed, null)).toEqual(recipe);
  });

  test("keeps the uncertainty of a speed column with the column", () => {
    const stated = withSpeedUncertainty(recipe, 0.01);
    expect(stated.corrections.advanceSpeed).toMatchObject({ factor: 1, relativeUncertainty: 0.01 });
    expect(speedUncertainty(stated)).toBe(0.01);
  });

  test("states an order and leaves it to the points again", () => {
    expect(withOrder(recipe, 3).advanceOrder).toBe(3);
    expect(withOrder(withOrder(recipe, 3), null)).toEqual(recipe);
  });
});

describe("speeds by spans of time", () => {
  const recipe = recipeOf([["thrust", "N"]]);
  const SLOW = { start: 5, end: 15, speed: 0.4 };
  const FAST = { start: 20, end: 30, speed: 0.9 };

  test("stand in the order of time, keep the stated uncertainty, and the last one taken away leaves a run at rest", () => {
    const stated = withSpeedUncertainty(withSpeedSpans(recipe, [FAST, SLOW]), 0.02);
    expect(speedSpans(stated)).toEqual([SLOW, FAST]);
    expect(withSpeedSpans(stated, [FAST]).advanceSpeeds).toEqual({
      mode: "spans",
      spans: [FAST],
      relativeUncertainty: 0.02,
    });
    expect(withSpeedSpans(stated, [])).toEqual(recipe);
  });

  test.each([
    { span: { start: 15, end: 20, speed: 1 }, gap: "" },
    { span: { start: 14, end: 19, speed: 1 }, gap: "It overlaps 5.0 to 15.0\u202fs, which is at 0.400\u202fm/s" },
    { span: { start: 19, end: 19, speed: 1 }, gap: "The end must come after the start." },
  ])("a span from $span.start to $span.end s beside two others: $gap", ({ span, gap }) => {
    expect(speedSpanGap([SLOW, FAST], span, true)).toMatch(gap === "" ? /^$/ : new RegExp(`^${gap}`));
  });

  test("can be laid out from the plateaus that were found", () => {
    const { plateaus } = reductionOf({});
    const spans = spansOfPlateaus(plateaus, 0);
    expect(spans).toHaveLength(plateaus.length);
    expect(spans[0]).toEqual({ ...spans[0], speed: 0, start: plateaus[0]!.span.start, end: plateaus[0]!.span.end });
  });
});

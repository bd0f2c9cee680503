import { describe, expect, test } from "vitest";
import { recipeOf, reduce } from "../unit/benchTable.ts";
import { type Effects, healthyStand, qualityOf } from "./benchQualityRuns.ts";
import { simulatedLog, uniformFrom } from "./benchSimulatedRun.ts";

const RUNS = 220;
/** Checks that rest on readings; the others rest on what a person stated, or on the size of the propeller. */
const FROM_READINGS = [
  "return-flow",
  "ventilation",
  "pack-sag",
  "heating",
  "temperature-drift",
  "load-cell-saturation",
  "tachometer-aliasing",
  "tare-size",
  "plateau-range",
] as const;

const verdicts = (effects: Effects, runs: number) =>
  Array.from({ length: runs }, (_, index) => qualityOf(healthyStand(uniformFrom(5000 + index)), effects, 9000 + index));

const part = (cards: ReturnType<typeof verdicts>, code: string, verdict: string) =>
  cards.filter((card) => card.get(`bench.${code}`)!.verdict === verdict).length / cards.length;

describe("over 220 healthy stands drawn at random", () => {
  const cards = verdicts({}, RUNS);
  test.each(FROM_READINGS)("%s is flagged in at most 3 percent of the runs, and judged in 9 of 10", (code) => {
    expect(part(cards, code, "flag")).toBeLessThanOrEqual(0.03);
    expect(part(cards, code, "unknown")).toBeLessThanOrEqual(0.1);
  });
});

test("over 110 healthy stands with a torque cell the law of the shaft power is flagged in at most 3 percent of the runs", () => {
  const cards = Array.from({ length: RUNS / 2 }, (_, index) => {
    const stand = { ...healthyStand(uniformFrom(5000 + index)), torqueCoefficient: 0.03, withCommand: false };
    const table = simulatedLog(stand, uniformFrom(9000 + index));
    const recipe = recipeOf([
      ["time", "s"],
      ["thrust", "N"],
      ["rotationRate", "rev/s"],
      ["torque", "N·m"],
    ]);
    const { quality } = reduce({ table, recipe });
    return new Map(quality.map((check) => [check.code, check]));
  });
  expect(part(cards, "power-law", "flag")).toBeLessThanOrEqual(0.03);
  expect(part(cards, "power-law", "unknown")).toBeLessThanOrEqual(0.1);
});

describe("over 60 stands with one thing wrong", () => {
  test.each([
    { code: "return-flow", effects: { returnFlow: 0.02 }, least: 0.75 },
    { code: "ventilation", effects: { ventilation: { loss: 0.12, flutter: 0.12, from: "start" } }, least: 0.8 },
    { code: "ventilation", effects: { ventilation: { loss: 0.15, flutter: 0.12, from: "middle" } }, least: 0.8 },
    { code: "pack-sag", effects: { sag: 0.06 }, least: 0.95 },
    { code: "heating", effects: { heatWithin: 0.06 }, least: 0.8 },
    { code: "temperature-drift", effects: { temperatureRise: 12 }, least: 0.95 },
  ] as { code: string; effects: Effects; least: number }[])(
    "$code is found in $least of the runs or more ($effects)",
    ({ code, effects, least }) => {
      expect(part(verdicts(effects, 60), code, "flag")).toBeGreaterThanOrEqual(least);
    },
  );
});

import { expect, test } from "vitest";
import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import { traceOf } from "../../shared/bench/trace.ts";
import type { RoleGuess } from "../../shared/model/log.ts";
import { Trace } from "../../shared/model/trace.ts";
import { recipeOf, tableOf } from "./benchTable.ts";

const table = tableOf({
  ms: [0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000],
  rpm: [0, 60, 120, 60, 0, Number.NaN, Number.NaN, 6000, 60, 60, 600],
  pwm: [1000, 1100, 1100, 1100, 1100, 1100, 1100, 1100, 1100, 1000, 1000],
});
const recipe = recipeOf([
  ["time", "ms"],
  ["rotationRate", "rpm"],
  ["command", "us"],
]);

test("a trace holds least and greatest value of each step in SI, and null where there is no sample", () => {
  const trace = traceOf({ table, recipe, points: 5 });
  expect(Trace.parse(trace)).toEqual(trace);
  expect([trace.start, trace.end]).toEqual([0, 1]);
  expect(trace.times).toEqual([0.1, 0.3, 0.5, 0.7, 0.9].map((t) => expect.closeTo(t, 12)));
  const rate = trace.channels.find(({ role }) => role === "rotationRate")!;
  expect(rate).toMatchObject({ unit: "rev/s", header: "rpm", low: [0, 1, 0, 100, 1], high: [1, 2, 0, 100, 10] });
  expect(trace.channels.find(({ role }) => role === "command")!.unit).toBe("us");
});

test("a part of the log is cut out, and an empty step is null", () => {
  const { channels } = traceOf({ table, recipe, from: 0.45, to: 0.65, points: 2 });
  expect(channels[0]!.low).toEqual([null, null]);
});

test("a span of no more rows than steps gives the rows themselves, flagged raw", () => {
  const { raw, times, channels } = traceOf({ table, recipe, from: 0.65, to: 0.95, points: 3 });
  expect([raw, times]).toEqual([true, [0.7, 0.8, 0.9].map((t) => expect.closeTo(t, 12))]);
  const rate = channels.find(({ role }) => role === "rotationRate")!;
  expect([rate.low, rate.high]).toEqual([
    [100, 1, 1],
    [100, 1, 1],
  ]);
  expect(traceOf({ table, recipe, from: 0.65, to: 0.95, points: 2 }).raw).toBeUndefined();
});

test("a channel that is turned round keeps its least value below its greatest", () => {
  const turned = { ...recipe, corrections: { rotationRate: { factor: -1, offset: 0, relativeUncertainty: 0 } } };
  const rate = traceOf({ table, recipe: turned, points: 5 }).channels.find(({ role }) => role === "rotationRate")!;
  expect(rate).toMatchObject({ low: [-1, -2, 0, -100, -10], high: [0, -1, 0, -100, -1] });
});

test("a trace needs neither thrust nor rotation rate to be known yet", () => {
  const { channels } = traceOf({
    table,
    recipe: recipeOf([
      ["time", "ms"],
      ["ignore", "1"],
      ["command", "us"],
    ]),
    points: 3,
  });
  expect(channels.map(({ role }) => role)).toEqual(["command"]);
});

const guess = (column: number, role: RoleGuess["role"], unit: string, sure = true): RoleGuess => ({
  ...{ column, role, unit, sure, reason: "", alternatives: [] },
});

test("a recipe from guesses uses each role once, the surer column first", () => {
  const guesses = [
    guess(0, "time", "s"),
    guess(1, "thrust", "g", false),
    guess(2, "thrust", "N"),
    guess(3, "rotationRate", "erpm"),
  ];
  const made = recipeFromGuesses({ guesses, fluid: { kind: "fresh", temperature: 290 }, polePairs: 7 });
  expect(made.columns.map(({ role }) => role)).toEqual(["time", "ignore", "thrust", "rotationRate"]);
  expect(made).toMatchObject({
    polePairs: 7,
    tare: { mode: "zeroThrottle" },
    plateaus: { mode: "automatic" },
    leftOut: [],
  });
});

import { describe, expect, test } from "vitest";
import { alignLogs, onFirstClock } from "../../shared/bench/alignLogs.ts";
import { mergedLog } from "../../shared/bench/mergedLog.ts";
import { laggedCorrelation } from "../../shared/numeric/crossCorrelation.ts";
import type { InputProblem } from "../../shared/quantity/problem.ts";
import { recipeOf, tableOf } from "../unit/benchTable.ts";
import { electricalTable, rateAt, type SecondClock, thrustTable } from "./twoClocks.ts";

const AUTOMATIC = { mode: "automatic" } as const;
const ELECTRICAL = [
  ["time", "s"],
  ["current", "A"],
  ["voltage", "V"],
] as const;
const FIRST = {
  table: thrustTable(),
  recipe: recipeOf([
    ["time", "s"],
    ["thrust", "gf"],
  ]),
};
const second = (clock: SecondClock) => ({ table: electricalTable(clock), recipe: recipeOf(ELECTRICAL) });

describe("against scipy.signal.correlate on the same two series", () => {
  // scipy 1.17.1, numpy 2.4.6. The series of twoClocks.ts written once more in numpy, both interpolated to a step of 0.025 s,
  // means taken off: c = correlate(x, y, mode="full"), lags = correlation_lags(len(x), len(y)),
  // lag = lags[argmax(c)]·0.025 + start of x − start of y.
  test.each([
    { at: 1000, scipy: -1000.005 },
    { at: -37.4, scipy: 37.395 },
  ])("a second clock that reads $at s at the start gets the lag $scipy s", ({ at, scipy }) => {
    const { lag, correlation } = alignLogs({ first: FIRST, second: second({ at }), lag: AUTOMATIC }).alignment;
    expect(Math.abs(lag.value - scipy)).toBeLessThanOrEqual(0.025);
    // numpy.corrcoef of the thrust interpolated to the true times of the current: 0.99996647
    expect(correlation).toBeCloseTo(0.99996647, 3);
    // The lag that the series were made with.
    expect(lag.interval95[0]).toBeLessThan(-at);
    expect(lag.interval95[1]).toBeGreaterThan(-at);
  });

  // numpy.corrcoef of the overlap: x = sin(0.37 i) + 0.01 i (40 values), y = cos(0.31 i) (30 values), x[i + lag] against y[i].
  test.each([
    { lag: -5, r: -0.6719697484656478 },
    { lag: 0, r: 0.7128732800397045 },
    { lag: 7, r: -0.2783911432257927 },
  ])("the correlation at lag $lag is numpy.corrcoef of the overlap, $r", ({ lag, r }) => {
    const x = Float64Array.from({ length: 40 }, (_, i) => Math.sin(0.37 * i) + 0.01 * i);
    const y = Float64Array.from({ length: 30 }, (_, i) => Math.cos(0.31 * i));
    expect(laggedCorrelation(x, y, lag, 4).correlation).toBeCloseTo(r, 12);
  });
});

test("clocks that differ by 0.2 % in rate are brought together over the whole run", () => {
  const clock = { at: 3, rate: 0.002 };
  const { alignment } = alignLogs({ first: FIRST, second: second(clock), lag: AUTOMATIC });
  expect(alignment.clockRateApplied).toBe(true);
  expect(alignment.clockRate!.interval95[0]).toBeLessThan(0.002);
  expect(alignment.clockRate!.interval95[1]).toBeGreaterThan(0.002);
  const times = electricalTable(clock).columns[0]!;
  const error = onFirstClock(alignment, times).map((time, i) => Math.abs(time - (1.03 + i / 8)));
  expect(Math.max(...error)).toBeLessThan(0.03);
});

test("a load cell that counts down is laid over as well", () => {
  const { table } = FIRST;
  const down = { ...table, columns: [table.columns[0]!, table.columns[1]!.map((value) => -value)] };
  const { alignment } = alignLogs({ first: { ...FIRST, table: down }, second: second({ at: 1000 }), lag: AUTOMATIC });
  expect(alignment.lag.value).toBeCloseTo(-1000, 1);
});

test("gaps of the second log are missing cells of the merged table, and it says how many rows they are", () => {
  const electrical = electricalTable({ at: 1000 });
  const kept = [...electrical.lineNumbers.keys()].filter((i) => i < 300 || i > 400);
  const companionTable = tableOf({
    clock: kept.map((i) => electrical.columns[0]![i]!),
    current: kept.map((i) => electrical.columns[1]![i]!),
  });
  const columns = [
    { column: 0, role: "time" as const, unit: "s" },
    { column: 1, role: "current" as const, unit: "A" },
  ];
  const merged = mergedLog({ ...FIRST, companionTable, companion: { columns, lag: AUTOMATIC } });
  const current = merged.table.columns[2]!;
  // Run time 1.03 + 300/8 to 1.03 + 400/8 s is the gap; 20 rows a second.
  expect(current.slice(20 * 40, 20 * 50).every(Number.isNaN)).toBe(true);
  expect(current[20 * 30]).toBeCloseTo(0.4 + 2.5e-6 * rateAt(30) ** 2, 1);
  expect(merged.recipe.columns.at(-1)).toEqual({ column: 2, role: "current", unit: "A" });
  expect(merged.warnings.map(({ code }) => code)).toEqual(["bench.logs-aligned", "bench.companion-gaps"]);
});

const refusal = (work: () => unknown) => {
  try {
    work();
  } catch (error) {
    return (error as InputProblem).problem.code;
  }
  return "none";
};

test("a run that repeats itself is refused, because another lag fits as well", () => {
  const times = Array.from({ length: 2400 }, (_, i) => i / 20);
  const wave = (t: number) => 10 + 5 * Math.sin((2 * Math.PI * t) / 6);
  const first = tableOf({ time: times, thrust: times.map(wave) });
  const other = tableOf({ clock: times.slice(600, 1800), current: times.slice(600, 1800).map(wave) });
  const work = () =>
    alignLogs({
      first: { ...FIRST, table: first },
      second: { table: other, recipe: recipeOf(ELECTRICAL.slice(0, 2)) },
      lag: AUTOMATIC,
    });
  expect(refusal(work)).toBe("bench.lag-not-distinct");
});

test("logs of two different runs are refused, and a stated lag is taken all the same", () => {
  const times = Array.from({ length: 1200 }, (_, i) => i / 10);
  const noise = (k: number) => times.map((_, i) => Math.sin(i * i * k) + Math.sin(i * k * 3.1));
  const first = tableOf({ time: times, thrust: noise(0.7) });
  const other = tableOf({ clock: times, current: noise(1.9) });
  const parts = {
    first: { ...FIRST, table: first },
    second: { table: other, recipe: recipeOf(ELECTRICAL.slice(0, 2)) },
  };
  expect(refusal(() => alignLogs({ ...parts, lag: AUTOMATIC }))).toBe("bench.lag-not-found");
  const { alignment } = alignLogs({ ...parts, lag: { mode: "stated", seconds: -2.5 } });
  expect(alignment.lag.value).toBe(-2.5);
});

test("logs without a common signal or without a clock are refused in words", () => {
  const voltage = {
    table: tableOf({ clock: [0, 1, 2], volts: [1, 2, 3] }),
    recipe: recipeOf([
      ["time", "s"],
      ["voltage", "V"],
    ]),
  };
  expect(refusal(() => alignLogs({ first: FIRST, second: voltage, lag: AUTOMATIC }))).toBe("bench.no-common-signal");
  const timeless = { table: tableOf({ amps: [0, 1, 2] }), recipe: recipeOf([["current", "A"]]) };
  expect(refusal(() => alignLogs({ first: FIRST, second: timeless, lag: AUTOMATIC }))).toBe("bench.align-no-time");
});

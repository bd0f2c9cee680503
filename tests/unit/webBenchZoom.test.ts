import { expect, test } from "vitest";
import type { Trace } from "../../shared/model/trace.ts";
import { carriedOver } from "../../web/charts/chartCursor.ts";
import type { ChartSpec } from "../../web/charts/chartSpec.ts";
import { yRange } from "../../web/charts/ranges.ts";
import { withHandPlateauMoved } from "../../web/views/bench/recipeEdits.ts";
import { traceChart } from "../../web/views/bench/traceChart.ts";
import { coversStretch, fineness } from "../../web/views/bench/traceZoomModel.ts";
import { recipeOf } from "./benchTable.ts";

const trace = (from: number, to: number, steps: number, raw = false): Trace => {
  const times = Array.from({ length: steps }, (_, i) => from + ((i + 0.5) * (to - from)) / steps);
  const low = times.map((t) => t);
  const high = raw ? low : times.map((t) => t + 1);
  return {
    start: from,
    end: to,
    times,
    ...(raw && { raw: true as const }),
    channels: [{ role: "thrust", header: "T", unit: "N", low, high }],
  };
};

const RECIPE = recipeOf([["thrust", "N"]]);
const WHOLE = trace(0, 1000, 1000);
const pictureOf = (one: Trace): ChartSpec =>
  traceChart({ trace: one, whole: WHOLE, reduction: null, recipe: RECIPE, hasClock: true });

test("samples are told from extremes, and extremes with the length of their step", () => {
  expect(fineness(trace(10, 11, 50, true), true)).toBe("Samples as logged.");
  expect(fineness(WHOLE, true)).toBe("Extremes of each step of 1\u202fs: zoom in for the samples as logged.");
  expect(fineness(trace(0, 12, 1200), true)).toMatch(/step of 10\u202fms/);
  expect(fineness(trace(0, 120_000, 1200), false)).toMatch(/step of 100 rows/);
});

test("a finer trace serves the stretch it was read for and all within it, while run and recipe are the same", () => {
  const finer = { of: "run recipe", stretch: { from: 10, to: 20 }, trace: trace(10, 20, 1200) };
  expect(coversStretch(finer, "run recipe", { from: 12, to: 20 })).toBe(true);
  expect(coversStretch(finer, "run recipe", { from: 9, to: 20 })).toBe(false);
  expect(coversStretch(finer, "run other", { from: 12, to: 20 })).toBe(false);
  expect(coversStretch(null, "run recipe", { from: 12, to: 20 })).toBe(false);
});

test("a sample is one number, a step has its least and greatest", () => {
  expect(pictureOf(trace(10, 11, 5, true)).series[0]!.points[0]).toEqual({ x: 10.1, y: 10.1 });
  expect(pictureOf(WHOLE).series[0]!.points[0]).toEqual({ x: 0.5, y: 1, yInterval: [0.5, 1.5] });
});

test("the time of a sample is told finely enough to tell it from the next", () => {
  expect(pictureOf(WHOLE).x.digits).toBe(4);
  expect(pictureOf(trace(998, 999, 1000, true)).x.digits).toBe(7);
});

test("a zoomed picture is as high as what it shows, and as the whole where it shows nothing", () => {
  const spec = pictureOf(WHOLE);
  expect(yRange(spec, "y", { low: 800, high: 810 })).toEqual({ low: 800.5, high: 810.5 });
  expect(yRange(spec, "y", { low: 800.1, high: 800.2 })).toEqual(yRange(spec, "y"));
});

test("the data cursor keeps its time when the samples of a stretch come", () => {
  const finer = pictureOf(trace(500, 501, 100, true));
  const placed = carriedOver({ seriesId: "thrust", index: 500 }, pictureOf(WHOLE), finer);
  expect(finer.series[0]!.points[placed.index]!.x).toBeCloseTo(500.5, 1);
  expect(carriedOver({ seriesId: "thrust", index: 3 }, finer, finer)).toEqual({ seriesId: "thrust", index: 3 });
});

test("a run that can not be reduced still shows the tare windows and plateaus that were set by hand", () => {
  const recipe = {
    ...RECIPE,
    tare: { mode: "windows" as const, windows: [{ start: 1, end: 2 }] },
    plateaus: { mode: "spans" as const, spans: [{ start: 5, end: 9 }] },
  };
  const { spans } = traceChart({ trace: WHOLE, whole: WHOLE, reduction: null, recipe, hasClock: true });
  expect(spans?.map(({ kind, start, end }) => [kind, start, end])).toEqual([
    ["tare", 1, 2],
    ["plateau", 5, 9],
  ]);
  expect(withHandPlateauMoved(recipe, 0, { start: 6, end: 9 }).plateaus).toMatchObject({
    spans: [{ start: 6, end: 9, origin: "moved" }],
  });
});

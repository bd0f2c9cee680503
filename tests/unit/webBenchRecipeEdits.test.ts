import { expect, test } from "vitest";
import type { Recipe } from "../../shared/model/recipe.ts";
import {
  asSweep,
  automatic,
  isAutomatic,
  leavingOut,
  puttingBack,
  withCorrection,
  withEntry,
  withFluid,
  withPlateauAdded,
  withPlateauMoved,
  withPlateauSplit,
  withPlateausMerged,
  withPropeller,
  withTareAdded,
  withTareMoved,
  withTareRemoved,
  withTareShape,
} from "../../web/views/bench/recipeEdits.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const spansIn = ({ plateaus }: Recipe) =>
  plateaus.mode === "spans" ? plateaus.spans.map(({ start, end }) => [start, end]) : [];

const tareIn = ({ tare }: Recipe) =>
  tare.mode === "windows" ? tare.windows.map(({ start, end }) => [start, end]) : [];

const RECIPE: Recipe = runOf("run").document.recipe;

const PLATEAUS = reductionOf().plateaus;

test("stating the fluid, be it the one that was taken, ends the assumption", () => {
  const assumed: Recipe = { ...RECIPE, fluidAssumed: true };
  expect(withFluid(assumed, assumed.fluid)).toEqual(RECIPE);
  expect(withFluid(assumed, { kind: "fresh", temperature: 280 }).fluid.temperature).toBe(280);
});

test("leaving a plateau out keeps its reason, and putting it back drops it", () => {
  const aside = leavingOut(RECIPE, PLATEAUS[1]!, "  bubbles ");
  expect(aside.leftOut).toEqual([{ start: 20, end: 28, reason: "bubbles" }]);
  expect(puttingBack(aside, PLATEAUS[1]!).leftOut).toEqual([]);
});

test("a row of a table without a clock is left out by its line of the file", () => {
  const row = { ...PLATEAUS[1]!, foundBy: "row" as const, firstLine: 7, lastLine: 7, start: null, end: null };
  const aside = leavingOut(RECIPE, row, "read in haste");
  expect(aside.leftOut).toEqual([{ line: 7, reason: "read in haste" }]);
  expect(puttingBack(aside, row).leftOut).toEqual([]);
});

test("leaving the same plateau out again replaces the reason instead of adding a second one", () => {
  const twice = leavingOut(leavingOut(RECIPE, PLATEAUS[1]!, "bubbles"), PLATEAUS[1]!, "weed");
  expect(twice.leftOut.map((one) => one.reason)).toEqual(["weed"]);
});

test("putting one plateau back leaves the others out", () => {
  const both = leavingOut(leavingOut(RECIPE, PLATEAUS[0]!, "a"), PLATEAUS[1]!, "b");
  expect(puttingBack(both, PLATEAUS[0]!).leftOut.map((one) => one.reason)).toEqual(["b"]);
});

test("moving one plateau turns all of them into fixed spans and moves no other", () => {
  const moved = withPlateauMoved(RECIPE, PLATEAUS, 1, { start: 21, end: 27 });
  expect(moved.plateaus).toEqual({
    mode: "spans",
    spans: [
      { start: 10, end: 18, origin: "command" },
      { start: 21, end: 27, origin: "moved" },
      { start: 30, end: 38, origin: "command" },
    ],
  });
});

test("a plateau stops at its neighbours, so that no reading counts twice", () => {
  const moved = withPlateauMoved(RECIPE, PLATEAUS, 1, { start: 12, end: 33 });
  expect(spansIn(moved)[1]).toEqual([18, 30]);
});

test("a plateau that a person left out stays out when it is moved", () => {
  const recipe = leavingOut(RECIPE, PLATEAUS[1]!, "still settling");
  const moved = withPlateauMoved(recipe, PLATEAUS, 1, { start: 22, end: 24 });
  expect(moved.leftOut).toEqual([{ start: 22, end: 24, reason: "still settling" }]);
});

test("a plateau split at a time becomes two that meet there, and both stay out where the whole was", () => {
  const recipe = leavingOut(RECIPE, PLATEAUS[1]!, "weed");
  const split = withPlateauSplit(recipe, PLATEAUS, 1, 25);
  expect(spansIn(split).slice(1, 3)).toEqual([
    [20, 25],
    [25, 28],
  ]);
  expect(split.leftOut).toEqual([{ start: 20, end: 28, reason: "weed" }]);
  expect(withPlateauSplit(RECIPE, PLATEAUS, 1, 29)).toBe(RECIPE);
});

test("two neighbours merged reach from the start of the first to the end of the second", () => {
  const merged = withPlateausMerged(RECIPE, PLATEAUS, 1);
  expect(spansIn(merged)).toEqual([
    [10, 18],
    [20, 38],
  ]);
  expect(withPlateausMerged(RECIPE, PLATEAUS, 2)).toBe(RECIPE);
});

test("a merged plateau counts unless both were left out", () => {
  const one = leavingOut(RECIPE, PLATEAUS[1]!, "weed");
  expect(withPlateausMerged(one, PLATEAUS, 1).leftOut).toEqual([]);
  const both = leavingOut(one, PLATEAUS[2]!, "air");
  expect(withPlateausMerged(both, PLATEAUS, 1).leftOut).toEqual([{ start: 20, end: 38, reason: "weed" }]);
});

test("an edit of plateaus stays as it is when calibration, pole pairs or fluid change", () => {
  const moved = withPlateauMoved(RECIPE, PLATEAUS, 1, { start: 21, end: 27 });
  const changed = withEntry(withCorrection(moved, "thrust", { factor: 2 }), "polePairs", 7);
  expect(changed.plateaus).toBe(moved.plateaus);
});

test("a span without length changes nothing", () => {
  expect(withPlateauMoved(RECIPE, reductionOf().plateaus, 1, { start: 25, end: 25 })).toBe(RECIPE);
});

test("moving a tare window fixes all windows, without anything but their ends", () => {
  const windows = [
    { start: 0, end: 5, thrust: 1 },
    { start: 90, end: 95, thrust: 2 },
  ];
  const moved = withTareMoved(RECIPE, windows, 1, { start: 91, end: 96 });
  expect(moved.tare).toEqual({
    mode: "windows",
    windows: [
      { start: 0, end: 5 },
      { start: 91, end: 96 },
    ],
  });
});

test("tare windows are added and removed in order of time, the shape stays, and the last window can not be removed", () => {
  const windows = [{ start: 90, end: 95 }];
  const line = withTareShape(RECIPE, "line");
  const added = withTareAdded(line, windows, { start: 0, end: 5 });
  expect(added.tare).toEqual({
    mode: "windows",
    shape: "line",
    windows: [
      { start: 0, end: 5 },
      { start: 90, end: 95 },
    ],
  });
  const removed = withTareRemoved(added, [{ start: 0, end: 5 }, ...windows], 0);
  expect(removed.tare).toEqual({ mode: "windows", shape: "line", windows });
  expect(withTareRemoved(RECIPE, windows, 0)).toBe(RECIPE);
});

test("a sweep replaces the plateaus, and back to automatic undoes it", () => {
  const sweep = asSweep(RECIPE);
  expect(sweep.plateaus).toEqual({ mode: "sweep" });
  expect(isAutomatic(sweep)).toBe(false);
  expect(isAutomatic(automatic(sweep))).toBe(true);
});

test("two edits of tare windows in quick succession both count, though the screen shows the windows of before", () => {
  const shown = [
    { start: 0, end: 5 },
    { start: 45, end: 50 },
    { start: 90, end: 95 },
  ];
  const once = withTareRemoved(RECIPE, shown, 0);
  expect(tareIn(withTareRemoved(once, shown, 1))).toEqual([[90, 95]]);
  expect(withTareRemoved(once, shown, 0)).toBe(once);
  expect(tareIn(withTareMoved(once, shown, 2, { start: 91, end: 96 }))).toEqual([
    [45, 50],
    [91, 96],
  ]);
  expect(tareIn(withTareAdded(once, shown, { start: 60, end: 62 }))).toEqual([
    [45, 50],
    [60, 62],
    [90, 95],
  ]);
});

test("two edits of plateaus in quick succession both count", () => {
  const once = withPlateauMoved(RECIPE, PLATEAUS, 0, { start: 12, end: 17 });
  expect(spansIn(withPlateauMoved(once, PLATEAUS, 1, { start: 21, end: 27 }))).toEqual([
    [12, 17],
    [21, 27],
    [30, 38],
  ]);
  expect(spansIn(withPlateauSplit(once, PLATEAUS, 0, 15)).slice(0, 2)).toEqual([
    [12, 15],
    [15, 17],
  ]);
  const merged = withPlateausMerged(once, PLATEAUS, 0);
  expect(spansIn(merged)[0]).toEqual([12, 28]);
  expect(withPlateausMerged(merged, PLATEAUS, 0)).toBe(merged);
  expect(spansIn(withPlateauAdded(once, PLATEAUS, { start: 50, end: 55 })).at(0)).toEqual([12, 17]);
});

test("back to automatic takes every edit of plateaus and tares away", () => {
  const edited = leavingOut(withPlateauMoved(RECIPE, PLATEAUS, 0, { start: 11, end: 17 }), PLATEAUS[1]!, "x");
  expect(isAutomatic(edited)).toBe(false);
  expect(isAutomatic(automatic(edited))).toBe(true);
});

test("a change of one correction keeps the others", () => {
  const once = withCorrection(RECIPE, "thrust", { factor: 2.5 });
  const twice = withCorrection(once, "thrust", { relativeUncertainty: 0.01 });
  expect(twice.corrections.thrust).toEqual({ factor: 2.5, offset: 0, relativeUncertainty: 0.01 });
});

test("an entry that is taken away leaves no empty key behind", () => {
  const id = "2f0c1f6e-9a3f-4f0e-8f8e-0d3f6f6f0001";
  const stated = withEntry(RECIPE, "motorId", id);
  expect(stated.motorId).toBe(id);
  expect(Object.keys(withEntry(stated, "motorId", undefined))).not.toContain("motorId");
});

test("a plateau added by hand joins the others in order of time", () => {
  const added = withPlateauAdded(RECIPE, reductionOf().plateaus, { start: 29, end: 29.5 });
  expect(added.plateaus.mode === "spans" && added.plateaus.spans.map((span) => span.start)).toEqual([10, 20, 29, 30]);
});

test("a run without a variant takes the finish of its propeller, one that has a variant keeps it", () => {
  const document = {
    name: "Net propeller",
    diameter: 0.076,
    diameterUncertainty: 0,
    finish: "sanded",
    nozzle: false,
    note: "",
  };
  const propeller = { id: "p", version: 1, updatedAt: "2026-11-25T12:00:00Z", document };
  expect(withPropeller(runOf("a").document, propeller)).toMatchObject({ propellerId: "p", variant: "sanded" });
  expect(withPropeller(runOf("a", { variant: "polished" }).document, propeller).variant).toBe("polished");
  expect(Object.keys(withPropeller(withPropeller(runOf("a").document, propeller), undefined))).not.toContain(
    "propellerId",
  );
});

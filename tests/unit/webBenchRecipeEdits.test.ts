import { expect, test } from "vitest";
import type { Recipe } from "../../shared/model/recipe.ts";
import {
  automatic,
  isAutomatic,
  leavingOut,
  puttingBack,
  withCorrection,
  withEntry,
  withPlateauAdded,
  withPlateauMoved,
  withPropeller,
  withTareMoved,
} from "../../web/views/bench/recipeEdits.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const RECIPE: Recipe = runOf("run").document.recipe;

test("leaving a plateau out keeps its reason, and putting it back drops it", () => {
  const span = { start: 20, end: 28 };
  const aside = leavingOut(RECIPE, span, "  bubbles ");
  expect(aside.leftOut).toEqual([{ ...span, reason: "bubbles" }]);
  expect(puttingBack(aside, span).leftOut).toEqual([]);
});

test("leaving the same plateau out again replaces the reason instead of adding a second one", () => {
  const span = { start: 20, end: 28 };
  const twice = leavingOut(leavingOut(RECIPE, span, "bubbles"), span, "weed");
  expect(twice.leftOut.map((one) => one.reason)).toEqual(["weed"]);
});

test("putting one plateau back leaves the others out", () => {
  const both = leavingOut(leavingOut(RECIPE, { start: 10, end: 18 }, "a"), { start: 20, end: 28 }, "b");
  expect(puttingBack(both, { start: 10, end: 18 }).leftOut.map((one) => one.reason)).toEqual(["b"]);
});

test("moving one plateau turns all of them into fixed spans and moves no other", () => {
  const moved = withPlateauMoved(RECIPE, reductionOf().plateaus, 1, { start: 21, end: 27 });
  expect(moved.plateaus).toEqual({
    mode: "spans",
    spans: [
      { start: 10, end: 18 },
      { start: 21, end: 27 },
      { start: 30, end: 38 },
    ],
  });
});

test("a plateau that a person left out stays out when it is moved", () => {
  const { plateaus } = reductionOf({ leftOut: [1] });
  const recipe = leavingOut(RECIPE, { start: 20, end: 28 }, "still settling");
  const moved = withPlateauMoved(recipe, plateaus, 1, { start: 40, end: 44 });
  expect(moved.leftOut).toEqual([{ start: 40, end: 44, reason: "still settling" }]);
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

test("back to automatic takes every edit of plateaus and tares away", () => {
  const edited = leavingOut(
    withPlateauMoved(RECIPE, reductionOf().plateaus, 0, { start: 11, end: 17 }),
    { start: 1, end: 2 },
    "x",
  );
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

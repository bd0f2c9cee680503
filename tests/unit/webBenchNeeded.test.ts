import { expect, test } from "vitest";
import type { Propeller } from "../../shared/model/parts/propeller.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { legendEntries } from "../../web/charts/legendEntries.ts";
import { suggestedPropeller } from "../../web/views/bench/neededModel.ts";
import { benchSections } from "../../web/views/bench/sections.ts";
import { runOf } from "./webBenchReduction.fixture.ts";

const propeller = (name: string, finish?: string): StoredDocument<Propeller> => ({
  id: name,
  version: 1,
  updatedAt: "2026-11-25T12:00:00.000Z",
  document: {
    name,
    diameter: 0.076,
    diameterUncertainty: 0.0001,
    nozzle: false,
    note: "",
    ...(finish === undefined ? {} : { finish }),
  },
});
const SHELF = [propeller("Net propeller one", "as printed"), propeller("Net propeller two", "sanded")];
const named = (name: string) => ({
  ...runOf("run").document,
  name,
  file: { ...runOf("run").document.file, name: `${name}.csv` },
});

test.each([
  ["finish-as-printed-1", "Net propeller one"],
  ["finish_SANDED_2", "Net propeller two"],
  ["net propeller two, wet", "Net propeller two"],
  ["thousanded-3", undefined],
  ["run 7", undefined],
])("the log %s suggests %s", (name, expected) => {
  expect(suggestedPropeller(named(name), SHELF)?.id).toBe(expected);
});

test("two propellers that fit alike are no suggestion", () => {
  expect(suggestedPropeller(named("sanded-1"), [...SHELF, propeller("Another", "sanded")])).toBeNull();
});

test("a run without propeller or agreed columns lists these sections first", () => {
  const { propellerId: _none, ...bare } = runOf("run").document;
  const labels = benchSections({ ...bare, confirmed: false }, null).map(({ label }) => label);
  expect(labels.slice(0, 3)).toEqual(["Needed first", "Columns to confirm", "Log over time"]);
});

test("points and fit of one variant are one entry of the legend, which hides both", () => {
  const series = (id: string, kind: "fit" | "measured") => ({
    id,
    name: id,
    kind,
    style: 1,
    points: [],
    legend: "sanded",
  });
  const entries = legendEntries([series("fit", "fit"), series("points", "measured")]);
  expect(entries.map(({ name, ids, fitted }) => [name, ids, fitted])).toEqual([["sanded", ["fit", "points"], true]]);
});

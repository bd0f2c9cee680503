import { describe, expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { Instrument } from "../../shared/model/instrument.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import { instrumentChoices, withInstrument } from "../../web/views/bench/instrumentChoices.ts";
import { lineChart, residualsChart } from "../../web/views/instruments/instrumentCharts.ts";
import {
  draftOfInstrument,
  emptyDraft,
  instrumentOf,
  pasted,
  withCell,
  withRole,
} from "../../web/views/instruments/instrumentDraft.ts";
import { instrumentRows, lookAt } from "../../web/views/instruments/instrumentsModel.ts";

const ID = "5c2b6ad0-3a8e-4f57-9d10-0f6f4f1f1a01";
const OTHER = "5c2b6ad0-3a8e-4f57-9d10-0f6f4f1f1a02";
const stored = <T>(document: T, id = ID) => ({ id, version: 1, updatedAt: "2026-11-25T00:00:00.000Z", document });
const CELL = Instrument.parse(DEMO.instruments["beamCell"]);
const arm = { length: 0.1, tolerance: 0.0005 };
const of = (role: string, calibration: object) => Instrument.parse({ name: "x", role, calibration });
const RECIPE = Recipe.parse({
  columns: [
    { column: 0, role: "thrust", unit: "gf" },
    { column: 1, role: "rotationRate", unit: "rpm" },
  ],
  fluid: { kind: "fresh", temperature: 291.15 },
});
const points = CELL.calibration.kind === "deadWeights" ? CELL.calibration.points : [];

describe("the form of an instrument", () => {
  test.each([
    { instrument: CELL },
    { instrument: of("thrust", { kind: "lever", scaleArm: arm, propellerArm: arm, readingTolerance: 0.01 }) },
    { instrument: of("torque", { kind: "torqueArm", readingUnit: "gf", arm, readingTolerance: 0.01 }) },
    { instrument: of("torque", { kind: "deadWeights", appliedUnit: "g", readingUnit: "mV", points, arm }) },
    {
      instrument: of("voltage", {
        kind: "divider",
        upperResistance: 1e5,
        lowerResistance: 1e4,
        resistorTolerance: 0.01,
      }),
    },
    {
      instrument: of("voltage", { kind: "reference", unit: "V", applied: 12.6, reading: 12, appliedTolerance: 0.005 }),
    },
    { instrument: of("current", { kind: "comparison", appliedUnit: "A", readingUnit: "A", points }) },
    { instrument: of("rotationRate", { kind: "markers", pulsesPerTurn: 3 }) },
  ])("gives back what was stored: $instrument.calibration.kind of $instrument.role", ({ instrument }) => {
    expect(instrumentOf(draftOfInstrument(instrument)).instrument).toEqual(instrument);
  });

  test("says what is missing before anything can be told", () => {
    expect(instrumentOf(emptyDraft()).missing).toEqual(["Needed: three points or more; 0 so far."]);
    const half = { ...emptyDraft(), rows: [{ applied: "500", reading: "" }] };
    expect(instrumentOf(half).missing[0]).toBe('Row 1 needs two numbers, and has "500" and "".');
  });

  test("of another channel offers the first method of it", () => {
    expect(withRole(emptyDraft(), "voltage")).toMatchObject({ role: "voltage", kind: "divider", readingUnit: "V" });
  });

  test("takes a pasted table with the units of its header, and leaves a single number to the cell", () => {
    const table = pasted("mass (kg)\treading (counts)\n0\t8001\n1\t12310\n2\t16619\n");
    expect(table).toMatchObject({ appliedUnit: "kg", readingUnit: "counts" });
    expect(table?.rows.slice(0, 2)).toEqual([
      { applied: "0", reading: "8001" },
      { applied: "1", reading: "12310" },
    ]);
    expect(pasted("12.5")).toBeNull();
  });

  test("always keeps an empty row to go on with", () => {
    const rows = withCell([{ applied: "", reading: "" }], 0, "applied", "500");
    expect(rows).toEqual([
      { applied: "500", reading: "" },
      { applied: "", reading: "" },
    ]);
  });
});

test("a decimal comma is read as typed", () => {
  const rows = [
    ["0", "0,1"],
    ["10", "10,2"],
    ["20", "20,1"],
  ].map(([applied, reading]) => ({ applied: applied!, reading: reading! }));
  const { instrument } = instrumentOf({ ...emptyDraft(), rows });
  expect(instrument?.calibration).toMatchObject({
    points: [{ applied: 0, reading: 0.1 }, { reading: 10.2 }, { reading: 20.1 }],
  });
});

describe("what is shown of an instrument", () => {
  test("begins with factor and zero, and lists causes of doubt with the greatest first", () => {
    const { sentence, budget } = lookAt(CELL);
    expect(sentence).toMatch(/^1 gf of reading is 0\.009769 N ± 0\.45\s%; the zero is uncertain by/);
    expect(budget[0]?.name).toBe("tolerance of the weights");
    expect(lookAt(CELL).warnings).toEqual([]);
  });

  test("counts the runs that use it", () => {
    const run = (recipe: Recipe) =>
      stored({
        ...{ name: "r", variant: "", mounting: "", confirmed: true, note: "", recipe },
        file: { name: "l.csv", sha256: "0".repeat(64), size: 1 },
      }) as never;
    const runs = [run(withInstrument(RECIPE, "thrust", ID)), run(RECIPE), run(withInstrument(RECIPE, "thrust", ID))];
    expect(instrumentRows([stored(CELL), stored(CELL, OTHER)], runs).map(({ use }) => use)).toEqual(["2 runs", ""]);
  });

  test("is drawn as points of both ways with their line, and as what the line leaves", () => {
    const findings = lookAt(CELL).calibration!.findings!;
    const counts = (spec: ReturnType<typeof lineChart>) => spec.series.map(({ id, points: all }) => [id, all.length]);
    expect(counts(lineChart(findings))).toEqual([
      ["loading", 8],
      ["unloading", 7],
      ["fit", 13],
    ]);
    const left = residualsChart(findings)
      .series.slice(0, 2)
      .flatMap(({ points: all }) => all.map(({ y }) => y));
    expect(Math.abs(left.reduce((sum, y) => sum + y, 0))).toBeLessThan(1e-6);
  });
});

describe("choosing an instrument on the bench", () => {
  test("offers those of the channel, for the channels that the log has", () => {
    const tachometer = of("rotationRate", { kind: "markers", pulsesPerTurn: 3 });
    const choices = instrumentChoices(withInstrument(RECIPE, "thrust", ID), [stored(CELL), stored(tachometer, OTHER)]);
    expect(choices.map(({ role, chosen, options }) => [role, chosen, options.length])).toEqual([
      ["thrust", ID, 2],
      ["rotationRate", "", 2],
    ]);
    expect(choices[0]?.sentence).toContain("of reading is");
  });
  test("and taking it away again leaves the recipe as it was", () => {
    expect(withInstrument(withInstrument(RECIPE, "thrust", ID), "thrust", "")).toEqual(RECIPE);
  });
  test("names one that was deleted", () => {
    const [thrust] = instrumentChoices(withInstrument(RECIPE, "thrust", ID), []);
    expect(thrust?.options.at(-1)).toEqual({ value: ID, label: "An instrument that was deleted" });
  });
});

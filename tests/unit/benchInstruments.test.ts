import { describe, expect, test } from "vitest";
import { compareVariants } from "../../shared/compare/compareVariants.ts";
import { Instrument, type UsedInstruments } from "../../shared/model/instrument.ts";
import { Reduction } from "../../shared/model/reduction.ts";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { recipeOf, reduce, tableOf } from "./benchTable.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["command", "us"],
] as const;
const LOADS = [0, 2, 4, 6, 8, 10, 20, 40, 20, 10, 8, 6, 4, 2, 0];
const NOISE = [
  0.01, -0.02, 0.015, 0.005, -0.012, 0.02, -0.018, 0.008, 0.011, -0.009, 0.004, -0.02, 0.013, 0.006, -0.014,
];

/** A cell that reads `gain` per newton and `zero` when nothing hangs on it. */
const cell = ({ gain = 1, zero = 0, readingUnit = "N", loads = LOADS, more = {} }) =>
  Instrument.parse({
    name: "cell",
    role: "thrust",
    calibration: {
      kind: "deadWeights",
      appliedUnit: "N",
      readingUnit,
      points: loads.map((applied, i) => ({ applied, reading: zero + gain * (applied + NOISE[i]!) })),
      appliedTolerance: 0.005,
      ...more,
    },
  });
const used = (instrument: Instrument, id = "a"): UsedInstruments => ({ thrust: { id, instrument } });
const codes = ({ warnings }: Reduction) => warnings.map(({ code }) => code);
const request = (more: object = {}) => ({ table: tableOf(quietColumns()), recipe: recipeOf(USES, more) });

const plain = reduce(request());
const measured = reduce({ ...request(), instruments: used(cell({})) });

describe("a run with a calibrated load cell", () => {
  test("needs no warning that the scale was not calibrated, and says which instrument was used", () => {
    expect(codes(measured)).toEqual([]);
    expect(measured.calibrations).toEqual([
      { role: "thrust", name: "cell", sentence: expect.stringMatching(/^1 N of reading is/) },
    ]);
    expect(Reduction.parse(JSON.parse(JSON.stringify(measured)))).toEqual(measured);
  });

  test("takes the doubt of weights and line into that of the coefficient, which a tare frees of the zero", () => {
    const keys = measured.thrustFit.components.map(({ key }) => key).filter((key) => key.includes("instrument"));
    expect(keys).toEqual(["thrust-instrument:a:scale", "thrust-instrument:a:line"]);
    const scale = measured.thrustFit.components.find(({ key }) => key.endsWith(":scale"))!;
    // Rectangular, half-width 0.5 %: 0.005/√3, JCGM 100:2008, 4.3.7.
    expect(scale.standardUncertainty / measured.thrustCoefficient.value).toBeCloseTo(0.005 / Math.sqrt(3), 9);
  });

  test("is corrected by the gain of the cell, whatever the typed correction says", () => {
    const corrections = { thrust: { factor: 7, relativeUncertainty: 0.3 } };
    const twice = reduce({ ...request({ corrections }), instruments: used(cell({ gain: 2 })) });
    expect(twice.thrustCoefficient.value / measured.thrustCoefficient.value).toBeCloseTo(0.5, 9);
  });

  test("may be logged in counts: the numbers are taken as they are written", () => {
    const columns = quietColumns();
    const thrust = Float64Array.from(columns.thrust, (force) => 8000 + 431 * force);
    const counts = cell({ gain: 431, zero: 8000, readingUnit: "counts" });
    const reduction = reduce({ ...request(), table: tableOf({ ...columns, thrust }), instruments: used(counts) });
    expect(reduction.thrustCoefficient.value / measured.thrustCoefficient.value).toBeCloseTo(1, 9);
  });

  test("without a tare has the zero of the calibration taken off, and its doubt counted", () => {
    const tare = { tare: { mode: "none" } };
    const columns = quietColumns();
    // The log's own zero, 0.8 N, is that of the cell.
    const reduction = reduce({ ...request(tare), table: tableOf(columns), instruments: used(cell({ zero: 0.8 })) });
    expect(reduction.thrustCoefficient.value / plain.thrustCoefficient.value).toBeCloseTo(1, 2);
    const keys = reduction.thrustFit.components.map(({ key }) => key);
    expect(keys).toContain("thrust-instrument:a:level");
  });

  test("that goes beyond what was hung on the stand is told", () => {
    const small = cell({ loads: [0, 0.5, 1, 1.5, 1, 0.5, 0] });
    expect(codes(reduce({ ...request(), instruments: used(small) }))).toContain("bench.beyond-calibration");
  });

  test("whose log says another unit than the table of the instrument is told", () => {
    const table = tableOf(quietColumns());
    const shape = {
      ...table.shape,
      columns: table.shape.columns.map((one) => ({ ...one, unit: one.name === "thrust" ? "N" : null })),
    };
    const instruments = used(cell({ readingUnit: "counts" }));
    expect(codes(reduce({ ...request(), table: { ...table, shape }, instruments }))).toContain(
      "bench.calibrated-in-other-unit",
    );
  });
});

test("the error of an instrument cancels between runs that share it, and only there", () => {
  const compared = (idOfOther: string) => {
    const other = reduce({
      ...request(),
      instruments: used(cell({}), idOfOther),
      source: { sha256: "1".repeat(64), program: "test" },
    });
    const sides = { baseline: { name: "a", reductions: [measured] }, variant: { name: "b", reductions: [other] } };
    return compareVariants(sides).thrustCoefficientRatio.standardUncertainty;
  };
  const [shared, own] = [compared("a"), compared("b")];
  // Two independent calibrations of 0.5 %/√3 each: √2 × 0.29 %.
  expect(Math.sqrt(own ** 2 - shared ** 2)).toBeCloseTo((Math.SQRT2 * 0.005) / Math.sqrt(3), 3);
});

test("a tachometer that counts three blades reads three times the rate", () => {
  const calibration = { kind: "markers", pulsesPerTurn: 3 };
  const tachometer = Instrument.parse({ name: "tachometer", role: "rotationRate", calibration });
  const reduction = reduce({ ...request(), instruments: { rotationRate: { id: "t", instrument: tachometer } } });
  expect(reduction.thrustCoefficient.value / plain.thrustCoefficient.value).toBeCloseTo(9, 9);
});

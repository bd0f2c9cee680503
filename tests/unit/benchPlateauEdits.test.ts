import { describe, expect, test } from "vitest";
import { Reduction } from "../../shared/model/reduction.ts";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { recipeOf, reduce, tableOf } from "./benchTable.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["command", "us"],
] as const;

const SPANS = [
  { start: 18.3, end: 22.1, origin: "command" },
  { start: 24.2, end: 27.9, origin: "moved" },
];
const byHand = (more: object = {}, spans: readonly object[] = SPANS) =>
  recipeOf(USES, { plateaus: { mode: "spans", spans }, ...more });
const edges = ({ plateaus }: Reduction) => plateaus.map(({ firstLine, lastLine }) => [firstLine, lastLine]);

describe("plateaus set by hand", () => {
  const table = tableOf(quietColumns());
  const before = reduce({ table, recipe: byHand() });

  test("say what found each of them and how long it took to settle", () => {
    expect(before.plateaus.map(({ foundBy }) => foundBy)).toEqual(["command", "moved"]);
    for (const { settlingTime } of before.plateaus) {
      // The stand settles with a time constant of 0.05 s in thrust; the estimate comes in 48ths of a 6 s step.
      expect(settlingTime).toBeGreaterThanOrEqual(0);
      expect(settlingTime).toBeLessThan(1.5);
    }
  });

  test("keep their rows when calibration, sign, fluid or propeller side of the recipe change", () => {
    for (const more of [
      { corrections: { thrust: { factor: 2.5, relativeUncertainty: 0.01 } } },
      { corrections: { rotationRate: { factor: 0.5 } } },
      { fluid: { kind: "sea", temperature: 285.15, salinity: 33 } },
      { tare: { mode: "none" } },
    ]) {
      expect(edges(reduce({ table, recipe: byHand(more) }))).toEqual(edges(before));
    }
  });

  test("leave the steps that the search would have taken in the list of rejected stretches, with the reason", () => {
    expect(before.rejected.map(({ because }) => because)).toContain("not among the plateaus set by hand");
    for (const { start, end, firstLine, lastLine } of before.rejected) {
      expect(end).toBeGreaterThanOrEqual(start);
      expect(lastLine).toBeGreaterThanOrEqual(firstLine);
      expect(before.plateaus.every((one) => one.lastLine < firstLine || one.firstLine > lastLine)).toBe(true);
    }
  });

  test("that an older recipe holds without an origin are said to be set by hand", () => {
    const plain = SPANS.map(({ start, end }) => ({ start, end }));
    const reduction = reduce({ table, recipe: byHand({}, plain) });
    expect(reduction.plateaus.map(({ foundBy }) => foundBy)).toEqual(["hand", "hand"]);
  });

  test("cut a plateau in two without losing a reading", () => {
    const whole = reduce({ table, recipe: byHand({}, [{ start: 18, end: 22 }, SPANS[1]!]) });
    // At the time of a row, and between two rows.
    for (const at of [table.columns[0]![1000]!, 20.011]) {
      const halves = [{ start: 18, end: at }, { start: at, end: 22 }, SPANS[1]!];
      const [first, second] = reduce({ table, recipe: byHand({}, halves) }).plateaus;
      expect(first!.samples + second!.samples).toBe(whole.plateaus[0]!.samples);
      expect(second!.firstLine).toBe(first!.lastLine + 1);
    }
  });
});

test("every stretch that the search passed over is told, or is a tare window", () => {
  // The third step still settles all through: its thrust creeps.
  const { time, thrust, rate } = quietColumns();
  const creeping = thrust.map((value, i) => (time[i]! >= 17 && time[i]! < 23 ? value - (23 - time[i]!) : value));
  const reduction = reduce({ table: tableOf({ time, thrust: creeping, rate }), recipe: recipeOf(USES.slice(0, 3)) });
  expect(reduction.plateaus).toHaveLength(4);
  const told = reduction.rejected.find(({ because }) => because.startsWith("still settling"))!;
  expect(told.start).toBeGreaterThan(16.5);
  expect(told.end).toBeLessThan(23.5);
  expect(Reduction.parse(JSON.parse(JSON.stringify(reduction)))).toEqual(reduction);
});

test("a row of a notebook without clock is left out by its line", () => {
  const table = tableOf({ rpm: [0, 900, 1400, 2000, 2600, 0], grams: [2, 45, 106, 217, 366, 2] });
  const uses = [
    ["rotationRate", "rpm"],
    ["thrust", "g"],
  ] as const;
  const recipe = recipeOf(uses, { leftOut: [{ line: 4, reason: "read in haste" }] });
  const { plateaus } = reduce({ table, recipe });
  expect(plateaus.map(({ used, leftOutBecause }) => [used, leftOutBecause])).toEqual([
    [true, null],
    [false, "read in haste"],
    [true, null],
    [true, null],
  ]);
  expect(plateaus.every(({ foundBy, settlingTime }) => foundBy === "row" && settlingTime === null)).toBe(true);
});

test("a dead-band plateau that was found and left out stays out after another plateau was moved", () => {
  const { time, thrust, rate, command } = quietColumns();
  const hunting = rate.map((n, i) => (time[i]! >= 5 && time[i]! < 11 ? n * (1 + 0.25 * (i % 2 ? 1 : -1)) : n));
  const table = tableOf({ time, thrust, rate: hunting, command });
  const found = reduce({ table, recipe: recipeOf(USES) });
  const uneven = found.plateaus.findIndex(({ used }) => !used);
  expect(uneven).toBeGreaterThanOrEqual(0);
  const spans = found.plateaus.map(({ span, foundBy }) => ({ ...span, origin: foundBy }));
  const moved = reduce({ table, recipe: byHand({}, spans.with(-1, { ...spans.at(-1)!, origin: "moved" })) });
  expect(moved.plateaus[uneven]!.used).toBe(false);
});

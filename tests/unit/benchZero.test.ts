import { describe, expect, test } from "vitest";
import type { Reduction } from "../../shared/model/reduction.ts";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { codes, problemOf, recipeOf, reduce, tableOf, USES } from "./benchTable.ts";

describe("the zero of the scale", () => {
  test("is followed as it drifts in a straight line", () => {
    const reduction = reduce({ table: tableOf(quietColumns({ drift: 1.5 })), recipe: recipeOf(USES) });
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(reduction.tare.drift!.value).toBeCloseTo(1.3, 1);
  });

  test("is not known without a rest: told, and computed all the same", () => {
    const columns = quietColumns({ rest: 5, zero: 0 });
    const turning = columns.time.map((t) => t > 5.5 && t < 34.8);
    const cut = Object.fromEntries(
      Object.entries(columns).map(([name, values]) => [name, values.filter((_, row) => turning[row])]),
    );
    const reduction = reduce({ table: tableOf(cut), recipe: recipeOf(USES) });
    expect(codes(reduction)).toContain("bench.no-tare");
    expect(reduction.tare.windows).toEqual([]);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  });

  test("of one rest only is told to hide a drift", () => {
    const columns = quietColumns();
    const cut = Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, values.slice(0, 34.5 * 50)]));
    expect(codes(reduce({ table: tableOf(cut), recipe: recipeOf(USES) }))).toContain("bench.one-tare");
  });

  test("can be set by windows, and one in which the propeller turns is told", () => {
    const windows = (start: number, end: number) =>
      recipeOf(USES, { tare: { mode: "windows", windows: [{ start, end }] } });
    const table = tableOf(quietColumns());
    expect(reduce({ table, recipe: windows(1, 4) }).thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(codes(reduce({ table, recipe: windows(3, 8) }))).toContain("bench.tare-while-turning");
    expect(problemOf(() => reduce({ table, recipe: windows(500, 510) })).code).toBe("bench.empty-tare-window");
  });

  test("is the same whatever the order in which its windows were drawn", () => {
    const table = tableOf(quietColumns({ zero: 0.8, drift: 0.5 }));
    const { windows } = reduce({ table, recipe: recipeOf(USES) }).tare;
    const drawn = windows.map(({ start, end }) => ({ start, end }));
    const of = (some: typeof drawn) =>
      reduce({ table, recipe: recipeOf(USES, { tare: { mode: "windows", windows: some } }) });
    const zeros = (reduction: Reduction) => reduction.plateaus.map(({ thrustTare }) => thrustTare);
    expect(drawn.length).toBeGreaterThan(1);
    expect(zeros(of(drawn.toReversed()))).toEqual(zeros(of(drawn)));
  });

  test("is taken on each side of a restart for itself, and no plateau reaches across", () => {
    const first = quietColumns({ zero: 0.8 });
    const second = quietColumns({ zero: -2.5 });
    const joined = Object.fromEntries(
      Object.keys(first).map((name) => [name, [...first[name as "time"], ...second[name as "time"]]]),
    );
    const reduction = reduce({ table: tableOf(joined), recipe: recipeOf(USES) });
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(reduction.plateaus).toHaveLength(10);
    expect(codes(reduction)).toContain("bench.time-restart");
  });

  test("of another part is borrowed after a restart in the middle of a plateau, and that is told", () => {
    const columns = quietColumns();
    const middle = 20 * 50;
    columns.time = columns.time.map((t, row) => (row >= middle ? t - columns.time[middle]! : t));
    columns.thrust = columns.thrust.slice(0, 34 * 50);
    const cut = Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, values.slice(0, 34 * 50)]));
    const reduction = reduce({ table: tableOf(cut), recipe: recipeOf(USES) });
    expect(codes(reduction)).toContain("bench.tare-borrowed");
    const line = middle + 2;
    expect(reduction.plateaus.some(({ firstLine, lastLine }) => firstLine < line && lastLine >= line)).toBe(false);
  });
});

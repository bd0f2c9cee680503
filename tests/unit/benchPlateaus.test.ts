import { describe, expect, test } from "vitest";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { codes, messageOf, problemOf, recipeOf, reduce, tableOf, USES } from "./benchTable.ts";

describe("plateaus", () => {
  test("are found by rotation rate alone as well as by command", () => {
    const { command: _, ...columns } = quietColumns();
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES.slice(0, 3)) });
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  });

  test("start only when a slow stand has settled", () => {
    const reduction = reduce({
      table: tableOf(quietColumns({ settlingTime: 0.6, dwell: 12 })),
      recipe: recipeOf(USES),
    });
    const waits = reduction.plateaus.map(({ start }, i) => start! - (5 + 12 * i));
    expect(Math.min(...waits)).toBeGreaterThan(1.2);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  });

  test("need no time column: a long log counts rows and has no times", () => {
    const { time: _, ...columns } = quietColumns();
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES.slice(1)) });
    expect(codes(reduction)).toContain("bench.no-time");
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.plateaus[0]!.start).toBeNull();
  });

  test("can be given as spans", () => {
    const recipe = recipeOf(USES, {
      plateaus: {
        mode: "spans",
        spans: [
          { start: 18, end: 22 },
          { start: 24, end: 28 },
        ],
      },
    });
    const reduction = reduce({ table: tableOf(quietColumns()), recipe });
    expect(reduction.plateaus.map(({ start, end }) => [start, end].map((t) => Math.round(t!)))).toEqual([
      [18, 22],
      [24, 28],
    ]);
  });

  test("that a person left out stay in the list with the reason", () => {
    const recipe = recipeOf(USES, { leftOut: [{ start: 11, end: 17, reason: "a fish" }] });
    const { plateaus, thrustFit } = reduce({ table: tableOf(quietColumns()), recipe });
    expect(plateaus.map(({ used }) => used)).toEqual([true, false, true, true, true]);
    expect(plateaus[1]!.leftOutBecause).toBe("a fish");
    expect(thrustFit.points).toBe(4);
  });

  test("are not made of a slow ramp, and too few of them is a refusal that says why", () => {
    const rows = 3000;
    const rate = Array.from({ length: rows }, (_, i) => (i < 250 || i > 2750 ? 0 : ((i - 250) * 45) / 2500));
    const time = rate.map((_, i) => i / 50);
    const thrust = rate.map((n, i) => 0.2 * 998.6 * n * n * 0.076 ** 4 + 0.02 * Math.sin(i * 1.7));
    const problem = problemOf(() =>
      reduce({ table: tableOf({ time, thrust, rate }), recipe: recipeOf(USES.slice(0, 3)) }),
    );
    expect(problem.code).toBe("bench.ramp-without-plateaus");
    expect(problem.found).toMatch(/^[01] usable plateaus? w/);
    expect(problem.found).toContain("ramp");
    expect(problem.mend).toContain("sweep");
  });

  test("of a propeller that never turned is a refusal that points at the rotation rate", () => {
    const { time, thrust } = quietColumns();
    const table = tableOf({ time, thrust, rate: time.map(() => 0) });
    const problem = problemOf(() => reduce({ table, recipe: recipeOf(USES.slice(0, 3)) }));
    expect(problem.code).toBe("bench.too-few-plateaus");
    expect(problem.found).toContain("at rest");
    expect(problem.mend).toContain("rotation rate");
  });

  test("are not made of a step that still moves when half of it is over, and that is told", () => {
    const columns = quietColumns();
    const creeping = columns.thrust.map((T, row) => {
      const within = columns.time[row]! - 17;
      return within > 0 && within < 6 ? T + 2 * Math.exp(-within / 2) : T;
    });
    const reduction = reduce({ table: tableOf({ ...columns, thrust: creeping }), recipe: recipeOf(USES) });
    expect(reduction.plateaus).toHaveLength(4);
    expect(messageOf(reduction, "bench.unsettled")).toContain("1 held step was");
  });

  test("lose single wild readings, counted, with the line of the first", () => {
    const columns = quietColumns();
    columns.thrust[420] = 400;
    columns.thrust[900] = -77;
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES) });
    expect(messageOf(reduction, "bench.glitches")).toMatch(
      /line 422.*2 readings in 2 plateaus.*the first is 400(\.\d+)? N/,
    );
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  });

  test("are not split where the tachometer loses several readings close together and writes 0", () => {
    const { command: _, ...columns } = quietColumns();
    const slow = (values: number[]) => values.filter((_, row) => row % 5 === 0);
    const rate = slow(columns.rate).map((n, row) => ([20, 21, 23, 24, 26].includes(row % 60) ? 0 : n));
    const table = tableOf({ time: slow(columns.time), thrust: slow(columns.thrust), rate });
    const reduction = reduce({ table, recipe: recipeOf(USES.slice(0, 3)) });
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(codes(reduction)).toContain("bench.glitches");
  });

  test("of a propeller that turns the other way are shown, not fitted", () => {
    const columns = quietColumns();
    const idle = 1500;
    columns.command = columns.command.map((_, row) => idle + 8 * Math.round(columns.rate[row]!));
    const back = quietColumns({ thrustCoefficient: -0.12, steps: [20, 30] });
    const command = back.rate.map((n) => idle - 8 * Math.round(n));
    const last = columns.time.at(-1)! + 0.02;
    const table = tableOf({
      time: [...columns.time, ...back.time.map((t) => t + last)],
      thrust: [...columns.thrust, ...back.thrust],
      rate: [...columns.rate, ...back.rate],
      command: [...columns.command, ...command],
    });
    const reduction = reduce({ table, recipe: recipeOf(USES) });
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(reduction.plateaus.filter(({ leftOutBecause }) => leftOutBecause?.includes("other way"))).toHaveLength(2);
  });

  test("do not count a command inside the dead band, which is told", () => {
    const columns = quietColumns({ rest: 8 });
    columns.command = columns.command.map((value, row) =>
      columns.time[row]! > 4 && columns.time[row]! < 8 ? 1200 : value,
    );
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES) });
    expect(codes(reduction)).toContain("bench.dead-band");
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.tare.windows[0]!.end).toBeLessThan(4);
  });
});

describe("a scale and a notebook", () => {
  const rpm = [0, 1000, 1500, 2000, 2500, 3000, 0];
  const grams = rpm.map((n) => 12 + Math.round((0.2 * 998.6 * (n / 60) ** 2 * 0.076 ** 4) / 9.80665e-3));
  const table = tableOf({ rpm, grams }, { resolutions: [10, 1] });
  const reduction = reduce({
    table,
    recipe: recipeOf([
      ["rotationRate", "rpm"],
      ["thrust", "g"],
    ]),
  });

  test("each row that turns is a plateau without time, rows at rest are the zero", () => {
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.plateaus[0]).toMatchObject({ start: null, end: null, samples: 1, firstLine: 3 });
    expect(reduction.plateaus[0]!.thrustTare).toBeCloseTo(12 * 9.80665e-3, 9);
  });

  test("doubt comes from the step of the instruments and the scatter of the rows; no spread is made up", () => {
    const step = 9.80665e-3 / Math.sqrt(12);
    // Rounding of the reading and of the zero.
    expect(reduction.plateaus[0]!.thrust.standardUncertainty).toBeCloseTo(step * Math.SQRT2, 6);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 2);
    expect(reduction.thrustFit.degreesOfFreedom).toBeGreaterThanOrEqual(4);
    expect(codes(reduction)).toContain("bench.single-readings");
  });
});

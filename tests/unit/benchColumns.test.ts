import { describe, expect, test } from "vitest";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { problemOf, recipeOf, reduce, tableOf, USES } from "./benchTable.ts";

describe("columns", () => {
  test("a missing thrust column is refused, naming the columns that are there", () => {
    const recipe = recipeOf([
      ["time", "s"],
      ["ignore", "1"],
      ["rotationRate", "rev/s"],
    ]);
    const problem = problemOf(() => reduce({ table: tableOf(quietColumns()), recipe }));
    expect(problem.code).toBe("bench.missing-role");
    expect(problem.found).toContain("time, thrust, rate, command");
  });

  test("a role on two columns is refused", () => {
    const recipe = recipeOf([
      ["time", "s"],
      ["thrust", "N"],
      ["rotationRate", "rev/s"],
      ["thrust", "N"],
    ]);
    expect(problemOf(() => reduce({ table: tableOf(quietColumns()), recipe })).code).toBe("bench.role-twice");
  });

  test("electrical turns without pole pairs are refused, naming the column", () => {
    const recipe = recipeOf([
      ["time", "s"],
      ["thrust", "N"],
      ["rotationRate", "erpm"],
    ]);
    const problem = problemOf(() => reduce({ table: tableOf(quietColumns()), recipe }));
    expect(problem.code).toBe("bench.no-pole-pairs");
    expect(problem.where).toContain("rate");
    expect(problem.mend).toContain("magnets");
  });

  test("grams of a scale on a lever, electrical rpm and milliseconds give the same as newton, rev/s and seconds", () => {
    const { time, thrust, rate, command } = quietColumns();
    const other = tableOf({
      time: time.map((seconds) => seconds * 1000),
      thrust: thrust.map((newton) => (newton / 9.80665e-3) * 2 + 150),
      rate: rate.map((n) => n * 60 * 7),
      command,
    });
    const recipe = recipeOf(
      [
        ["time", "ms"],
        ["thrust", "g"],
        ["rotationRate", "erpm"],
        ["command", "us"],
      ],
      {
        polePairs: 7,
        corrections: { thrust: { factor: 0.5, offset: 150 } },
      },
    );
    const plain = reduce({ table: tableOf(quietColumns()), recipe: recipeOf(USES) });
    const converted = reduce({ table: other, recipe });
    expect(converted.thrustCoefficient.value).toBeCloseTo(plain.thrustCoefficient.value, 9);
    expect(converted.tare.windows[0]!.thrust.value).toBeCloseTo(plain.tare.windows[0]!.thrust.value, 9);
  });

  test("missing cells are passed over", () => {
    const columns = quietColumns();
    columns.thrust = columns.thrust.map((value, row) => (row % 7 === 3 ? Number.NaN : value));
    columns.rate = columns.rate.map((value, row) => (row % 11 === 5 ? Number.NaN : value));
    columns.time[400] = Number.NaN;
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES) });
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(JSON.stringify(reduction)).not.toContain("null,null,null");
  });
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { traceOf } from "../../shared/bench/trace.ts";
import { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { propellerOf, recipeOf, reduce, tableOf } from "../unit/benchTable.ts";
import { quietColumns } from "./benchSimulatedRun.ts";

const cell = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: -50, max: 50, noNaN: true }) },
  { weight: 3, arbitrary: fc.constantFrom(0, 1, 10, 30, 1e6, -1e6) },
  { weight: 1, arbitrary: fc.constant(Number.NaN) },
);
const ROLES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rpm"],
  ["torque", "N·m"],
  ["voltage", "V"],
  ["current", "A"],
  ["command", "%"],
] as const;

/** The run is reduced to a sound document, or refused in words; nothing else may happen. */
function expectAnswer(request: Parameters<typeof reduce>[0]): void {
  let reduction: Reduction;
  try {
    reduction = reduce(request);
  } catch (error) {
    expect(error).toBeInstanceOf(InputProblem);
    expect((error as Error).message).not.toMatch(/NaN|undefined|Infinity/);
    return;
  }
  expect(Reduction.parse(JSON.parse(JSON.stringify(reduction)))).toEqual(reduction);
  for (const { message } of reduction.warnings) expect(message).not.toMatch(/NaN|undefined|Infinity|null/);
}

test("a table of any numbers is reduced to finite numbers or refused in words", () => {
  const row = fc.tuple(cell, cell, cell, cell, cell, cell, cell);
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 0, maxLength: 60 }),
      fc.boolean(),
      fc.boolean(),
      (rows, withTime, inOrder) => {
        const column = (i: number) => rows.map((cells, r) => (i === 0 && inOrder ? r * 0.5 : cells[i]!));
        const uses = ROLES.filter(([role]) => withTime || role !== "time");
        const offset = withTime ? 0 : 1;
        const table = tableOf(Object.fromEntries(uses.map(([role], i) => [role, column(i + offset)])));
        expectAnswer({
          table,
          recipe: recipeOf(uses),
          propeller: propellerOf({ chordAt07: 0.02, diameterUncertainty: 1e-4 }),
        });
        if (rows.length > 0)
          expect(() => JSON.stringify(traceOf({ table, recipe: recipeOf(uses), points: 7 }))).not.toThrow(TypeError);
      },
    ),
    { numRuns: 300 },
  );
});

test("a good log with any stretch of any channel spoiled is still reduced or refused in words", () => {
  const good = quietColumns({ samplingRate: 20 });
  const names = ["time", "thrust", "rate", "command"] as const;
  const length = good.time.length;
  const spoiling = fc.record({
    name: fc.constantFrom(...names),
    from: fc.integer({ min: 0, max: length - 1 }),
    count: fc.integer({ min: 1, max: 300 }),
    value: cell,
  });
  fc.assert(
    fc.property(fc.array(spoiling, { minLength: 1, maxLength: 6 }), (spoilings) => {
      const columns = {
        time: [...good.time],
        thrust: [...good.thrust],
        rate: [...good.rate],
        command: [...good.command],
      };
      for (const { name, from, count, value } of spoilings) columns[name].fill(value, from, from + count);
      const recipe = recipeOf([
        ["time", "s"],
        ["thrust", "N"],
        ["rotationRate", "rev/s"],
        ["command", "us"],
      ]);
      expectAnswer({ table: tableOf(columns), recipe });
    }),
    { numRuns: 100 },
  );
});

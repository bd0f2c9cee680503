import fc from "fast-check";
import { expect, test } from "vitest";
import type { Reduction } from "../../shared/model/reduction.ts";
import { propellerOf, recipeOf, reduce, tableOf } from "../unit/benchTable.ts";
import { quietColumns } from "./benchSimulatedRun.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["command", "us"],
] as const;
const COLUMNS = quietColumns({ drift: 0.1, correlation: 0.4, sag: 0.01 });
const PLAIN = reduce({ table: tableOf(COLUMNS), recipe: recipeOf(USES) });
const RUNS = { numRuns: 12 };

function expectSame(a: Reduction, b: Reduction, factor = 1): void {
  expect(b.plateaus).toHaveLength(a.plateaus.length);
  expect(b.thrustCoefficient.value / (factor * a.thrustCoefficient.value)).toBeCloseTo(1, 8);
  expect(b.thrustCoefficient.standardUncertainty / (factor * a.thrustCoefficient.standardUncertainty)).toBeCloseTo(
    1,
    5,
  );
  expect(b.exponent!.value).toBeCloseTo(a.exponent!.value, 6);
}

test("scaling all forces scales the thrust coefficient and its uncertainty", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.2, max: 5, noNaN: true }), (factor) => {
      const recipe = recipeOf(USES, { corrections: { thrust: { factor } } });
      expectSame(PLAIN, reduce({ table: tableOf(COLUMNS), recipe }), factor);
    }),
    RUNS,
  );
});

test("a constant added to the thrust column changes nothing but the tare", () => {
  fc.assert(
    fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (constant) => {
      const table = tableOf({ ...COLUMNS, thrust: COLUMNS.thrust.map((T) => T + constant) });
      const shifted = reduce({ table, recipe: recipeOf(USES) });
      expectSame(PLAIN, shifted);
      expect(shifted.plateaus[0]!.thrustTare - PLAIN.plateaus[0]!.thrustTare).toBeCloseTo(constant, 6);
    }),
    RUNS,
  );
});

test("the moment at which the clock started changes nothing", () => {
  fc.assert(
    fc.property(fc.integer({ min: -1000, max: 100000 }), (start) => {
      const table = tableOf({ ...COLUMNS, time: COLUMNS.time.map((t) => t + start) });
      expectSame(PLAIN, reduce({ table, recipe: recipeOf(USES) }));
    }),
    RUNS,
  );
});

test("the order of the columns changes nothing at all", () => {
  const headers = ["time", "thrust", "rate", "command"] as const;
  fc.assert(
    fc.property(fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }), (order) => {
      const table = tableOf(Object.fromEntries(order.map((i) => [headers[i]!, COLUMNS[headers[i]!]])));
      const recipe = recipeOf(order.map((i) => USES[i]!));
      const { columns: _, ...shuffled } = reduce({ table, recipe });
      const { columns: __, ...plain } = PLAIN;
      expect(shuffled).toEqual(plain);
    }),
    RUNS,
  );
});

test("the thrust coefficient goes with the inverse fourth power of the diameter and stays put in thrust", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.03, max: 0.3, noNaN: true }), (diameter) => {
      const other = reduce({ table: tableOf(COLUMNS), recipe: recipeOf(USES), propeller: propellerOf({ diameter }) });
      expectSame(PLAIN, other, (0.076 / diameter) ** 4);
      expect(other.plateaus.map(({ thrust }) => thrust)).toEqual(PLAIN.plateaus.map(({ thrust }) => thrust));
    }),
    RUNS,
  );
});

test("a slow ramp of any length, with or without a command, is never taken for plateaus", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 8, max: 300, noNaN: true }),
      fc.boolean(),
      fc.integer({ min: 1, max: 1000 }),
      (duration, withCommand, start) => {
        let state = start;
        const wobble = () => {
          state = (16807 * state) % 2147483647;
          return state / 2147483647 - 0.5;
        };
        const rows = Math.floor((duration + 10) * 25);
        const time = Array.from({ length: rows }, (_, row) => row / 25);
        const rate = time.map((t) => (t < 5 || t > duration + 5 ? 0 : ((t - 5) / duration) * 40));
        const measured = rate.map((n) => (n > 0 ? n + wobble() : 0));
        const thrust = rate.map((n) => 0.2 * 998.6 * n * n * 0.076 ** 4 + 0.1 * wobble());
        const command = rate.map((n) => Math.round(1100 + 20 * n + wobble()));
        const table = tableOf(withCommand ? { time, thrust, measured, command } : { time, thrust, measured });
        expect(() => reduce({ table, recipe: recipeOf(USES.slice(0, withCommand ? 4 : 3)) })).toThrow("ramp");
      },
    ),
    { numRuns: 40 },
  );
});

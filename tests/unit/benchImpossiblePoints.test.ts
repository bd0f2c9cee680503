import { describe, expect, test } from "vitest";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { codes, messageOf, propellerOf, recipeOf, reduce, tableOf, USES } from "./benchTable.ts";

describe("points that can not be", () => {
  const reduceChanged = (thrust: (value: number) => number, rate = (value: number) => value, more: object = {}) => {
    const columns = quietColumns();
    const changed = { ...columns, thrust: columns.thrust.map(thrust), rate: columns.rate.map(rate), ...more };
    return reduce({ table: tableOf(changed), recipe: recipeOf(USES) });
  };

  test("gram-force read as newton is named, with the coefficient it would be", () => {
    const reduction = reduceChanged((newton) => newton / 9.80665e-3);
    expect(messageOf(reduction, "bench.impossible-coefficient")).toContain(
      "gram-force read as newton (K_T would be 0.20)",
    );
  });

  test("electrical rpm read as shaft rpm is named with the pole pairs that would do", () => {
    const reduction = reduceChanged(
      (newton) => newton,
      (n) => n * 7,
    );
    expect(messageOf(reduction, "bench.impossible-coefficient")).toMatch(
      /electrical rpm read as shaft rpm \(5 to 12 pole pairs/,
    );
  });

  test("a reversed load cell is told with its mend; the exponent is still found", () => {
    const reduction = reduceChanged((newton) => -newton);
    expect(messageOf(reduction, "bench.negative-thrust")).toContain("turn the sign round");
    expect(reduction.thrustCoefficient.value).toBeCloseTo(-0.2, 3);
    expect(reduction.exponent!.value).toBeCloseTo(2, 1);
  });

  test("thrust above the momentum limit is told with power, limit and likely causes", () => {
    const columns = quietColumns();
    const voltage = columns.time.map(() => 12);
    const current = columns.rate.map((n) => (n / 45) ** 3 * 0.5);
    const table = tableOf({ ...columns, voltage, current });
    const recipe = recipeOf([...USES, ["voltage", "V"], ["current", "A"]]);
    const open = reduce({ table, recipe });
    const message = messageOf(open, "bench.above-momentum-limit");
    expect(message).toMatch(/Plateau \d \(lines \d+ to \d+\): .* N from .* W of electrical power can not be/);
    expect(message).toContain("Likely:");
    const nozzle = reduce({ table, recipe, propeller: propellerOf({ nozzle: true }) });
    expect(nozzle.plateaus[0]!.momentumLimit! / open.plateaus[0]!.momentumLimit!).toBeCloseTo(Math.cbrt(2), 9);
  });

  test("thrust that falls as the propeller speeds up is told", () => {
    const columns = quietColumns();
    const ventilated = columns.thrust.map((T, row) => (columns.rate[row]! > 41 ? 0.8 + (T - 0.8) * 0.5 : T));
    const reduction = reduce({ table: tableOf({ ...columns, thrust: ventilated }), recipe: recipeOf(USES) });
    expect(messageOf(reduction, "bench.thrust-falls")).toContain("ventilation");
  });

  test("a thrust that is no square of the rotation rate is told by exponent", () => {
    const columns = quietColumns({ zero: 0 });
    const bent = columns.thrust.map((T, row) => T * Math.max(columns.rate[row]! / 30, 0.01) ** 0.15);
    const reduction = reduce({ table: tableOf({ ...columns, thrust: bent }), recipe: recipeOf(USES) });
    expect(reduction.exponent!.value).toBeCloseTo(2.15, 2);
    expect(messageOf(reduction, "bench.exponent")).toMatch(/2\.1\d.*rises by 1[678] %/);
  });

  test("friction that makes up and down differ is told with both coefficients", () => {
    const columns = quietColumns({ steps: [15, 22, 30, 37, 45, 37, 30, 22, 15] });
    const down = columns.time.map((t) => t > 5 + 5 * 6);
    const sticky = columns.thrust.map((T, row) => (down[row] ? 0.8 + (T - 0.8) * 1.03 : T));
    const reduction = reduce({ table: tableOf({ ...columns, thrust: sticky }), recipe: recipeOf(USES) });
    expect(messageOf(reduction, "bench.up-down")).toMatch(/way up .*0\.20.*way down.*0\.206/);
  });

  test("one plateau that does not belong is named with its lines, and still counts", () => {
    const columns = quietColumns({ steps: [15, 20, 25, 30, 35, 40, 45] });
    const off = columns.thrust.map((T, row) => (Math.abs(columns.rate[row]! - 30) < 2 ? T * 1.04 : T));
    const reduction = reduce({ table: tableOf({ ...columns, thrust: off }), recipe: recipeOf(USES) });
    expect(messageOf(reduction, "bench.outlier")).toMatch(/Plateau 4 \(lines \d+ to \d+\)/);
    expect(reduction.plateaus[3]!.used).toBe(true);
  });

  test("low blade Reynolds numbers are told where the chord is known", () => {
    const table = tableOf(quietColumns());
    const propeller = propellerOf({ chordAt07: 0.02 });
    expect(codes(reduce({ table, recipe: recipeOf(USES), propeller }))).toContain("bench.low-reynolds");
  });
});

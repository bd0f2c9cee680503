import { describe, expect, test } from "vitest";
import { AllocationTable } from "../../shared/model/vehicle/allocationTable.ts";
import { allocator } from "../../shared/vehicle/layout/allocate.ts";
import { allocationTable } from "../../shared/vehicle/layout/allocationTable.ts";
import { layoutAnswer } from "../../shared/vehicle/layout/layoutAnswer.ts";
import * as L from "./vehicleLayouts.ts";
import { ahead, at } from "./vehicleLayouts.ts";

describe("shares for a control system", () => {
  const request = L.layoutOf(L.EIGHT);

  test("within the limits the pseudo-inverse is taken as it is", () => {
    const found = allocator(request)({ surge: 10 });
    expect(found.method).toBe("pseudoInverse");
    // By hand: four alike share 10 N at 45 degrees.
    for (const one of found.forces.slice(0, 4)) expect(one).toBeCloseTo(10 / (4 * Math.SQRT1_2), 10);
    expect(found.scaleToEdge).toBeCloseTo(2.8284271247, 8);
  });

  test("a demand beyond the limits keeps its direction and says how much is left", () => {
    const found = allocator(request)({ surge: 56.568542495, yaw: 0 });
    expect(found.scale).toBeCloseTo(0.5, 8);
    expect(found.achieved[0]).toBeCloseTo(28.284271247, 7);
    expect(found.warnings[0]!.message).toContain("50.0 % of this demand");
  });

  test("nothing wanted is nothing done, and an axis that is not commanded is refused", () => {
    expect(allocator(request)({}).forces).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
    expect(() => allocator(L.layoutOf(L.STERN_PAIR))({ sway: 1 })).toThrow("wanted.sway: Sway is not commanded");
    expect(() => allocator(request)({ surge: Number.NaN })).toThrow("not a number");
  });

  test("a demand that can not be made leaves all thrusters at rest", () => {
    const bound = L.layoutOf([[at(-0.2, 0, 0.05), ahead]], 6, { axes: ["surge", "pitch"] });
    expect(allocator(bound)({ surge: 1 })).toMatchObject({ method: "none", forces: [0], scale: 0 });
  });

  test("the table has a row for each axis, way and combination, units in its head, and no formula", () => {
    const named = L.layoutOf(L.VECTORED, 6, {}, (i) => (i === 0 ? { name: "=1+1, fore" } : {}));
    const { csv, json } = allocationTable(named, layoutAnswer(named), [{ surge: 40, yaw: 2 }]);
    expect(AllocationTable.parse(json)).toEqual(json);
    const rows = csv.trimEnd().split("\r\n");
    expect(rows[0]).toContain('"\'=1+1, fore (N)",T2 (N),T3 (N),T4 (N)');
    expect(rows).toHaveLength(1 + 2 + 3 * 2 + 1 + 3);
    expect(rows[2]).toBe("limit,,thrust astern,,,,,,-6,-6,-6,-6");
    expect(rows[3]).toBe("greatest,surge,ahead,28.2842712475,N,28.2842712475,28.2842712475,,10,10,10,10");
    expect(rows[9]).toContain("% of what was asked for");
    expect(rows[10]).toBe(
      "share of 1 unit,surge,ahead,1,N,,,,0.353553390593,0.353553390593,0.353553390593,0.353553390593",
    );
  });
});

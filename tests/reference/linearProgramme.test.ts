import loadHighs from "highs";
import { describe, expect, test } from "vitest";
import { type LinearProgramme, linearProgramme } from "../../shared/numeric/linearProgramme.ts";
import { pcg32 } from "../../shared/numeric/pcg32.ts";
import { DRAWN_PROGRAMMES } from "./linearProgramme.data.ts";

test("the Wyndor Glass problem has its printed optimum", () => {
  // Hillier & Lieberman, Introduction to Operations Research, ch. 3: Z = 36 at (2, 6), from memory.
  const found = linearProgramme({
    maximise: [3, 5],
    atMost: [
      { row: [1, 0], to: 4 },
      { row: [0, 2], to: 12 },
      { row: [3, 2], to: 18 },
    ],
    low: [0, 0],
    high: [Infinity, Infinity],
  });
  expect(found.outcome).toBe("optimal");
  expect(found.greatest).toBeCloseTo(36, 10);
  expect(found.solution[0]).toBeCloseTo(2, 10);
});

test("a problem that makes the steepest rule go round in a circle ends at its optimum", () => {
  // Beale's example, e.g. Chvatal, Linear Programming (1983), ch. 3: optimum 1/20 at (1/25, 0, 1, 0), from memory; scipy agrees.
  const found = linearProgramme({
    maximise: [0.75, -150, 0.02, -6],
    atMost: [
      { row: [0.25, -60, -0.04, 9], to: 0 },
      { row: [0.5, -90, -0.02, 3], to: 0 },
      { row: [0, 0, 1, 0], to: 1 },
    ],
    low: [0, 0, 0, 0],
    high: [Infinity, Infinity, Infinity, Infinity],
  });
  expect(found.outcome).toBe("optimal");
  expect(found.greatest).toBeCloseTo(0.05, 10);
});

describe.each(DRAWN_PROGRAMMES.map((one, i) => [i, one] as const))("drawn programme %i", (_, programme) => {
  test("has the optimum that scipy finds, inside its bounds and rows", () => {
    const found = linearProgramme(programme);
    if (programme.greatest === null) expect(found.outcome).toBe("infeasible");
    else {
      expect(found.outcome).toBe("optimal");
      expect(found.greatest).toBeCloseTo(programme.greatest, 8);
      expect(found.residual).toBeLessThan(1e-9);
      found.solution.forEach((x, j) => {
        expect(x).toBeGreaterThanOrEqual(programme.low[j]!);
        expect(x).toBeLessThanOrEqual(programme.high[j]!);
      });
    }
  });
});

/** The problem in the LP text that the solver reads. */
function lpText({ maximise, equal = [], atMost = [], low, high }: LinearProgramme): string {
  const sum = (row: readonly number[]) =>
    row.map((one, j) => `${one < 0 ? "-" : "+"} ${Math.abs(one)} x${j}`).join(" ");
  const rows = [
    ...equal.map(({ row, to }) => `${sum(row)} = ${to}`),
    ...atMost.map(({ row, to }) => `${sum(row)} <= ${to}`),
  ];
  const bounds = low.map((one, j) => `${one} <= x${j} <= ${high[j]}`);
  return ["Maximize", sum(maximise), "Subject To", ...rows, "Bounds", ...bounds, "End"].join("\n");
}

test("a hundred drawn programmes have the optima that HiGHS finds", async () => {
  const highs = await loadHighs();
  const draw = pcg32(7, 1);
  const whole = (least: number, most: number) => least + (draw() % (most - least + 1));
  const found = { optimal: 0, infeasible: 0 };
  for (let k = 0; k < 100; k++) {
    const n = whole(3, 12);
    const row = () => Array.from({ length: n }, () => whole(-5, 5));
    const low = row();
    const high = low.map((one) => one + whole(0, 9));
    const inside = low.map((one, j) => whole(one, high[j]!));
    // Rows through a point inside have a solution; one number in eight is put off it and may leave none.
    const rows = (count: number) =>
      Array.from({ length: count }, () => {
        // A row of nothing but zeros can not be written in the LP text.
        const coefficients = row().map((one, j) => (j === 0 ? 2 : one));
        const at = coefficients.reduce((sum, one, j) => sum + one * inside[j]!, 0);
        return { row: coefficients, to: whole(1, 8) === 1 ? at - whole(20, 60) : at };
      });
    const programme: LinearProgramme = {
      maximise: row(),
      equal: rows(whole(0, Math.min(4, n - 2))),
      atMost: rows(whole(1, 3)),
      low,
      high,
    };
    const own = linearProgramme(programme);
    const other = highs.solve(lpText(programme));
    expect(own.outcome).toBe(other.Status.toLowerCase());
    if (own.outcome === "optimal") expect(own.greatest).toBeCloseTo(other.ObjectiveValue, 7);
    found[own.outcome as keyof typeof found] += 1;
  }
  expect(found.optimal).toBeGreaterThan(40);
  expect(found.infeasible).toBeGreaterThan(5);
});

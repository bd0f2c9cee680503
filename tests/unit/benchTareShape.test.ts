import { describe, expect, test } from "vitest";
import { tareInWords } from "../../shared/bench/tareInWords.ts";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { recipeOf, reduce, tableOf } from "./benchTable.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
] as const;

/** Five steps between rests, and a rest in the middle; the zero moves by the given law, N. */
function loggedWith(zero: (time: number) => number) {
  const { time, thrust, rate } = quietColumns({ steps: [15, 22, 0, 30, 37, 45], zero: 0, noiseFloor: 0.01 });
  return tableOf({ time, thrust: thrust.map((value, i) => value + zero(time[i]!)), rate });
}
const reduced = (table: ReturnType<typeof tableOf>, tare: object) =>
  reduce({ table, recipe: recipeOf(USES, { tare: { mode: "zeroThrottle", ...tare } }) });

describe("a zero that drifts evenly", () => {
  const table = loggedWith((t) => 0.5 + 0.01 * t);

  test.each(["piecewise", "line"])("is taken off rightly as %s, and the drift is told in N per minute", (shape) => {
    const reduction = reduced(table, { shape });
    expect(reduction.tare.shape).toBe(shape);
    expect(reduction.tare.windows).toHaveLength(3);
    const [low, high] = reduction.tare.driftRate!.interval95;
    expect(low).toBeLessThan(0.01);
    expect(high).toBeGreaterThan(0.01);
    for (const { thrustTare, start, end } of reduction.plateaus) {
      expect(Math.abs(thrustTare - (0.5 + 0.005 * (start! + end!)))).toBeLessThan(0.02);
    }
    expect(tareInWords(reduction)).toMatch(/^The zero drifts by 0\.6\d* ± 0\.\d+\sN per minute/);
  });

  test("is drawn from one end of the log to the other", () => {
    const { line } = reduced(table, {}).tare;
    expect(line[0]!.at).toBe(0);
    expect(line.at(-1)!.at).toBeCloseTo(44, -0.5);
    expect(line.length).toBe(5);
  });
});

test("without a choice the tare is piecewise, as before there was one", () => {
  const table = loggedWith((t) => 0.5 + 0.01 * t);
  expect(reduced(table, {})).toEqual(reduced(table, { shape: "piecewise" }));
});

test("one line through windows that scatter about it evens them out and widens the doubt of the tare", () => {
  // The middle rest reads 0.3 N high.
  const table = loggedWith((t) => (t > 16.5 && t < 23.5 ? 0.8 : 0.5));
  const [piecewise, line] = ["piecewise", "line"].map((shape) => reduced(table, { shape }));
  // Least squares through 0.5, 0.8, 0.5: with the rests near 2, 20 and 45 s the line passes 0.6 near the middle.
  expect(line!.plateaus[1]!.thrustTare).toBeGreaterThan(0.55);
  expect(line!.plateaus[1]!.thrustTare).toBeLessThan(0.65);
  expect(piecewise!.plateaus[1]!.thrustTare).toBeGreaterThan(0.65);
  expect(line!.plateaus[1]!.tareUncertainty).toBeGreaterThan(0.1);
});

test("one rest is told as one, and no tare as none", () => {
  const { time, thrust, rate } = quietColumns();
  const until = time.findIndex((t) => t > 34);
  const table = tableOf({ time: time.slice(0, until), thrust: thrust.slice(0, until), rate: rate.slice(0, until) });
  expect(tareInWords(reduced(table, {}))).toMatch(/^One rest only/);
  expect(tareInWords(reduced(table, { mode: "none" }))).toMatch(/^No tare was taken off/);
});

import { describe, expect, test } from "vitest";
import { TowData } from "../../shared/model/vehicle/dragFit.ts";
import { type DragChannelOptions, dragChannels } from "../../shared/vehicle/drag/dragChannels.ts";
import { fitDrag } from "../../shared/vehicle/drag/fitDrag.ts";
import { thinnedColumns } from "../../shared/vehicle/drag/thinnedColumns.ts";

const rows = (delimiter: string, ...lines: (string | number)[][]) =>
  `${lines.map((line) => line.join(delimiter)).join("\n")}\n`;
const TOW: DragChannelOptions = { needed: ["speed", "force"] };

test.each([
  {
    what: "commas, units in brackets",
    text: rows(",", ["Time (s)", "Speed (m/s)", "Tow force (N)"], [0, 0.5, 5.6], [1, 1, 22.4], [2, 1.5, 50.6]),
  },
  {
    what: "semicolons, decimal commas, km/h and gram-force, German",
    text: rows(
      ";",
      ["Zeit [ms]", "Geschwindigkeit [km/h]", "Zugkraft [gf]"],
      ["0", "1,8", "571,04"],
      ["1000", "3,6", "2284,16"],
      ["2000", "5,4", "5159,76"],
    ),
  },
  {
    what: "tabs, names with units behind an underscore",
    text: rows("\t", ["time_s", "tow_speed_mps", "drag_N"], [0, 0.5, 5.6], [1, 1, 22.4], [2, 1.5, 50.6]),
  },
  {
    what: "knots and kilograms of a scale",
    text: rows(
      ",",
      ["t [s]", "rpm", "STW [kn]", "Load cell [kg]"],
      [0, 900, 0.97192, 0.571041],
      [1, 1800, 1.94384, 2.284164],
      [2, 2700, 2.91577, 5.159764],
    ),
  },
])("a tow log is read in SI: $what", ({ text }) => {
  const { columns, uses, warnings } = dragChannels(text, { needed: ["time", "speed", "force"] });
  const expected = { time: [0, 1, 2], speed: [0.5, 1, 1.5], force: [5.6, 22.4, 50.6] };
  for (const quantity of ["time", "speed", "force"] as const) {
    for (const [i, value] of expected[quantity].entries()) expect(columns[quantity]![i]).toBeCloseTo(value, 3);
  }
  expect(uses.every(({ reason }) => /^The header says/.test(reason))).toBe(true);
  expect(warnings.filter(({ code }) => code === "vehicle.channel-rows-left-out")).toEqual([]);
});

test("depth and distance are told apart by their names", () => {
  const text = rows(",", ["time (s)", "depth (m)", "distance (cm)"], [0, 1, 10], [1, 2, 30], [2, 3, 60]);
  const { columns } = dragChannels(text, { needed: ["time", "depth", "distance"] });
  expect(columns.depth).toEqual([1, 2, 3]);
  expect(columns.distance!.map((x) => Math.round(100 * x))).toEqual([10, 30, 60]);
});

test("a header without unit is read as SI and that is said", () => {
  const { columns, warnings } = dragChannels(rows(",", ["speed", "force"], [0.5, 5], [1, 20], [1.5, 45]), TOW);
  expect(columns.force).toEqual([5, 20, 45]);
  expect(warnings.map(({ code }) => code)).toEqual(["vehicle.channel-guessed", "vehicle.channel-guessed"]);
  expect(warnings[1]!.message).toContain("N is assumed");
});

test("a person may name a column by header or by number and give its unit", () => {
  const text = rows(",", ["a", "b", "speed (m/s)"], [5, 0.5, 9], [20, 1, 9], [45, 1.5, 9]);
  const { columns, uses } = dragChannels(text, {
    ...TOW,
    stated: [
      { quantity: "speed", column: 1, unit: "kn" },
      { quantity: "force", column: "a", unit: "kgf" },
    ],
  });
  expect(columns.speed![1]).toBeCloseTo(0.514444, 6);
  expect(columns.force![0]).toBeCloseTo(49.03325, 6);
  expect(uses[0]!.reason).toBe("A person named it.");
});

test("rows without a number that is needed are left out, counted, and the others keep their lines", () => {
  const text = rows(",", ["speed (m/s)", "force (N)"], [0.5, 5], ["", 20], [1.5, 45], [2, ""], [1, 20]);
  const { columns, lineNumbers, warnings } = dragChannels(text, TOW);
  expect(columns.speed).toEqual([0.5, 1.5, 1]);
  expect(lineNumbers).toEqual([2, 4, 6]);
  expect(warnings[0]!.message).toContain("2 of 5 rows");
});

describe("what can not be used is refused", () => {
  const text = rows(",", ["time (s)", "voltage (V)"], [0, 12], [1, 12], [2, 12]);
  test.each([
    {
      what: "no such quantity",
      options: TOW,
      code: "vehicle.channel-missing",
      says: /no column looks like speed and force.*"voltage \(V\)"/,
    },
    {
      what: "a column that is not there",
      options: { ...TOW, stated: [{ quantity: "speed", column: 7 }] },
      code: "vehicle.channel-not-there",
      says: /there is no column 8/,
    },
    {
      what: "a name that is not there",
      options: { ...TOW, stated: [{ quantity: "speed", column: "fahrt" }] },
      code: "vehicle.channel-not-there",
      says: /no column is called "fahrt"/,
    },
    {
      what: "a unit of something else",
      options: { needed: ["speed"], stated: [{ quantity: "speed", column: 1, unit: "kg" }] },
      code: "quantity.wrong-dimension",
      says: /a speed/,
    },
  ] as { what: string; options: DragChannelOptions; code: string; says: RegExp }[])(
    "$what",
    ({ options, code, says }) => {
      expect(() => dragChannels(text, options)).toThrow(says);
      expect(() => dragChannels(text, options)).toThrow(
        expect.objectContaining({ problem: expect.objectContaining({ code }) }),
      );
    },
  );

  test("rows in which the columns never stand together", () => {
    const apart = rows(",", ["speed (m/s)", "force (N)"], [1, ""], ["", 3], [2, ""], ["", 4]);
    expect(() => dragChannels(apart, TOW)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "vehicle.channel-no-rows" }) }),
    );
  });
});

test("a long log is thinned to means of consecutive rows, a short one is not", () => {
  const columns = { time: [0, 1, 2, 3], speed: [4, 2, 2, 0] };
  expect(thinnedColumns(columns, 2)).toEqual({ time: [0.5, 2.5], speed: [3, 1] });
  expect(thinnedColumns({ time: [0, 1, 2, 3, 9] }, 3)).toEqual({ time: [0.5, 2.5] });
  expect(thinnedColumns(columns)).toBe(columns);
});

test("a log that was read can be fitted as it is", () => {
  const text = rows(",", ["speed (m/s)", "force (N)"], [0.5, 5.7], [0.75, 12.6], [1, 22.4], [1.25, 35.3], [1.5, 50.6]);
  const { columns } = dragChannels(text, TOW);
  const { speed, force } = columns;
  const fit = fitDrag(TowData.parse({ method: "tow", density: 1000, speed, force }));
  expect(fit.dragArea.interval95[0]).toBeLessThan(0.045);
  expect(fit.dragArea.interval95[1]).toBeGreaterThan(0.045);
});

import { expect, test } from "vitest";
import type { Run } from "../../shared/model/run.ts";
import { overlayChart, withLag, withoutCompanion } from "../../web/views/bench/companionModel.ts";
import {
  delimiterOptions,
  lineOf,
  lineProblem,
  repairRows,
  withLine,
  withoutReading,
  withReading,
  withRepair,
} from "../../web/views/bench/readingModel.ts";
import { recipeOf } from "./benchTable.ts";

const repair = { count: 3, firstLine: 7, message: "3 lines of comment left out; first on line 7." };
const RECIPE = recipeOf([["thrust", "N"]]);

test("a repair that can be refused has a switch, and its switch back; others have none", () => {
  const [made, fixed] = repairRows([
    { ...repair, code: "log.comment", refusable: true },
    { ...repair, code: "log.empty-cell" },
  ]);
  expect(made).toMatchObject({ count: 3, firstLine: 7, change: { text: "Read these lines as rows" } });
  expect(fixed?.change).toBeNull();
  const refusing = made!.change!.apply(RECIPE);
  expect(refusing.reading).toEqual({ refusedRepairs: ["log.comment"] });
  const [refused] = repairRows([{ ...repair, code: "log.comment", refusable: true, refused: true }], refusing.reading);
  expect(refused!.change!.text).toBe("Leave comment lines out");
  expect(refused!.change!.apply(refusing)).toEqual(RECIPE);
});

test("unclear marks are offered as thousands, and thousands can be taken back", () => {
  const [unclear] = repairRows([{ ...repair, code: "log.unclear-mark" }]);
  const always = unclear!.change!.apply(RECIPE);
  expect(always.reading).toEqual({ thousands: "always" });
  const [read] = repairRows([{ ...repair, code: "log.thousands" }], always.reading);
  expect(read!.change!.apply(always)).toEqual(RECIPE);
  expect(repairRows([{ ...repair, code: "log.thousands" }])[0]!.change!.apply(RECIPE).reading).toEqual({
    thousands: "never",
  });
});

test("what is stated is kept beside what was stated before, and an empty reading is none", () => {
  const stated = withReading(withRepair(RECIPE, "log.short-row", true), { delimiter: ";", headerLine: null });
  expect(stated.reading).toEqual({ refusedRepairs: ["log.short-row"], delimiter: ";", headerLine: null });
  const back = withReading(withRepair(stated, "log.short-row", false), { delimiter: undefined, headerLine: undefined });
  expect(back).toEqual(RECIPE);
});

test.each([
  { text: "", line: undefined },
  { text: " 12 ", line: 12 },
  { text: "0", line: null },
  { text: "3.5", line: null },
  { text: "first", line: null },
])("a line number typed as “$text”", ({ text, line }) => {
  expect(lineOf(text)).toBe(line);
});

test.each([
  { key: "headerLine", text: "none", kept: { headerLine: null } },
  { key: "headerLine", text: "4", kept: { headerLine: 4 } },
  { key: "firstDataLine", text: "12", kept: { firstDataLine: 12 } },
  { key: "firstDataLine", text: "", kept: undefined },
] as const)("“$text” typed as $key is kept as $kept", ({ key, text, kept }) => {
  expect(lineProblem(key, text)).toBeNull();
  expect(withLine(RECIPE, key, text).reading).toEqual(kept);
});

test("what is no line of a file is said, and all of the reading can be left to the reader again", () => {
  expect(lineProblem("firstDataLine", "none")).toBe("“none” is no line of a file. Needed: a whole number from 1.");
  expect(lineProblem("headerLine", "top")).toMatch(/or “none”\.$/);
  expect(withoutReading(withLine(RECIPE, "headerLine", "4"))).toEqual(RECIPE);
});

test("the electrical log of a run is read as it is stated there, like the log itself", () => {
  const companion = { columns: [], reading: { delimiter: ";" as const } };
  expect(withReading(companion, { decimalMark: "," })).toEqual({
    columns: [],
    reading: { delimiter: ";", decimalMark: "," },
  });
});

test("what the reader found is named beside the automatic choice", () => {
  expect(delimiterOptions(null)[0]!.label).toBe("As found");
  const shape = { delimiter: "\t" } as Parameters<typeof delimiterOptions>[0];
  expect(delimiterOptions(shape)[0]!.label).toBe("As found (tab)");
});

const file = { name: "meter.csv", sha256: "0".repeat(64), size: 9 };
const RUN = {
  name: "run",
  recipe: RECIPE,
  companion: { file, columns: [], lag: { mode: "automatic" } },
} as unknown as Run;

test("the lag of the electrical log is stated, left to be found again, or the log is taken off", () => {
  expect(withLag(-2.5)(RUN).companion?.lag).toEqual({ mode: "stated", seconds: -2.5 });
  expect(withLag(null)(withLag(-2.5)(RUN))).toEqual(RUN);
  expect(withoutCompanion(RUN)).not.toHaveProperty("companion");
  expect(withLag(1)(withoutCompanion(RUN))).toEqual(withoutCompanion(RUN));
});

test("the overlay draws both signals and leaves gaps where one has none", () => {
  const alignment = { signals: { first: { header: "thrust (N)" }, second: { header: "current (A)" } } };
  const picture = { alignment, times: [0, 1, 2], first: [0, 0.5, 1], second: [null, 0.5, 1] };
  const chart = overlayChart(picture as unknown as Parameters<typeof overlayChart>[0]);
  expect(chart.series.map(({ name, points }) => [name, points.length])).toEqual([
    ["thrust (N)", 3],
    ["current (A), electrical log", 2],
  ]);
});

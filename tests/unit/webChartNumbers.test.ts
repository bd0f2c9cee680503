import { describe, expect, test } from "vitest";
import { csvCell as cell } from "../../shared/quantity/csvCell.ts";
import { chartCsv, fileNameOf } from "../../web/charts/chartCsv.ts";
import type { ChartSpec } from "../../web/charts/chartSpec.ts";
import { chartTable } from "../../web/charts/chartTable.ts";
import { axisTitle, spokenPoint } from "../../web/charts/pointWords.ts";
import { xRange, yRange } from "../../web/charts/ranges.ts";
import { seriesStyle } from "../../web/charts/seriesStyle.ts";
import { draggedTo } from "../../web/charts/spanDrag.ts";

const SPEC: ChartSpec = {
  title: "Thrust against rotation rate",
  x: { label: "Rotation rate", unit: "rpm" },
  y: { label: "Thrust", unit: "N" },
  series: [
    {
      id: "m",
      name: "sanded",
      kind: "measured",
      style: 0,
      points: [{ x: 2000, y: 12.4, yInterval: [12.1, 12.7], note: "plateau 3" }],
    },
    {
      id: "l",
      name: "limit",
      kind: "limit",
      style: 1,
      points: [
        { x: 0, y: 0 },
        { x: 3000, y: 400 },
      ],
    },
  ],
};

test("the table has a unit in each head, an interval where there is one, and no column that nothing fills", () => {
  expect(chartTable(SPEC)).toEqual({
    head: [
      "Series",
      "Rotation rate (rpm)",
      "Thrust (N)",
      "Thrust (N), low end of 95 %",
      "Thrust (N), high end of 95 %",
      "Note",
    ],
    rows: [
      ["sanded", 2000, 12.4, 12.1, 12.7, "plateau 3"],
      ["limit", 0, 0, null, null, null],
      ["limit", 3000, 400, null, null, null],
    ],
  });
});

test("with a second axis each row says which quantity it is", () => {
  const y2 = { label: "Current", unit: "A" };
  const { head, rows } = chartTable({
    ...SPEC,
    y2,
    series: [SPEC.series[0]!, { ...SPEC.series[1]!, secondAxis: true }],
  });
  expect(head).toContain("Quantity");
  expect(rows.map((row) => row[2])).toEqual(["Thrust (N)", "Current (A)", "Current (A)"]);
});

test("the file has the same rows as the table", () => {
  expect(chartCsv(SPEC).split("\r\n")[1]).toBe("sanded,2000,12.4,12.1,12.7,plateau 3");
  expect(chartCsv(SPEC).split("\r\n")[0]).toContain('"Thrust (N), low end of 95 %"');
});

// Rules of quoting: RFC 4180 (2005), 2.5 to 2.7. Which texts a spreadsheet runs: common practice, no source.
test.each([
  { content: -1.5, text: "-1.5", why: "a negative number stays a number" },
  { content: 96.82007812500001, text: "96.820078125", why: "no tail of binary arithmetic" },
  { content: null, text: "", why: "an unknown number is an empty cell" },
  { content: '=HYPERLINK("x")', text: '"\'=HYPERLINK(""x"")"', why: "a formula is guarded and quoted" },
  { content: "  +1", text: "'  +1", why: "blanks before it do not hide a formula" },
  { content: "-sanded", text: "'-sanded", why: "a text that begins with minus" },
  { content: "@home", text: "'@home", why: "an at sign begins a formula too" },
  { content: "sanded, wet", text: '"sanded, wet"', why: "a comma is quoted" },
  { content: "two\nlines", text: '"two\nlines"', why: "a line break is quoted" },
])("a cell with $content is written so that $why", ({ content, text }) => {
  expect(cell(content)).toBe(text);
});

test.each([
  { title: "Thrust (N) / Ω", name: "thrust-n-ω.csv" },
  { title: "..", name: "chart.csv" },
])("the file of $title is called $name", ({ title, name }) => {
  expect(fileNameOf(title, "csv")).toBe(name);
});

test("an axis title has the unit in brackets, a plain number has none", () => {
  expect(axisTitle({ label: "Thrust", unit: "N" })).toBe("Thrust (N)");
  expect(axisTitle({ label: "Thrust coefficient", unit: "" })).toBe("Thrust coefficient");
});

test("what is spoken of a point names series, place, value with interval, unit and note", () => {
  expect(spokenPoint(SPEC, SPEC.series[0]!, 0)).toBe(
    "sanded, 1 of 1. Thrust: 12.40 ± 0.30\u202fN. Rotation rate: 2000\u202frpm. plateau 3.",
  );
});

describe("what an axis covers", () => {
  test("a limit far above the data does not squeeze the data", () => {
    expect(yRange(SPEC, "y")).toEqual({ low: 12.1, high: 12.7 * 1.25 });
  });
  test("the ends of intervals are inside", () => {
    const wide = { ...SPEC, series: [{ ...SPEC.series[0]!, points: [{ x: 1, y: 5, yInterval: [-1, 11] as const }] }] };
    expect(yRange(wide, "y")).toEqual({ low: -1, high: 11 });
  });
  test("zero is shown where values come near it, and not where they do not", () => {
    const at = (ys: readonly number[]) => ({
      ...SPEC,
      series: [{ ...SPEC.series[0]!, points: ys.map((y) => ({ x: 0, y })) }],
    });
    expect(yRange(at([2, 12]), "y").low).toBe(0);
    expect(yRange(at([14.2, 14.8]), "y").low).toBe(14.2);
  });
  test("spans widen the x axis, ends that are set win", () => {
    const spans = [{ id: "s", start: -5, end: 4000, label: "", kind: "tare" as const }];
    expect(xRange({ ...SPEC, spans })).toEqual({ low: -5, high: 4000 });
    expect(xRange({ ...SPEC, x: { ...SPEC.x, min: 0, max: 9 } })).toEqual({ low: 0, high: 9 });
  });
  test("without any number it is 0 to 1", () => {
    expect(xRange({ ...SPEC, series: [] })).toEqual({ low: 0, high: 1 });
  });
});

test("thirty styles are all different in colour and marker, and the first five in colour alone", () => {
  const styles = Array.from({ length: 30 }, (_, at) => seriesStyle(at));
  expect(new Set(styles.map(({ colour, marker }) => `${colour} ${marker}`)).size).toBe(30);
  expect(new Set(styles.slice(0, 5).map(({ colour }) => colour)).size).toBe(5);
});

test("an edge dragged past the other turns the span round", () => {
  const span = { id: "p", start: 2, end: 5, label: "", kind: "plateau" as const };
  expect(draggedTo({ span, edge: "start" }, 7)).toEqual({ id: "p", start: 5, end: 7 });
  expect(draggedTo({ span, edge: "end" }, 6)).toEqual({ id: "p", start: 2, end: 6 });
});

import { expect, test } from "vitest";
import { type Cursor, cursorAfter } from "../../web/charts/chartCursor.ts";
import type { ChartSeries, ChartSpec } from "../../web/charts/chartSpec.ts";

const series = (id: string, xs: readonly number[]): ChartSeries => ({
  id,
  name: id,
  kind: "measured",
  style: 0,
  points: xs.map((x) => ({ x, y: x })),
});
const SPEC: ChartSpec = {
  title: "Thrust",
  x: { label: "Rate", unit: "rpm" },
  y: { label: "Thrust", unit: "N" },
  series: [series("a", [0, 10, 20]), series("empty", []), series("b", [1, 9, 11, 30])],
};
const NONE: ReadonlySet<string> = new Set();

test.each([
  { key: "ArrowRight", from: null, to: { seriesId: "a", index: 0 }, why: "the first key lands on the first point" },
  { key: "ArrowRight", from: { seriesId: "a", index: 0 }, to: { seriesId: "a", index: 1 }, why: "one point on" },
  { key: "ArrowRight", from: { seriesId: "a", index: 2 }, to: { seriesId: "a", index: 2 }, why: "stops at the end" },
  { key: "ArrowLeft", from: { seriesId: "a", index: 0 }, to: { seriesId: "a", index: 0 }, why: "stops at the start" },
  { key: "End", from: { seriesId: "b", index: 0 }, to: { seriesId: "b", index: 3 }, why: "last point" },
  { key: "Home", from: { seriesId: "b", index: 3 }, to: { seriesId: "b", index: 0 }, why: "first point" },
  { key: "PageDown", from: { seriesId: "b", index: 0 }, to: { seriesId: "b", index: 3 }, why: "ten on, or the end" },
  {
    key: "ArrowDown",
    from: { seriesId: "a", index: 2 },
    to: { seriesId: "b", index: 2 },
    why: "nearest in x, empty series skipped",
  },
  {
    key: "ArrowUp",
    from: { seriesId: "a", index: 0 },
    to: { seriesId: "b", index: 0 },
    why: "round to the last series",
  },
  { key: "Escape", from: { seriesId: "a", index: 1 }, to: null, why: "leaves the points" },
  { key: "x", from: { seriesId: "a", index: 1 }, to: undefined, why: "not a key of the cursor" },
] satisfies { key: string; from: Cursor | null; to: Cursor | null | undefined; why: string }[])(
  "$key from $from goes to $to: $why",
  ({ key, from, to }) => {
    expect(cursorAfter(key, from, SPEC, NONE)).toEqual(to);
  },
);

test("a hidden series is not walked", () => {
  expect(cursorAfter("ArrowDown", { seriesId: "a", index: 0 }, SPEC, new Set(["b"]))).toEqual({
    seriesId: "a",
    index: 0,
  });
});

test("with every series hidden there is nothing to stand on", () => {
  expect(cursorAfter("ArrowRight", null, SPEC, new Set(["a", "b"]))).toBeNull();
});

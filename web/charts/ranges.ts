import type { ChartAxis, ChartSeries, ChartSpec } from "./chartSpec.ts";

export interface Range {
  readonly low: number;
  readonly high: number;
}

/** A limit may open the picture this far above the data, so that its edge is seen without squeezing the points. */
const HEADROOM_FOR_LIMITS = 1.25;

/** What the x axis must at least cover. */
export function xRange(spec: ChartSpec): Range {
  const drawn = spec.series.filter(({ kind }) => kind !== "limit");
  const from = (drawn.length > 0 ? drawn : spec.series).flatMap(({ points }) =>
    points.flatMap(({ x, xInterval }) => [x, ...(xInterval ?? [])]),
  );
  const spans = (spec.spans ?? []).flatMap(({ start, end }) => [start, end]);
  return settled([...from, ...spans], spec.x);
}

/** What a y axis must at least cover: of the points `within` a stretch of x where there are any, else of all. */
export function yRange(spec: ChartSpec, axis: "y" | "y2", within?: Range): Range {
  const onAxis = spec.series.filter((series) => Boolean(series.secondAxis && spec.y2) === (axis === "y2"));
  const mine = within ? cutTo(onAxis, within) : onAxis;
  const data = mine.filter(({ kind }) => kind !== "limit").flatMap(heights);
  const limits = mine.filter(({ kind }) => kind === "limit").flatMap(heights);
  const named = axis === "y2" && spec.y2 ? spec.y2 : spec.y;
  // What is on show of a zoomed picture fills it, whatever ends the whole has.
  const labels = within ? { label: named.label, unit: named.unit } : named;
  if (data.length === 0) return settled(limits, labels);
  const top = greatest(data);
  const opened = Math.min(greatest(limits), top * HEADROOM_FOR_LIMITS);
  return settled(opened > top ? [...data, opened] : data, labels);
}

function cutTo(series: readonly ChartSeries[], { low, high }: Range): readonly ChartSeries[] {
  const cut = series.map((one) => ({ ...one, points: one.points.filter(({ x }) => x >= low && x <= high) }));
  return cut.some(({ points }) => points.length > 0) ? cut : series;
}

function heights({ points }: ChartSeries): number[] {
  return points.flatMap(({ y, yInterval }) => [y, ...(yInterval ?? [])]);
}

// Reduced by hand: a spread of a million trace points would overflow the stack of Math.max.
const greatest = (values: readonly number[]) => values.reduce((most, value) => Math.max(most, value), -Infinity);
const least = (values: readonly number[]) => values.reduce((most, value) => Math.min(most, value), Infinity);

/** Zero is shown where the values come near it: a coefficient or thrust is judged from zero, a pack voltage is not. */
function settled(values: readonly number[], axis: ChartAxis): Range {
  const known = values.filter(Number.isFinite);
  if (known.length === 0) return { low: axis.min ?? 0, high: axis.max ?? 1 };
  const [low, high] = [least(known), greatest(known)];
  const fromZero = low > 0 && low < 0.5 * high ? 0 : low;
  return { low: axis.min ?? fromZero, high: axis.max ?? high };
}

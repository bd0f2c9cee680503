import type { ChartSeries, ChartSpec } from "./chartSpec.ts";

/** Where the data cursor stands. */
export interface Cursor {
  readonly seriesId: string;
  readonly index: number;
}

const LEAP = 10;

/** Series that the cursor can walk: shown and not empty. */
function walkable(spec: ChartSpec, hidden: ReadonlySet<string>): readonly ChartSeries[] {
  return spec.series.filter((series) => !hidden.has(series.id) && series.points.length > 0);
}

/** The cursor after a key, or undefined where the key means nothing to it. Null leaves the points. */
export function cursorAfter(
  key: string,
  cursor: Cursor | null,
  spec: ChartSpec,
  hidden: ReadonlySet<string>,
): Cursor | null | undefined {
  if (key === "Escape") return null;
  const step = STEPS[key];
  if (step === undefined) return undefined;
  const shown = walkable(spec, hidden);
  const place = Math.max(
    0,
    shown.findIndex(({ id }) => id === cursor?.seriesId),
  );
  const series = shown[place];
  if (!series) return null;
  const index = Math.min(cursor?.index ?? 0, series.points.length - 1);
  if (!cursor) return { seriesId: series.id, index: 0 };
  if (step.series !== 0) return onOtherSeries(shown, place, step.series, series.points[index]!.x);
  return { seriesId: series.id, index: Math.max(0, Math.min(series.points.length - 1, index + step.points)) };
}

const STEPS: Readonly<Record<string, { readonly points: number; readonly series: number }>> = {
  ArrowRight: { points: 1, series: 0 },
  ArrowLeft: { points: -1, series: 0 },
  PageDown: { points: LEAP, series: 0 },
  PageUp: { points: -LEAP, series: 0 },
  Home: { points: -Infinity, series: 0 },
  End: { points: Infinity, series: 0 },
  ArrowDown: { points: 0, series: 1 },
  ArrowUp: { points: 0, series: -1 },
};

/** Up and down go to the point of the next series that lies nearest in x, so that two variants are compared in place. */
function onOtherSeries(shown: readonly ChartSeries[], place: number, step: number, x: number): Cursor {
  const series = shown[(place + step + shown.length) % shown.length]!;
  return { seriesId: series.id, index: nearestTo(x, series) };
}

/** The cursor after a redraw: on the same point, or the one nearest in x where a finer or coarser picture came. */
export function carriedOver(cursor: Cursor, before: ChartSpec, now: ChartSpec): Cursor {
  const [former, series] = [before, now].map((spec) => spec.series.find(({ id }) => id === cursor.seriesId));
  const x = former?.points[cursor.index]?.x;
  if (!series || x === undefined || series.points.length === former?.points.length) return cursor;
  return { seriesId: series.id, index: nearestTo(x, series) };
}

function nearestTo(x: number, { points }: ChartSeries): number {
  let index = 0;
  points.forEach((point, at) => {
    if (Math.abs(point.x - x) < Math.abs(points[index]!.x - x)) index = at;
  });
  return index;
}

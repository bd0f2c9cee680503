import type { TareAt, TareWindow } from "./tareLine.ts";

/** Zero of a channel at any moment of the run. */
export interface ZeroBetween {
  readonly at: (time: number, segment: number) => TareAt;
  /** Its value alone. */
  readonly valueAt: (time: number, segment: number) => number;
}

/** The two windows that a moment lies between, by position, and how far it is on the way; or the one that is held. */
type Place =
  | { readonly before: number; readonly after: number; readonly way: number }
  | { readonly nearest: number; readonly neighbour: number | undefined };

/** Linear in time between windows of one unbroken stretch of logging, constant beyond the first and last. */
export function zeroBetween(windows: readonly TareWindow[]): ZeroBetween {
  const inTime = windows.map((_, i) => i).sort((a, b) => windows[a]!.middle - windows[b]!.middle);
  const bySegment = new Map<number, number[]>();
  for (const i of inTime) {
    const { segment } = windows[i]!;
    const own = bySegment.get(segment);
    if (own) own.push(i);
    else bySegment.set(segment, [i]);
  }
  const place = (time: number, segment: number): Place => {
    const own = bySegment.get(segment);
    // A stretch without a rest of its own borrows the zero of the others; checks tell it.
    return placeAmong(windows, own ?? inTime, time, own !== undefined);
  };
  return {
    at: (time, segment) => (windows.length === 0 ? NO_TARE : tareAt(windows, place(time, segment), time)),
    valueAt: (time, segment) => (windows.length === 0 ? 0 : valueAt(windows, place(time, segment))),
  };
}

const NO_TARE: TareAt = { value: 0, parts: [], bow: 0, gap: "none" };

function placeAmong(windows: readonly TareWindow[], usable: readonly number[], time: number, isOwn: boolean): Place {
  let low = 0;
  let high = usable.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (windows[usable[middle]!]!.middle <= time) low = middle + 1;
    else high = middle;
  }
  const [before, after] = [usable[low - 1], usable[low]];
  if (before !== undefined && after !== undefined && isOwn) {
    const [a, b] = [windows[before]!, windows[after]!];
    return { before, after, way: (time - a.middle) / (b.middle - a.middle) };
  }
  const at = before === undefined ? 0 : low - 1;
  return { nearest: usable[at]!, neighbour: usable[at === 0 ? 1 : at - 1] };
}

function valueAt(windows: readonly TareWindow[], place: Place): number {
  if ("nearest" in place) return windows[place.nearest]!.mean.mean;
  const [a, b] = [windows[place.before]!.mean.mean, windows[place.after]!.mean.mean];
  return a + place.way * (b - a);
}

/** Drift that goes on evenly is a line; drift that dies out bows from it by up to a quarter of the change. */
const DEEPEST_BOW = 1 / 4;

function tareAt(windows: readonly TareWindow[], place: Place, time: number): TareAt {
  const value = valueAt(windows, place);
  if ("nearest" in place) return { value, ...beyond(windows, place, time) };
  const { before, after, way } = place;
  const change = windows[after]!.mean.mean - windows[before]!.mean.mean;
  return {
    value,
    parts: [
      { window: before, part: 1 - way },
      { window: after, part: way },
    ],
    bow: (DEEPEST_BOW * 4 * way * (1 - way) * Math.abs(change)) / Math.sqrt(3),
    gap: `${before}-${after}`,
  };
}

/** Outside the windows the zero is held; it may have gone on as fast as between the nearest two. */
function beyond(
  windows: readonly TareWindow[],
  { nearest, neighbour }: Extract<Place, { nearest: number }>,
  time: number,
): Omit<TareAt, "value"> {
  const window = windows[nearest]!;
  let rate = 0;
  if (neighbour !== undefined) {
    const other = windows[neighbour]!;
    rate = Math.abs((other.mean.mean - window.mean.mean) / (other.middle - window.middle || 1));
  }
  return {
    parts: [{ window: nearest, part: 1 }],
    bow: (rate * Math.abs(time - window.middle)) / Math.sqrt(3),
    gap: `beyond ${nearest}`,
  };
}

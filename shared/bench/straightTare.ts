import { straightLine } from "../numeric/straightLine.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";
import type { TareAt, TareWindow } from "./tareLine.ts";

/** Drift that goes on evenly is a line; two windows can not show how far it bows: a quarter of the change, as piecewise. */
const DEEPEST_BOW = 1 / 4;

/**
 * One straight line of the zero through all windows of each unbroken stretch of logging, by least squares with equal
 * weights: what makes windows differ from a line is how the zero wanders, not the noise within a window. The returned
 * function gives null where a stretch has fewer than two windows.
 *
 * Source   JCGM 100:2008, H.3 (calibration line); with three windows or more, what they scatter about the line beyond
 *          their own noise is taken as how far the zero is off the line at any moment between.
 */
export function straightTares(windows: readonly TareWindow[]): (time: number, segment: number) => TareAt | null {
  const lines = new Map([...new Set(windows.map(({ segment }) => segment))].map((one) => [one, lineOf(windows, one)]));
  return (time, segment) => lines.get(segment)?.(time) ?? null;
}

function lineOf(windows: readonly TareWindow[], segment: number): ((time: number) => TareAt) | null {
  const own = windows.filter((window) => window.segment === segment);
  const times = own.map(({ middle }) => middle);
  const centre = times.reduce((sum, t) => sum + t, 0) / own.length;
  const spread = times.reduce((sum, t) => sum + (t - centre) ** 2, 0);
  if (own.length < 2 || !(spread > 0)) return null;
  const partOf = (window: TareWindow, time: number) =>
    window.segment === segment ? 1 / own.length + ((time - centre) * (window.middle - centre)) / spread : 0;
  const valueAt = (time: number) => own.reduce((sum, window) => sum + partOf(window, time) * window.mean.mean, 0);
  const wander = wanderOf(own, valueAt);
  return (time) => ({
    value: valueAt(time),
    parts: windows.flatMap((one, window) => (one.segment === segment ? [{ window, part: partOf(one, time) }] : [])),
    bow: wander,
    gap: `line ${segment}, after window ${own.filter(({ middle }) => middle <= time).length}`,
  });
}

/** Standard uncertainty because the zero is not on the line, SI. */
function wanderOf(own: readonly TareWindow[], valueAt: (time: number) => number): number {
  const [first, last] = [own[0]!, own.at(-1)!];
  if (own.length === 2) return (DEEPEST_BOW * Math.abs(last.mean.mean - first.mean.mean)) / Math.sqrt(3);
  const squares = own.reduce((sum, { middle, mean }) => sum + (mean.mean - valueAt(middle)) ** 2, 0);
  const noise = own.reduce((sum, { mean }) => sum + mean.scatter ** 2, 0) / own.length;
  return Math.sqrt(Math.max(0, squares / (own.length - 2) - noise));
}

/** Slope of that line, N/s; its doubt from the scatter of three windows or more about it, else from the windows' own. */
export function straightDriftRate(windows: readonly TareWindow[], segment: number, rounding: number): Uncertain {
  const own = windows.filter((window) => window.segment === segment);
  const x = own.map(({ middle }) => middle);
  const y = own.map(({ mean }) => mean.mean);
  const doubts = own.map(({ mean }) => Math.hypot(mean.scatter, rounding));
  if (own.length > 2) {
    const { slope, slopeStandardError, degreesOfFreedom } = straightLine({ x, y });
    return uncertain(slope, slopeStandardError, degreesOfFreedom);
  }
  const reach = x.at(-1)! - x[0]!;
  return uncertain((y.at(-1)! - y[0]!) / reach, Math.hypot(...doubts) / reach);
}

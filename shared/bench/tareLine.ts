import { judgedTogether, known, withParts } from "../numeric/combined.ts";
import { scaled, type Uncertain } from "../quantity/uncertain.ts";
import { type Channel, writtenKey } from "./channels.ts";
import { scatterAtRest } from "./pooledScatter.ts";
import { identityOf, remembered } from "./remembered.ts";
import type { RowSpan } from "./rest.ts";
import { type SampleMean, sampleMean, scaledMean } from "./sampleMean.ts";
import { spikesIn } from "./spikes.ts";
import { straightDriftRate, straightTares } from "./straightTare.ts";
import { type ZeroBetween, zeroBetween } from "./tareBetween.ts";
import type { Timeline } from "./timeline.ts";
import { takeOff } from "./writtenPlateau.ts";

export interface TareWindow {
  /** Time of first and last row, and of the middle. */
  readonly start: number;
  readonly end: number;
  readonly middle: number;
  /** Which unbroken stretch of logging it lies in. */
  readonly segment: number;
  readonly mean: SampleMean;
}

/** The tare at one moment and how it hangs on the windows, so that its doubt can be carried to a fit of many plateaus. */
export interface TareAt {
  /** SI. */
  readonly value: number;
  /** Part in the value of each window, by its position, that it hangs on; they sum to 1, or to 0 where there is no tare. */
  readonly parts: readonly { readonly window: number; readonly part: number }[];
  /** Standard uncertainty because the zero need not move in a straight line between windows, SI. */
  readonly bow: number;
  /** Plateaus with the same gap share the error of `bow`. */
  readonly gap: string;
}

/** Windows whose means are kept. */
const KEPT_WINDOWS = 1000;

/** How the zero goes between windows: straight from each to the next, or one line through all. */
export type TareShape = "piecewise" | "line";

/** Tare of one channel over the run. */
export interface TareLine {
  readonly shape: TareShape;
  readonly windows: readonly TareWindow[];
  /** Rounding of the reading at rest, the same in every window, SI. */
  readonly rounding: number;
  readonly at: (time: number, segment: number) => TareAt;
  /** The reading that is zero at that moment, in the unit of the column: no calibration factor moves it. */
  readonly writtenAt: (time: number, segment: number) => number;
  /** What these readings depend on, for `remembered`. */
  readonly dependsOn: unknown;
}

/**
 * Zero of `channel` over the run from its means in the tare windows. `piecewise`: linear in time between them, constant
 * beyond the first and last. `line`: one straight line through all windows of an unbroken stretch of logging, which evens
 * out what the windows scatter; it needs two windows there, else it is as piecewise.
 */
export function tareLineOf(
  channel: Channel,
  spans: readonly RowSpan[],
  timeline: Timeline,
  shape: TareShape = "piecewise",
): TareLine {
  const read = spans.flatMap((span) =>
    windowOf({ channel, timeline, span, change: 0 }).map((window) => ({ span, window })),
  );
  const written = read.map((_, i) => withoutDrift(read, i, { channel, timeline }));
  const windows = written.map((window) => ({ ...window, mean: inSi(window.mean, channel) }));
  const rounding = windows.reduce((most, { mean }) => Math.max(most, mean.rounding), 0);
  const writtenAt = written.length > 0 ? zerosBetween(written, shape).valueAt : () => channel.writtenZero;
  const dependsOn = [shape, spans, writtenKey(channel), written.length > 0 ? null : channel.writtenZero];
  return { shape, windows, rounding, at: zerosBetween(windows, shape).at, writtenAt, dependsOn };
}

function zerosBetween(windows: readonly TareWindow[], shape: TareShape): ZeroBetween {
  const straight = shape === "line" ? straightTares(windows) : null;
  const between = zeroBetween(windows);
  if (straight === null) return between;
  return {
    at: (time, segment) => straight(time, segment) ?? between.at(time, segment),
    valueAt: (time, segment) => straight(time, segment)?.value ?? between.valueAt(time, segment),
  };
}

function inSi(mean: SampleMean, { scale, shift }: Channel): SampleMean {
  const scaled = scaledMean(mean, scale);
  return { ...scaled, mean: scaled.mean + shift };
}

/** The line with the scatter of its windows judged by all of them and by the plateaus; see `scatterAtRest`. */
export function withRunningWander(line: TareLine, plateaus: readonly SampleMean[]): TareLine {
  const scatters = scatterAtRest(
    line.windows.map(({ mean }) => mean),
    plateaus,
  );
  return { ...line, windows: line.windows.map((one, i) => ({ ...one, mean: { ...one.mean, ...scatters[i]! } })) };
}

/** Standard uncertainty of one tare, SI: window means, rounding and bow. */
export function tareUncertainty(line: TareLine, tare: TareAt): number {
  const own = tare.parts.map(({ window, part }) => part * line.windows[window]!.mean.scatter);
  return Math.hypot(...own, tare.parts.length > 0 ? line.rounding : 0, tare.bow);
}

/** Change of the zero from the first to the last window of the longest unbroken stretch; null with fewer than two windows. */
export function driftOf({ windows, rounding }: TareLine): Uncertain | null {
  const [first, last] = longestPair(windows);
  if (first === undefined || last === undefined) return null;
  const parts = [first, last].map(({ mean }) => ({
    standardUncertainty: mean.scatter,
    degreesOfFreedom: mean.degreesOfFreedom,
    commonDegreesOfFreedom: mean.commonDegreesOfFreedom,
  }));
  return withParts(last.mean.mean - first.mean.mean, [judgedTogether(parts), ...known(rounding)]);
}

/** Drift per second: that of the line, or from the first to the last window; null with fewer than two windows or no clock. */
export function driftRateOf(line: TareLine, hasClock: boolean): Uncertain | null {
  const [first, last] = longestPair(line.windows);
  const drift = driftOf(line);
  if (!hasClock || first === undefined || last === undefined || drift === null) return null;
  if (line.shape === "line") return straightDriftRate(line.windows, first.segment, line.rounding);
  return scaled(drift, 1 / (last.middle - first.middle));
}

/** Corners of the zero over the trace, for a picture: windows, and both ends of every unbroken stretch of logging. */
export function tareCorners(line: TareLine, { times, segmentStarts }: Timeline): { at: number; thrust: number }[] {
  if (line.windows.length === 0) return [];
  return segmentStarts.flatMap((from, segment) => {
    const [start, end] = [times[from]!, times[(segmentStarts[segment + 1] ?? times.length) - 1]!];
    const middles = line.windows.filter((window) => window.segment === segment).map(({ middle }) => middle);
    const corners = [start, ...middles.filter((middle) => middle > start && middle < end), end];
    return corners.map((at) => ({ at, thrust: line.at(at, segment).value }));
  });
}

function longestPair(windows: readonly TareWindow[]): [TareWindow?, TareWindow?] {
  let best: [TareWindow?, TareWindow?] = [];
  let longest = 0;
  for (const segment of new Set(windows.map((window) => window.segment))) {
    const inside = windows.filter((window) => window.segment === segment);
    const [first, last] = [inside[0]!, inside.at(-1)!];
    if (last.middle - first.middle > longest) {
      longest = last.middle - first.middle;
      best = [first, last];
    }
  }
  return best;
}

interface WindowRead {
  readonly span: RowSpan;
  readonly window: TareWindow;
}

interface WindowSource {
  readonly channel: Channel;
  readonly timeline: Timeline;
  readonly span: RowSpan;
  /** Of the zero from the first row to the last, taken off before the scatter is looked at. */
  readonly change: number;
}

/** In the unit of the column. */
function windowOf({ channel, timeline, span, change }: WindowSource): TareWindow[] {
  const { raw, writtenStep } = channel;
  const dependsOn = [span, writtenStep, identityOf(timeline), change];
  // As many windows as a log is likely to have.
  return remembered(raw, { stage: "tareWindow", dependsOn, budget: KEPT_WINDOWS }, () => {
    const readings = raw.slice(span.from, span.to);
    const { glitches, tails } = spikesIn(readings, writtenStep, 0);
    for (const i of [...glitches, ...tails]) readings[i] = Number.NaN;
    if (!readings.some((reading) => Number.isFinite(reading))) return [];
    takeOff(readings, { value: 0, change });
    const start = timeline.times[span.from]!;
    const end = timeline.times[span.to - 1]!;
    const mean = sampleMean(readings, writtenStep);
    return [{ start, end, middle: (start + end) / 2, segment: segmentOf(timeline, span.from), mean }];
  });
}

/**
 * Window `i`, whose readings do not scatter by the drift that goes on within it: their scatter is about the line from the
 * window before to the one after. The mean is at the middle with and without it.
 */
function withoutDrift(
  read: readonly WindowRead[],
  i: number,
  log: Pick<WindowSource, "channel" | "timeline">,
): TareWindow {
  const { span, window } = read[i]!;
  const near = [read[i - 1], read[i], read[i + 1]].flatMap((one) =>
    one?.window.segment === window.segment ? one.window : [],
  );
  const [first, last] = [near[0]!, near.at(-1)!];
  // A reading that stands on one step shows no drift.
  if (!(last.middle > first.middle) || window.mean.rounding > 0) return window;
  const slope = (last.mean.mean - first.mean.mean) / (last.middle - first.middle);
  const [straightened] = windowOf({ ...log, span, change: slope * (window.end - window.start) });
  const { mean, rounding } = window.mean;
  return straightened ? { ...window, mean: { ...straightened.mean, mean, rounding } } : window;
}

/** Which unbroken stretch of logging `row` lies in. */
export function segmentOf(timeline: Timeline, row: number): number {
  let segment = 0;
  while (segment + 1 < timeline.segmentStarts.length && timeline.segmentStarts[segment + 1]! <= row) segment++;
  return segment;
}

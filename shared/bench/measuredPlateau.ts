import type { LogTable } from "../log/logTable.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Channel, type Channels, channelsKey, samplesOf } from "./channels.ts";
import type { FoundSpan } from "./plateauSpans.ts";
import { identityOf, remembered } from "./remembered.ts";
import type { RowSpan } from "./rest.ts";
import { plainMean, type SampleMean, sampleMean } from "./sampleMean.ts";
import { spikesIn } from "./spikes.ts";
import { segmentOf, type TareAt, type TareLine } from "./tareLine.ts";
import type { Timeline } from "./timeline.ts";
import { withoutTrend } from "./withoutTrend.ts";

/** Readings that were left out of a plateau as glitches. */
export interface Glitches {
  readonly count: number;
  /** The first of them: line of the file, column, and the reading as it stands there with its unit. */
  readonly first: { readonly line: number; readonly header: string; readonly reading: string } | null;
  /** Channel in which most wild readings were let stand because they are too many, and their part; null where none were. */
  readonly kept: { readonly header: string; readonly part: number } | null;
}

/** Readings of one plateau in SI, row by row, NaN where missing or a glitch; rotation rate without its sign. */
export interface PlateauReadings {
  readonly rotationRate: Float64Array;
  readonly thrust: Float64Array;
  readonly torque: Float64Array | null;
  readonly electricalPower: Float64Array | null;
}

export interface MeasuredPlateau {
  readonly span: FoundSpan;
  /** Ends on the axis of the trace: time, or rows where the log has no clock. */
  readonly traceStart: number;
  readonly traceEnd: number;
  /** Middle, in the time of the log or in rows. */
  readonly middle: number;
  readonly start: number | null;
  readonly end: number | null;
  readonly firstLine: number;
  readonly lastLine: number;
  readonly glitches: Glitches;
  readonly command: number | null;
  /** -1 where the log counts the rotation rate as negative. */
  readonly turnSign: 1 | -1;
  readonly rotationRate: SampleMean;
  /** After tare. */
  readonly thrust: SampleMean;
  readonly thrustTare: TareAt;
  /** After tare. */
  readonly torque: SampleMean | null;
  readonly torqueTare: TareAt | null;
  readonly voltage: SampleMean | null;
  readonly current: SampleMean | null;
  readonly electricalPower: SampleMean | null;
  /** Speed through the water by its column, m/s. */
  readonly advanceSpeed: SampleMean | null;
  readonly readings: PlateauReadings;
}

export interface PlateauSource {
  readonly table: LogTable;
  readonly channels: Channels;
  readonly timeline: Timeline;
  readonly thrustTare: TareLine;
  readonly torqueTare: TareLine | null;
}

const TAKEN = ["rotationRate", "thrust", "torque", "voltage", "current", "electricalPower", "advanceSpeed"] as const;

type Taken = {
  readonly [R in (typeof TAKEN)[number]]: Float64Array | null;
};

/** Longer logs do not keep the readings of their plateaus beside their columns: they would not fit into memory. */
const KEPT_ROWS = 4_000_000;

/** Means of all channels over the rows of one plateau; null where no row has both thrust and rotation rate. */
export function measurePlateau(source: PlateauSource, span: FoundSpan): MeasuredPlateau | null {
  const { table, channels, timeline } = source;
  const { thrustTare, torqueTare } = tareOver(source, span);
  const dependsOn = [span, identityOf(timeline), identityOf(table.lineNumbers), channelsKey(channels)];
  const remembering = { stage: "plateau", dependsOn: [...dependsOn, thrustTare, torqueTare] };
  // What the readings of all plateaus of one recipe take.
  const kept = { weight: span.to - span.from, budget: table.rows };
  return remembered(channels.thrust.raw, { ...remembering, ...kept }, () => measuredAnew(source, span));
}

/** Middle of the span, and the zeros that are taken off there. */
function tareOver({ channels, timeline, ...tares }: PlateauSource, span: FoundSpan) {
  const middle = (timeline.times[span.from]! + timeline.times[span.to - 1]!) / 2;
  const segment = segmentOf(timeline, span.from);
  const torqueTare = channels.torque ? (tares.torqueTare?.at(middle, segment) ?? null) : null;
  return { middle, thrustTare: tares.thrustTare.at(middle, segment), torqueTare };
}

function measuredAnew(source: PlateauSource, span: FoundSpan): MeasuredPlateau | null {
  const { table, channels, timeline } = source;
  const { glitches, taken, turnSign, readings } = takeReadings(source, span);
  const rates = taken.rotationRate!;
  if (!rates.some((rate) => !Number.isNaN(rate))) return null;
  const { middle, thrustTare, torqueTare } = tareOver(source, span);
  const { electricalPower } = readings;
  const hasClock = timeline.kind === "clock" || (timeline.kind === "readings" && channels.time !== undefined);
  const steady = (values: Float64Array | null) => (values && span.foundBy === "binned" ? withoutTrend(values) : values);
  const mean = (role: keyof Taken) => meanOf(steady(taken[role]), channels[role]);
  const [voltage, current] = [mean("voltage"), mean("current")];
  const measured = {
    span,
    traceStart: timeline.times[span.from]!,
    traceEnd: timeline.times[span.to - 1]!,
    middle,
    start: hasClock ? timeline.times[span.from]! : null,
    end: hasClock ? timeline.times[span.to - 1]! : null,
    firstLine: table.lineNumbers[span.from]!,
    lastLine: table.lineNumbers[span.to - 1]!,
    glitches,
    command: commandMean(channels.command, span),
    turnSign,
    rotationRate: mean("rotationRate")!,
    thrust: mean("thrust")!,
    thrustTare,
    torque: mean("torque"),
    torqueTare,
    voltage,
    current,
    electricalPower: mean("electricalPower") ?? powerMean(steady(electricalPower), voltage, current),
    advanceSpeed: mean("advanceSpeed"),
  };
  return table.rows <= KEPT_ROWS ? { ...measured, readings } : withReadingsOnDemand(measured, source, span);
}

/** In a function of its own, so that it holds on to nothing but its arguments. */
function withReadingsOnDemand(
  measured: Omit<MeasuredPlateau, "readings">,
  source: PlateauSource,
  span: FoundSpan,
): MeasuredPlateau {
  const get = () => takeReadings(source, span).readings;
  return Object.defineProperty(measured as MeasuredPlateau, "readings", { get, enumerable: true });
}

interface TakenReadings {
  /** After tare, rotation rate without its sign. */
  readonly taken: Taken;
  readonly readings: PlateauReadings;
  readonly turnSign: 1 | -1;
  readonly glitches: Glitches;
}

/** Readings of all channels over a span, ready for their means. */
function takeReadings(source: PlateauSource, span: FoundSpan): TakenReadings {
  const { taken, glitches } = withoutGlitches(source, span);
  const rates = taken.rotationRate!;
  const turnSign = plainMean(rates) < 0 ? -1 : 1;
  if (turnSign < 0) for (let i = 0; i < rates.length; i++) rates[i] = -rates[i]!;
  const { thrustTare, torqueTare } = tareOver(source, span);
  takeOff(taken.thrust!, thrustTare.value);
  if (taken.torque && torqueTare) takeOff(taken.torque, torqueTare.value);
  const electricalPower = taken.electricalPower ?? productOf(taken.voltage, taken.current);
  const readings = { rotationRate: rates, thrust: taken.thrust!, torque: taken.torque, electricalPower };
  return { taken, readings, turnSign, glitches };
}

/** Readings without glitches; a glitch in one channel takes its whole row out, so that products stay in step. */
function withoutGlitches(source: PlateauSource, { from, to }: RowSpan): { taken: Taken; glitches: Glitches } {
  const { channels, table } = source;
  const taken = Object.fromEntries(
    TAKEN.map((role) => [role, channels[role] ? samplesOf(channels[role], from, to) : null]),
  ) as Taken;
  const wild = new Set<number>();
  const left = new Set<number>();
  let first: Glitches["first"] = null;
  let kept: Glitches["kept"] = null;
  for (const role of TAKEN) {
    const samples = taken[role];
    if (!samples) continue;
    const channel = channels[role]!;
    const { glitches, tails, kept: standing } = spikesIn(samples, channel.resolution, channel.shift);
    const part = standing / samples.length;
    if (part > (kept?.part ?? 0)) kept = { header: channel.header, part };
    for (const i of tails) left.add(i);
    for (const i of glitches) {
      wild.add(i);
      const line = table.lineNumbers[from + i]!;
      if (first === null || line < first.line)
        first = { line, header: channel.header, reading: readingOf(channel, from + i) };
    }
  }
  for (const samples of Object.values(taken)) {
    if (samples) for (const i of [...wild, ...left]) samples[i] = Number.NaN;
  }
  keepPairs(taken.rotationRate!, taken.thrust!);
  return { taken, glitches: { count: wild.size, first, kept } };
}

/** A reading as the file has it. */
function readingOf({ raw, unit }: Channel, row: number): string {
  return `${formatNumber(raw[row]!, 4)} ${unit}`;
}

/** A row that lacks thrust or rotation rate serves neither: their means must be of the same moments. */
function keepPairs(a: Float64Array, b: Float64Array): void {
  for (let i = 0; i < a.length; i++) {
    if (Number.isNaN(a[i]) || Number.isNaN(b[i])) {
      a[i] = Number.NaN;
      b[i] = Number.NaN;
    }
  }
}

function takeOff(values: Float64Array, zero: number): void {
  for (let i = 0; i < values.length; i++) values[i] = values[i]! - zero;
}

function meanOf(values: Float64Array | null, channel: Channel | undefined): SampleMean | null {
  if (!values?.some((value) => !Number.isNaN(value))) return null;
  return sampleMean(values, channel?.resolution ?? 0);
}

function commandMean(command: Channel | undefined, { from, to }: RowSpan): number | null {
  if (!command) return null;
  const mean = plainMean(samplesOf(command, from, to));
  return Number.isFinite(mean) ? mean : null;
}

function productOf(a: Float64Array | null, b: Float64Array | null): Float64Array | null {
  if (!a || !b) return null;
  const products = new Float64Array(a.length);
  for (let i = 0; i < products.length; i++) products[i] = a[i]! * b[i]!;
  return products;
}

/** Mean of the products, not product of the means: voltage sags as current rises, and the two do not average apart. */
function powerMean(
  power: Float64Array | null,
  voltage: SampleMean | null,
  current: SampleMean | null,
): SampleMean | null {
  if (!voltage || !current || !power?.some((value) => !Number.isNaN(value))) return null;
  const rounding = Math.hypot(voltage.mean * current.rounding, current.mean * voltage.rounding);
  return { ...sampleMean(power, 0), rounding };
}

import type { LogTable } from "../log/logTable.ts";
import type { Channels } from "./channels.ts";
import type { FoundSpan } from "./plateauSpans.ts";
import { type SampleMean, scaledMean } from "./sampleMean.ts";
import { segmentOf, type TareAt, type TareLine } from "./tareLine.ts";
import type { Timeline } from "./timeline.ts";
import { type Glitches, type WrittenPlateau, writtenPlateau } from "./writtenPlateau.ts";

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
  /** All of it before calibration: what is worked out of the readings hangs on this and is scaled afterwards. */
  readonly written: WrittenPlateau;
  readonly scales: PlateauScales;
}

/** What the readings of `written` are multiplied by for SI. */
export interface PlateauScales {
  readonly thrust: number;
  /** Never negative: the rate is turned already. */
  readonly rotationRate: number;
  readonly torque: number;
  readonly electricalPower: number;
}

export interface PlateauSource {
  readonly table: LogTable;
  readonly channels: Channels;
  readonly timeline: Timeline;
  readonly thrustTare: TareLine;
  readonly torqueTare: TareLine | null;
}

/** Means of all channels over the rows of one plateau; null where no row has both thrust and rotation rate. */
export function measurePlateau(source: PlateauSource, span: FoundSpan): MeasuredPlateau | null {
  const { table, channels, timeline } = source;
  const tares = tareOver(source, span);
  const written = writtenPlateau({ table, channels, ...tares.zeros }, span);
  if (written === null) return null;
  const { middle, thrustTare, torqueTare } = tares;
  const hasClock = timeline.kind === "clock" || (timeline.kind === "readings" && channels.time !== undefined);
  return {
    ...{ span, middle, thrustTare, torqueTare, written },
    traceStart: timeline.times[span.from]!,
    traceEnd: timeline.times[span.to - 1]!,
    start: hasClock ? timeline.times[span.from]! : null,
    end: hasClock ? timeline.times[span.to - 1]! : null,
    firstLine: table.lineNumbers[span.from]!,
    lastLine: table.lineNumbers[span.to - 1]!,
    ...inSi(written, channels),
  };
}

/** Middle of the span, and the zeros that are taken off there. */
function tareOver({ channels, timeline, ...tares }: PlateauSource, span: FoundSpan) {
  const middle = (timeline.times[span.from]! + timeline.times[span.to - 1]!) / 2;
  const segment = segmentOf(timeline, span.from);
  const torqueLine = channels.torque ? tares.torqueTare : null;
  const zeroOf = ({ writtenAt }: TareLine) => ({
    value: writtenAt(middle, segment),
    change: writtenAt(timeline.times[span.to - 1]!, segment) - writtenAt(timeline.times[span.from]!, segment),
  });
  return {
    middle,
    thrustTare: tares.thrustTare.at(middle, segment),
    torqueTare: torqueLine?.at(middle, segment) ?? null,
    zeros: {
      thrustZero: zeroOf(tares.thrustTare),
      torqueZero: torqueLine && zeroOf(torqueLine),
    },
  };
}

function inSi({ means, glitches, turnSign, command }: WrittenPlateau, channels: Channels) {
  const scales = scalesOf(channels);
  const scaled = (mean: SampleMean | null, scale = 1) => mean && scaledMean(mean, scale);
  return {
    glitches,
    scales,
    command: command === null ? null : command * channels.command!.scale + channels.command!.shift,
    turnSign: (channels.rotationRate.scale < 0 ? -turnSign : turnSign) as 1 | -1,
    rotationRate: scaledMean(means.rotationRate!, scales.rotationRate),
    thrust: scaledMean(means.thrust!, scales.thrust),
    torque: scaled(means.torque, scales.torque),
    voltage: scaled(means.voltage, channels.voltage?.scale),
    current: scaled(means.current, channels.current?.scale),
    electricalPower: scaled(means.electricalPower, scales.electricalPower),
    advanceSpeed: scaled(means.advanceSpeed, channels.advanceSpeed?.scale),
  };
}

function scalesOf({ thrust, rotationRate, torque, electricalPower, voltage, current }: Channels): PlateauScales {
  return {
    thrust: thrust.scale,
    rotationRate: Math.abs(rotationRate.scale),
    torque: torque?.scale ?? 1,
    electricalPower: electricalPower?.scale ?? (voltage?.scale ?? 1) * (current?.scale ?? 1),
  };
}

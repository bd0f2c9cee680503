import type { LogTable } from "../log/logTable.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Channel, type Channels, writtenKey } from "./channels.ts";
import type { FoundSpan } from "./plateauSpans.ts";
import { identityOf, remembered } from "./remembered.ts";
import type { RowSpan } from "./rest.ts";
import { plainMean, type SampleMean, sampleMean } from "./sampleMean.ts";
import { spikesIn, type WildReadings } from "./spikes.ts";
import { withoutTrend } from "./withoutTrend.ts";

/** Readings that were left out of a plateau as glitches. */
export interface Glitches {
  readonly count: number;
  /** The first of them: line of the file, column, and the reading as it stands there with its unit. */
  readonly first: { readonly line: number; readonly header: string; readonly reading: string } | null;
  /** Channel in which most wild readings were let stand because they are too many, and their part; null where none were. */
  readonly kept: { readonly header: string; readonly part: number } | null;
}

/**
 * Readings of one plateau row by row in the units of their columns, zero taken off, NaN where missing or a glitch; rotation
 * rate so turned that its mean is positive.
 */
export interface PlateauReadings {
  readonly rotationRate: Float64Array;
  readonly thrust: Float64Array;
  readonly torque: Float64Array | null;
  readonly electricalPower: Float64Array | null;
}

const TAKEN = ["rotationRate", "thrust", "torque", "voltage", "current", "electricalPower", "advanceSpeed"] as const;
type TakenRole = (typeof TAKEN)[number];

/**
 * One plateau in the units of the columns: readings less the one that means nothing. Times the calibration factor of each
 * channel it is the plateau in SI, so that another factor measures nothing again.
 */
export interface WrittenPlateau {
  readonly glitches: Glitches;
  /** Mean of the column as it stands. */
  readonly command: number | null;
  /** -1 where the column counts the rotation rate as negative. */
  readonly turnSign: 1 | -1;
  readonly means: { readonly [R in TakenRole]: SampleMean | null };
  readonly readings: PlateauReadings;
}

/** The reading that is zero over a plateau. */
export interface WrittenZero {
  /** At its middle. */
  readonly value: number;
  /** From its first row to its last: a plateau in which the zero drifts does not scatter by it. */
  readonly change: number;
}

/** Channels and their tares over a plateau: the readings of thrust and torque that are zero there. */
export interface WrittenSource {
  readonly table: LogTable;
  readonly channels: Channels;
  readonly thrustZero: WrittenZero;
  readonly torqueZero: WrittenZero | null;
}

/** Longer logs do not keep the readings of their plateaus beside their columns: they would not fit into memory. */
const KEPT_ROWS = 4_000_000;

/** Readings of all channels over the rows of one plateau; null where no row has both thrust and rotation rate. */
export function writtenPlateau(source: WrittenSource, span: FoundSpan): WrittenPlateau | null {
  const { table, channels } = source;
  const zeros = zerosOf(source);
  const keys = TAKEN.map((role) => channels[role] && [writtenKey(channels[role]), zeros[role]]);
  const command = channels.command && identityOf(channels.command.raw);
  const dependsOn = [span, identityOf(table.lineNumbers), keys, command];
  // What the readings of all plateaus of one recipe take.
  const kept = { weight: span.to - span.from, budget: table.rows };
  return remembered(channels.thrust.raw, { stage: "plateau", dependsOn, ...kept }, () => measuredAnew(source, span));
}

/** The readings that mean nothing: by the tare where there is one, else by the recipe. */
function zerosOf({ channels, thrustZero, torqueZero }: WrittenSource) {
  const tares: Partial<Record<TakenRole, WrittenZero | null>> = { thrust: thrustZero, torque: torqueZero };
  const zeroOf = (role: TakenRole) => tares[role] ?? { value: channels[role]?.writtenZero ?? 0, change: 0 };
  return Object.fromEntries(TAKEN.map((role) => [role, zeroOf(role)])) as Record<TakenRole, WrittenZero>;
}

function measuredAnew(source: WrittenSource, span: FoundSpan): WrittenPlateau | null {
  const { channels } = source;
  const { glitches, leftOut } = wildRows(source, span);
  const take = (role: TakenRole) => readingsOf(source, span, { role, leftOut });
  const rates = take("rotationRate")!;
  if (!rates.some((rate) => !Number.isNaN(rate))) return null;
  const turnSign = plainMean(rates) < 0 ? -1 : 1;
  const readings = readingsBy(take, turnSign);
  const steady = (values: Float64Array | null) => (values && span.foundBy === "binned" ? withoutTrend(values) : values);
  const mean = (role: TakenRole) => {
    const values = role === "rotationRate" || role === "thrust" || role === "torque" ? readings[role] : take(role);
    return meanOf(steady(values), channels[role]?.writtenStep ?? 0);
  };
  const means = Object.fromEntries(TAKEN.map((role) => [role, mean(role)])) as WrittenPlateau["means"];
  const power = means.electricalPower ?? powerMean(steady(readings.electricalPower), means.voltage, means.current);
  return {
    glitches,
    command: channels.command ? commandMean(channels.command, span) : null,
    turnSign,
    means: { ...means, electricalPower: power },
    readings: source.table.rows <= KEPT_ROWS ? { ...readings } : readings,
  };
}

/** Readings that are taken from the columns anew whenever they are asked for. */
function readingsBy(take: (role: TakenRole) => Float64Array | null, turnSign: 1 | -1): PlateauReadings {
  return {
    get rotationRate() {
      const rates = take("rotationRate")!;
      if (turnSign < 0) for (let i = 0; i < rates.length; i++) rates[i] = -rates[i]!;
      return rates;
    },
    get thrust() {
      return take("thrust")!;
    },
    get torque() {
      return take("torque");
    },
    get electricalPower() {
      return take("electricalPower") ?? productOf(take("voltage"), take("current"));
    },
  };
}

interface TakenColumn {
  readonly role: TakenRole;
  /** Rows of the span that serve no channel, so that products stay in step. */
  readonly leftOut: readonly number[];
}

/** Readings of one channel over a span, zero taken off; null where there is no such channel. */
function readingsOf(source: WrittenSource, { from, to }: RowSpan, { role, leftOut }: TakenColumn): Float64Array | null {
  const { channels } = source;
  const channel = channels[role];
  if (!channel) return null;
  const readings = channel.raw.slice(from, to);
  for (const i of leftOut) readings[i] = Number.NaN;
  const other = role === "thrust" ? channels.rotationRate : role === "rotationRate" ? channels.thrust : null;
  if (other) withoutUnpaired(readings, other.raw, from);
  takeOff(readings, zerosOf(source)[role]);
  return readings;
}

/** Takes off a zero that drifts evenly from row to row. */
export function takeOff(readings: Float64Array, { value, change }: WrittenZero): void {
  if (value === 0 && change === 0) return;
  const middle = (readings.length - 1) / 2;
  const step = change / Math.max(1, readings.length - 1);
  for (let i = 0; i < readings.length; i++) readings[i] = readings[i]! - value - step * (i - middle);
}

/** A row that lacks thrust or rotation rate serves neither: their means must be of the same moments. */
function withoutUnpaired(readings: Float64Array, others: Float64Array, from: number): void {
  for (let i = 0; i < readings.length; i++) if (Number.isNaN(others[from + i]!)) readings[i] = Number.NaN;
}

/** Readings of any channel that are wild, and the rows that are left out for them. */
function wildRows({ channels, table }: WrittenSource, { from, to }: RowSpan) {
  const wild = new Set<number>();
  const left = new Set<number>();
  let first: Glitches["first"] = null;
  let kept: Glitches["kept"] = null;
  for (const role of TAKEN) {
    const channel = channels[role];
    if (!channel) continue;
    const { glitches, tails, kept: standing } = wildIn(channel, { from, to }, table.rows);
    const part = standing / (to - from);
    if (part > (kept?.part ?? 0)) kept = { header: channel.header, part };
    for (const i of tails) left.add(i);
    for (const i of glitches) {
      wild.add(i);
      const line = table.lineNumbers[from + i]!;
      if (first === null || line < first.line)
        first = { line, header: channel.header, reading: readingOf(channel, from + i) };
    }
  }
  const glitches: Glitches = { count: wild.size, first, kept };
  return { glitches, leftOut: [...new Set([...wild, ...left])] };
}

/** Kept for itself: neither a zero nor another channel moves it. */
function wildIn({ raw, writtenStep }: Channel, { from, to }: RowSpan, rows: number): WildReadings {
  const kept = { weight: to - from, budget: rows };
  const remembering = { stage: "wild", dependsOn: [from, to, writtenStep], ...kept };
  return remembered(raw, remembering, () => spikesIn(raw.subarray(from, to), writtenStep, 0));
}

/** A reading as the file has it. */
function readingOf({ raw, unit }: Channel, row: number): string {
  return `${formatNumber(raw[row]!, 4)} ${unit}`;
}

function meanOf(values: Float64Array | null, resolution: number): SampleMean | null {
  if (!values?.some((value) => !Number.isNaN(value))) return null;
  return sampleMean(values, resolution);
}

function commandMean({ raw }: Channel, { from, to }: RowSpan): number | null {
  const mean = plainMean(raw.subarray(from, to));
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

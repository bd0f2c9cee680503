import { type Channel, valueAt } from "./channels.ts";

/** What a log shows where the most is asked of the thruster; SI, as the recipe reads it. */
export interface StrongestRows {
  /** Thrust less the reading at rest, size only; null where no column has it. N */
  readonly thrust: number | null;
  /** rev/s */
  readonly rotationRate: number | null;
  /** Electrical power, else shaft power from the torque. W */
  readonly power: number | null;
  /** Electrical power alone; null where no column tells it. W */
  readonly electricalPower: number | null;
  /** Torque less the reading at rest, size only; null where no column has it. N·m */
  readonly torque: number | null;
  /** V */
  readonly voltage: number | null;
}

/** Rows looked at; of a longer log, evenly spread ones. */
const SAMPLE = 20_000;
/** The strongest rows by rank: a few above are taken for spikes. */
const FROM = 0.005;
const TO = 0.05;
/** Part of the top rotation rate that counts as standing. */
const STANDING = 0.02;

type ByRole = ReadonlyMap<string, Channel>;

/** Medians of the strongest twentieth of the rows: by power where it is known, else by rotation rate, else by thrust. */
export function strongestRows(channels: ByRole, rows: number): StrongestRows {
  const stride = Math.max(1, Math.ceil(rows / SAMPLE));
  const sampled = Array.from({ length: Math.ceil(rows / stride) }, (_, i) => i * stride);
  const at = (role: string) => {
    const channel = channels.get(role);
    return (row: number) => (channel ? valueAt(channel, row) : Number.NaN);
  };
  const [turning, thrust] = [at("rotationRate"), at("thrust")];
  const rate = (row: number) => Math.abs(turning(row));
  const power = powerAt(channels, at);
  const top = topOf(sampled.map(rate));
  const resting = sampled.filter((row) => rate(row) <= STANDING * top);
  const zero = medianOf(resting.map(thrust)) ?? 0;
  const twist = at("torque");
  const idleTwist = medianOf(resting.map(twist)) ?? 0;
  const pull = (row: number) => Math.abs(thrust(row) - zero);
  const strength = [power, rate, pull].find((size) => sampled.some((row) => size(row) > 0));
  if (!strength) {
    return { thrust: null, rotationRate: null, power: null, electricalPower: null, torque: null, voltage: null };
  }
  const ranked = sampled
    .map((row) => ({ row, strength: strength(row) }))
    .filter((one) => one.strength > 0)
    .sort((a, b) => b.strength - a.strength)
    .map(({ row }) => row);
  const strongest = ranked.slice(Math.floor(FROM * ranked.length), Math.max(1, Math.ceil(TO * ranked.length)));
  const median = (value: (row: number) => number) => medianOf(strongest.map(value));
  const isElectrical = channels.has("electricalPower") || (channels.has("voltage") && channels.has("current"));
  return {
    thrust: median(pull),
    rotationRate: median(rate),
    power: median(power),
    electricalPower: isElectrical ? median(power) : null,
    torque: median((row) => Math.abs(twist(row) - idleTwist)),
    voltage: median(at("voltage")),
  };
}

function powerAt(channels: ByRole, at: (role: string) => (row: number) => number): (row: number) => number {
  if (channels.has("electricalPower")) return at("electricalPower");
  if (channels.has("voltage") && channels.has("current")) {
    const [voltage, current] = [at("voltage"), at("current")];
    return (row) => Math.abs(voltage(row) * current(row));
  }
  const [rate, torque] = [at("rotationRate"), at("torque")];
  return (row) => 2 * Math.PI * Math.abs(rate(row) * torque(row));
}

function topOf(values: readonly number[]): number {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted[Math.floor(0.98 * (sorted.length - 1))] ?? Number.NaN;
}

function medianOf(values: readonly number[]): number | null {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? null;
}

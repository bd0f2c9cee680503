import { type RandomSource, slowNoise } from "./random.ts";
import type { Moment } from "./thruster.ts";

/** How a stand sees force, torque, turning, voltage and current. Relative parts are standard deviations of one reading. */
export interface Stand {
  /** Reading over truth of the force, constant for the stand. */
  readonly forceGain: number;
  /** Force reading at rest at the start, N, and its growth over the run, N. */
  readonly forceTare: number;
  readonly forceDrift: number;
  /** White noise, N, and slow sloshing of the tank at full thrust, N. */
  readonly forceNoise: number;
  readonly slosh: number;
  /** Amplitude of the shake at shaft frequency, part of the thrust. */
  readonly shake: number;
  readonly torqueGain: number;
  /** Torque reading at rest, N·m, and white noise, N·m. */
  readonly torqueTare: number;
  readonly torqueNoise: number;
  readonly rotationNoise: number;
  readonly voltageGain: number;
  readonly currentGain: number;
  /** Current reading at rest, A. */
  readonly currentOffset: number;
  /** Of the wheel that measures the carriage speed: reading over truth, and white noise, m/s. */
  readonly wheel?: { readonly gain: number; readonly noise: number };
}

/** One row of readings before it is written down. SI; rotation rate in rev/s. */
export interface Reading {
  readonly time: number;
  readonly asked: number;
  readonly rotationRate: number;
  /** Carriage, m/s. */
  readonly speed: number;
  readonly force: number;
  readonly torque: number;
  readonly voltage: number;
  readonly current: number;
}

/** Correlation of the sloshing from one reading to the next. */
const SLOSH_CORRELATION = 0.85;
/** White noise of the voltmeter, V, and of the ammeter, A. */
const VOLTAGE_NOISE = 0.012;
const CURRENT_NOISE = 0.05;
/** Thrust at which the sloshing is as large as the stand says, N. */
const FULL_THRUST = 30;

/** Tare of the load cell at part `x` (0 to 1) of the run: a straight drift with a slight bow, as a warming cell has. */
const tareAt = (stand: Stand, x: number) => stand.forceTare + stand.forceDrift * (x + 0.08 * Math.sin(2 * Math.PI * x));

/** Reads every moment of a run with the instruments of a stand. */
export function readMoments(moments: readonly Moment[], stand: Stand, random: RandomSource): Reading[] {
  const length = moments.at(-1)!.time;
  const slosh = slowNoise(random, stand.slosh, SLOSH_CORRELATION);
  return moments.map((moment) => {
    const shake = stand.shake * moment.thrust * Math.sin(2 * Math.PI * moment.turns);
    const load = moment.thrust * stand.forceGain + shake + slosh() * (0.1 + moment.thrust / FULL_THRUST);
    return {
      time: moment.time,
      asked: moment.asked,
      rotationRate: moment.rotationRate * (1 + stand.rotationNoise * random.normal()),
      // A stand without a wheel draws no number, so that its log does not hang on there being others with one.
      speed: stand.wheel ? moment.speed * stand.wheel.gain + stand.wheel.noise * random.normal() : 0,
      force: load + tareAt(stand, moment.time / length) + stand.forceNoise * random.normal(),
      torque: moment.torque * stand.torqueGain + stand.torqueTare + stand.torqueNoise * random.normal(),
      voltage: moment.voltage * stand.voltageGain + VOLTAGE_NOISE * random.normal(),
      current: moment.current * stand.currentGain + stand.currentOffset + CURRENT_NOISE * random.normal(),
    };
  });
}

/** Times of a logger that means to read every `interval` seconds and is up to `jitter` seconds late. */
export function readingTimes(length: number, interval: number, jitter: number, random: RandomSource): number[] {
  const count = Math.floor(length / interval);
  return Array.from({ length: count }, (_, i) => Math.round(1000 * (i * interval + jitter * random.uniform())) / 1000);
}

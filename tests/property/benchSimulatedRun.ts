import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import { tableOf } from "../unit/benchTable.ts";

/** Uniform numbers from 0 to 1; Mulberry32 (T. Ettinger, 2017, public domain), so that every run can be repeated. */
export function uniformFrom(start: number): () => number {
  let state = start >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normal numbers by Box & Muller (1958). */
export const normalFrom = (uniform: () => number) => () =>
  Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());

/** How a stand behaves; everything SI. */
export interface Stand {
  readonly thrustCoefficient: number;
  /** Null: no torque cell. */
  readonly torqueCoefficient: number | null;
  readonly diameter: number;
  readonly samplingRate: number;
  /** Rotation rates of the steps, rev/s. */
  readonly steps: readonly number[];
  readonly dwell: number;
  readonly rest: number;
  /** Standard deviation of the thrust reading: a floor, N, and a part of the thrust. */
  readonly noiseFloor: number;
  readonly noisePart: number;
  /** Correlation of the noise from sample to sample. */
  readonly correlation: number;
  /** Standard deviation of the rotation rate reading, rev/s. */
  readonly rateNoise: number;
  /** Part by which the rotation rate sags within a step. */
  readonly sag: number;
  readonly settlingTime: number;
  readonly zero: number;
  /** Change of the zero over the run, N, and how it bends: 1 straight. */
  readonly drift: number;
  readonly driftBend: number;
  /** How far the zero goes out and comes back over the run, N: half a sine. */
  readonly bow?: number;
  readonly thrustStep: number;
  readonly rateStep: number;
  readonly glitchChance: number;
  readonly withCommand: boolean;
  /** Relative departure of each plateau that nothing in the readings shows. */
  readonly plateauScatter: number;
  /** Change of the zero of the torque over the run, N·m; absent: 0.003. */
  readonly torqueDrift?: number;
  /** Density of the water, kg/m³; absent: fresh water of 18 °C. */
  readonly density?: number;
}

const DENSITY = fluidProperties({ kind: "fresh", temperature: 291.15 }).density;

/** A log of one sweep on such a stand: rest, steps, rest. Columns time, thrust (N), rotation rate (rev/s), [torque (N·m)], [command]. */
export function simulatedLog(stand: Stand, uniform: () => number): LogTable {
  const normal = normalFrom(uniform);
  const density = stand.density ?? DENSITY;
  const levels = [0, ...stand.steps, 0];
  const durations = levels.map((level) => (level === 0 ? stand.rest : stand.dwell));
  const total = durations.reduce((sum, duration) => sum + duration, 0);
  const top = Math.max(...stand.steps);
  const factors = levels.map(() => 1 + stand.plateauScatter * normal());
  const columns = {
    time: [] as number[],
    command: [] as number[],
    thrust: [] as number[],
    rate: [] as number[],
    torque: [] as number[],
  };
  let [level, left, rate, pull, noise] = [0, durations[0]!, 0, 0, 0];
  const step = 1 / stand.samplingRate;
  for (let t = 0; t < total - step / 2; t += step) {
    while (left <= step / 2) left += durations[++level]!;
    const within = durations[level]! - left;
    left -= step;
    const decay = Math.exp(-step / stand.settlingTime);
    const target = levels[level]! * (1 - (stand.sag * within) / durations[level]!);
    rate = target + (rate - target) * decay;
    const force = stand.thrustCoefficient * density * rate ** 2 * stand.diameter ** 4 * factors[level]!;
    pull = force + (pull - force) * Math.exp((-2 * step) / stand.settlingTime);
    noise = stand.correlation * noise + Math.sqrt(1 - stand.correlation ** 2) * normal();
    const zero =
      stand.zero + stand.drift * (t / total) ** stand.driftBend + (stand.bow ?? 0) * Math.sin((Math.PI * t) / total);
    const glitch = uniform() < stand.glitchChance ? 40 * (uniform() - 0.3) : 0;
    const reading = pull + zero + noise * Math.hypot(stand.noiseFloor, stand.noisePart * pull) + glitch;
    columns.time.push(t);
    columns.command.push(Math.round(1100 + (800 * levels[level]!) / top + 0.7 * normal()));
    columns.thrust.push(stepped(reading, stand.thrustStep));
    const torque = (stand.torqueCoefficient ?? 0) * density * rate ** 2 * stand.diameter ** 5;
    if (stand.torqueCoefficient !== null)
      columns.torque.push(torque + 0.01 + (stand.torqueDrift ?? 0.003) * (t / total) + 0.001 * normal());
    columns.rate.push(
      stepped(levels[level] === 0 && rate < 0.01 * top ? 0 : rate + stand.rateNoise * normal(), stand.rateStep),
    );
  }
  const { command, torque, ...measured } = columns;
  const others = stand.torqueCoefficient === null ? measured : { ...measured, torque };
  const resolutions = [null, stand.thrustStep || null, stand.rateStep || null, ...(others === measured ? [] : [null])];
  if (!stand.withCommand) return tableOf(others, { resolutions });
  return tableOf({ ...others, command }, { resolutions: [...resolutions, 1] });
}

const stepped = (value: number, step: number) => (step > 0 ? Math.round(value / step) * step : value);

/** A quiet, quick stand with five steps and nothing wrong; true K_T 0.2. */
export const quietStand = (more: Partial<Stand> = {}): Stand => ({
  ...{
    thrustCoefficient: 0.2,
    torqueCoefficient: null,
    diameter: 0.076,
    samplingRate: 50,
    steps: [15, 22, 30, 37, 45],
    dwell: 6,
    rest: 5,
  },
  ...{ noiseFloor: 0.02, noisePart: 0.002, correlation: 0, rateNoise: 0.02, sag: 0, settlingTime: 0.1 },
  ...{
    zero: 0.8,
    drift: 0,
    driftBend: 1,
    thrustStep: 0,
    rateStep: 0,
    glitchChance: 0,
    withCommand: true,
    plateauScatter: 0,
  },
  ...more,
});

/** A log of `quietStand` with columns time (s), thrust (N), rate (rev/s), command (us) as arrays to be changed. */
export function quietColumns(more: Partial<Stand> = {}): Record<"time" | "thrust" | "rate" | "command", number[]> {
  const table = simulatedLog(quietStand(more), uniformFrom(7));
  const [time, thrust, rate, command] = table.columns.map((column) => Array.from(column));
  return { time: time!, thrust: thrust!, rate: rate!, command: command! };
}

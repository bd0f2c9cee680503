import type { LogTable } from "../../shared/log/logTable.ts";
import type { Motor } from "../../shared/model/parts/motor.ts";
import type { QualityCheck } from "../../shared/model/quality.ts";
import type { StandFacts } from "../../shared/model/stand.ts";
import { propellerOf, recipeOf, reduce, tableOf } from "../unit/benchTable.ts";
import { normalFrom, quietStand, type Stand, simulatedLog, uniformFrom } from "./benchSimulatedRun.ts";

/** What goes wrong on the stand; each part is of the healthy value. */
export interface Effects {
  /** Thrust lost by the end of each step, as a part. */
  readonly returnFlow?: number;
  /** Thrust lost at the fast steps, from the middle of the step on or all along, with flutter. */
  readonly ventilation?: { readonly loss: number; readonly flutter: number; readonly from: "middle" | "start" };
  /** Part of the supply's voltage lost over the run. */
  readonly sag?: number;
  /** More power for the same work by the end of each step, and by the end of the run. */
  readonly heatWithin?: number;
  readonly heatOverRun?: number;
  /** Part of the greatest reading at which the cell stops. */
  readonly clip?: number;
  /** Looks a second at one mark: rates fold about half of it. */
  readonly sampling?: number;
  readonly temperatureRise?: number;
  readonly stand?: StandFacts;
  /** Relative standard uncertainty that is stated of the calibration of the thrust. */
  readonly calibration?: number;
  readonly electrical?: boolean;
  readonly chord?: number;
  readonly motor?: Motor;
}

/** A log of `stand` with electrical and temperature columns and one thing wrong, reduced; its checks by code. */
export function qualityOf(stand: Stand, effects: Effects = {}, seed = 11): ReadonlyMap<string, QualityCheck> {
  const { table } = logOf(stand, effects, seed);
  const electrical =
    effects.electrical === false
      ? []
      : [
          ["voltage", "V"],
          ["current", "A"],
          ["temperature", "degC"],
        ];
  const uses = [["time", "s"], ["thrust", "N"], ["rotationRate", "rev/s"], ["command", "us"], ...electrical];
  const { stand: facts, calibration } = effects;
  const recipe = recipeOf(uses as [string, string][], {
    ...(facts && { stand: facts }),
    ...(calibration && { corrections: { thrust: { factor: 1, relativeUncertainty: calibration } } }),
  });
  const propeller = propellerOf(effects.chord === undefined ? {} : { chordAt07: effects.chord });
  const { quality } = reduce({ table, recipe, propeller, motor: effects.motor });
  return new Map(quality.map((check) => [check.code, check]));
}

/** The log alone: columns time, thrust, rotation rate, command and, unless left out, voltage, current, temperature. */
export function logOf(stand: Stand, effects: Effects, seed: number): { readonly table: LogTable } {
  const uniform = uniformFrom(seed);
  const log = simulatedLog({ ...stand, torqueCoefficient: null, withCommand: true }, uniform);
  return { table: withEffects(log, stand, effects, normalFrom(uniform)) };
}

function withEffects(log: LogTable, stand: Stand, effects: Effects, normal: () => number): LogTable {
  const [time, thrust, rate, command] = log.columns.map((column) => Array.from(column)) as [
    number[],
    number[],
    number[],
    number[],
  ];
  const total = 2 * stand.rest + stand.steps.length * stand.dwell;
  const top = Math.max(...stand.steps);
  const [voltage, current, temperature]: number[][] = [[], [], []];
  time.forEach((t, i) => {
    const within = ((t - stand.rest) / stand.dwell) % 1;
    const turning = t > stand.rest && t < total - stand.rest;
    const n = turning ? rate[i]! : 0;
    const force = stand.thrustCoefficient * 998.6 * n ** 2 * stand.diameter ** 4;
    if (effects.returnFlow && turning) thrust[i]! -= force * effects.returnFlow * within;
    const air = effects.ventilation;
    if (air && n > 0.8 * top && (air.from === "start" || within > 0.5)) {
      thrust[i]! -= force * (air.loss + air.flutter * normal());
    }
    const heat = 1 + (effects.heatWithin ?? 0) * (turning ? within : 0) + ((effects.heatOverRun ?? 0) * t) / total;
    const power = (2 * Math.PI * 0.03 * 998.6 * n ** 3 * stand.diameter ** 5 * heat) / 0.7;
    const volts = (15 * (1 - ((effects.sag ?? 0) * t) / total) - 0.001 * power) * (1 + 0.001 * normal());
    voltage!.push(Math.round(volts * 100) / 100);
    current!.push(Math.round((power / volts) * (1 + 0.005 * normal()) * 1000) / 1000);
    temperature!.push(18 + ((effects.temperatureRise ?? 0) * t) / total + 0.1 * normal());
    if (effects.sampling) rate[i] = Math.abs(rate[i]! - Math.round(rate[i]! / effects.sampling) * effects.sampling);
  });
  if (effects.clip) {
    const stop = effects.clip * Math.max(...thrust);
    thrust.forEach((reading, i) => {
      thrust[i] = Math.min(reading, stop);
    });
  }
  const electrical =
    effects.electrical === false ? {} : { voltage: voltage!, current: current!, temperature: temperature! };
  const columns = { time, thrust, rate, command, ...electrical };
  const resolutions = [...log.resolutions, ...(effects.electrical === false ? [] : [0.01, 0.001, null])];
  return tableOf(columns, { resolutions });
}

/** A healthy stand of a workshop, drawn at random; noise, zero and steps as they go with the size of the thrust. */
export function healthyStand(uniform: () => number): Stand {
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const count = 5 + Math.floor(4 * uniform());
  const top = between(30, 60);
  const up = Array.from({ length: count }, (_, i) => (top * (i + 3)) / (count + 2));
  const thrustCoefficient = between(0.1, 0.5);
  const greatest = thrustCoefficient * 998.6 * top ** 2 * 0.076 ** 4;
  return quietStand({
    thrustCoefficient,
    samplingRate: [10, 20, 50, 80][Math.floor(4 * uniform())]!,
    steps: uniform() < 0.5 ? [...up, ...up.slice(0, -1).reverse()] : up,
    dwell: between(5, 10),
    rest: between(4, 8),
    noiseFloor: greatest * between(0.001, 0.01),
    noisePart: between(0, 0.02),
    correlation: uniform() < 0.5 ? 0 : between(0.2, 0.9),
    rateNoise: between(0, 0.3),
    sag: uniform() < 0.5 ? 0 : between(0, 0.02),
    settlingTime: between(0.05, 0.4),
    zero: greatest * between(-1.5, 1.5),
    drift: greatest * (uniform() < 0.3 ? 0 : between(-0.02, 0.02)),
    driftBend: between(0.6, 1.6),
    thrustStep: [0, 0.001, 0.005, 0.01][Math.floor(4 * uniform())]! * greatest,
    rateStep: [0, 1 / 60, 1 / 6, 0.25][Math.floor(4 * uniform())]!,
    glitchChance: uniform() < 0.5 ? 0 : 0.003,
    plateauScatter: uniform() < 0.5 ? 0 : between(0, 0.005),
  });
}

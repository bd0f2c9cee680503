import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { normalFrom } from "./benchSimulatedRun.ts";

/** A stand on which the throttle goes up and down without a stop; everything SI. */
export interface Ramp {
  readonly thrustCoefficient: number;
  readonly samplingRate: number;
  readonly topRate: number;
  /** Time of the ways up and down; a fall of 0 ends the log at the top. */
  readonly rise: number;
  readonly fall: number;
  readonly rest: number;
  readonly noiseFloor: number;
  /** Of the noise of the thrust; 0: independent samples. */
  readonly correlationTime: number;
  readonly rateNoise: number;
  /** Time by which the thrust reading comes after the rotation rate. */
  readonly lag: number;
  readonly zero: number;
  readonly drift: number;
  /** Exponent of the rate over time: 1 straight. */
  readonly bend: number;
  /** Part by which the scale reads less on the way down. */
  readonly friction?: number;
}

const DIAMETER = 0.076;
const DENSITY = fluidProperties({ kind: "fresh", temperature: 291.15 }).density;

/** Columns time (s), thrust (N), rate (rev/s) of one such run, propeller of 76 mm in fresh water of 18 °C. */
export function simulatedRamp(ramp: Ramp, uniform: () => number): { time: number[]; thrust: number[]; rate: number[] } {
  const normal = normalFrom(uniform);
  const { rise, fall, rest, topRate, bend, friction = 0 } = ramp;
  const total = 2 * rest + rise + fall;
  const rateAt = (t: number) => {
    const up = (t - rest) / rise;
    const down = fall > 0 ? (rest + rise + fall - t) / fall : 1;
    const part = Math.min(up, down);
    return part <= 0.02 || (fall === 0 && up > 1) ? 0 : topRate * Math.min(1, part) ** bend;
  };
  const columns = { time: [] as number[], thrust: [] as number[], rate: [] as number[] };
  const keep = ramp.correlationTime > 0 ? Math.exp(-1 / (ramp.samplingRate * ramp.correlationTime)) : 0;
  let noise = normal();
  for (let t = 0; t < total; t += 1 / ramp.samplingRate) {
    const n = rateAt(t);
    noise = keep * noise + Math.sqrt(1 - keep * keep) * normal();
    const falling = t > rest + rise;
    const force = ramp.thrustCoefficient * DENSITY * rateAt(t - ramp.lag) ** 2 * DIAMETER ** 4;
    columns.time.push(t);
    columns.thrust.push(
      force * (falling ? 1 - friction : 1) + ramp.zero + (ramp.drift * t) / total + ramp.noiseFloor * noise,
    );
    columns.rate.push(n === 0 ? 0 : n + ramp.rateNoise * normal());
  }
  return columns;
}

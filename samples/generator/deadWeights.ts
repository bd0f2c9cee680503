import { randomSource } from "./random.ts";
import { TANK_STAND } from "./stands.ts";

/** True propeller arm over true scale arm of the tank's beam; a rule says that they are equal. */
const ARM_RATIO = 1.0005;
/** True mass of the weights over what is stamped on them. */
const WEIGHT_GAIN = 1.0015;
/** Reading of the unloaded cell with beam and cable, gf. */
const ZERO = 41;
/** Scatter of a reading averaged over some seconds, gf. */
const SCATTER = 1.6;
/** What friction keeps back at the middle of the range on the way up, and gives back on the way down, gf. */
const FRICTION = 2.5;
/** Stamped masses, g. */
const STEP = 500;
const TOP = 3500;

const SEED = 20260912;

/**
 * The dead-weight table of the tank's load cell: weights laid on the cell going up and coming down, read in whole grams.
 * The reading over the force at the propeller is then the force gain of the stand that wrote the logs.
 */
export function deadWeightTable(seed = SEED): { applied: number; reading: number }[] {
  const random = randomSource(seed, 1);
  const cellGain = TANK_STAND.forceGain / ARM_RATIO;
  const up = Array.from({ length: TOP / STEP + 1 }, (_, i) => i * STEP);
  const down = up.slice(0, -1).reverse();
  const read = (applied: number, way: 1 | -1) => {
    const friction = way * FRICTION * Math.sin((Math.PI * applied) / TOP);
    const reading = ZERO + cellGain * WEIGHT_GAIN * applied - friction + SCATTER * random.normal();
    return { applied, reading: Math.round(reading) };
  };
  return [...up.map((applied) => read(applied, 1)), ...down.map((applied) => read(applied, -1))];
}

import { fixed } from "./glitches.ts";
import { GRAM_FORCE } from "./logFormats.ts";
import type { RandomSource } from "./random.ts";
import { SCALE_BEAM } from "./stands.ts";
import { runThruster, type Thruster } from "./thruster.ts";

/** Seconds after which the reading is taken; the spin-up is over long before. */
const SETTLED = 5;

/**
 * A table typed from a notebook: one row for each throttle, no time, columns lined up by eye with blanks.
 * The scale was set to zero before each row, shows whole grams, and the tacho is read to ten turns a minute.
 */
export function scaleTable(
  thruster: Thruster,
  throttles: readonly number[],
  comments: readonly string[],
  random: RandomSource,
): string {
  const rows = throttles.map((throttle) => {
    const [moment] = runThruster(thruster, [{ duration: 2 * SETTLED, throttle }], [SETTLED]);
    const force = moment!.thrust / SCALE_BEAM.leverRatio;
    const read = (value: number, noise: number) => value + noise * random.normal();
    return [
      fixed(read(force * read(1, SCALE_BEAM.forceNoise), SCALE_BEAM.readingNoise) / GRAM_FORCE, 0),
      fixed(10 * Math.round(6 * moment!.rotationRate * read(1, SCALE_BEAM.rotationNoise)), 0),
      fixed(read(moment!.voltage, SCALE_BEAM.voltageNoise), 2),
      fixed(read(moment!.current, SCALE_BEAM.currentNoise), 1),
    ];
  });
  const columns = [["scale(g)", "tacho(rpm)", "volts", "amps"], ...rows];
  return `${[...comments, ...columns.map((cells) => cells.map((cell) => cell.padStart(10)).join(" "))].join("\n")}\n`;
}

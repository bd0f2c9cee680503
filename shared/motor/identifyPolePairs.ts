import type { PolePairs } from "../model/motorIdentification.ts";
import { lineThroughOrigin } from "../numeric/lineThroughOrigin.ts";
import { formatNumber } from "../quantity/format.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";

/** The same steady speed counted by the controller and by a tachometer, rev/s. */
export interface PolePairReading {
  readonly electrical: number;
  readonly shaft: number;
}

/** What a hobby tachometer is usually good for, relative standard uncertainty. Common practice, no source. */
const TACHOMETER = 0.005;
/** A ratio farther than this from a whole number belongs to no pole count that can be named. */
const FARTHEST = 0.25;
/** Most pole pairs the rest of the program works with. */
const MOST = 60;

/**
 * Magnet pole pairs: electrical turns for one turn of the shaft, the nearest whole number.
 *
 * Source   synchronous machines: one electrical turn for each pair of poles; any text on electric machines.
 * Range    1 to 60 pairs. One reading is worth a tachometer's 0.5 %; several show their own scatter too.
 * Throws   InputProblem `motor.pole-pairs-unclear` where the ratio lies between two whole numbers, or is not known well
 *          enough to name one.
 *
 * @example polePairsFrom([{ electrical: 525.2, shaft: 75 }]).polePairs // 7
 */
export function polePairsFrom(readings: readonly PolePairReading[]): PolePairs {
  const ratio = ratioOf(readings);
  const polePairs = Math.round(ratio.value);
  const off = ratio.value - polePairs;
  const [low, high] = ratio.interval95;
  const between = Math.abs(off) > FARTHEST || low < polePairs - 0.5 || high > polePairs + 0.5;
  if (polePairs < 1 || polePairs > MOST || between) throw unclear(ratio);
  return { polePairs, ratio, off };
}

function ratioOf(readings: readonly PolePairReading[]): Uncertain {
  const x = readings.map(({ shaft }) => shaft);
  const y = readings.map(({ electrical }) => electrical);
  const { slope } = lineThroughOrigin({ x, y });
  // A tachometer is off by about the same part everywhere: repeats show a wrong reading, not a wrong instrument.
  const ratios = readings.map(({ electrical, shaft }) => electrical / shaft);
  const spread = Math.max(...ratios) - Math.min(...ratios);
  return uncertain(slope, Math.hypot(TACHOMETER * slope, spread / 2));
}

function unclear({ value, interval95: [low, high] }: Uncertain): InputProblem {
  return new InputProblem({
    code: "motor.pole-pairs-unclear",
    where: "polePairReadings",
    found: `The electrical count is ${formatNumber(value, 4)} times the tachometer's (${formatNumber(low)} to ${formatNumber(high)})`,
    needed: "a ratio close to one whole number from 1 to 60",
    mend: "Read both at one steady speed; a tachometer that counts blades or marks shows two or three times the speed. Or count the magnets and take half",
  });
}

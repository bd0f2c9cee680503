import { moments } from "../numeric/moments.ts";
import { twoSidedPValue } from "../numeric/studentT.ts";
import type { CalibrationLine } from "./calibrationLine.ts";
import { type Direction, directionsOf } from "./direction.ts";

/** Difference between the way down and the way up. */
export interface Hysteresis {
  /** Mean of reading on unloading less reading on loading at the same load, unit of the reading. */
  readonly difference: number;
  readonly standardUncertainty: number;
  /** Mean difference as part of the span of the readings. */
  readonly partOfSpan: number;
  readonly uncertaintyOfPart: number;
  /** Loads that were read both ways. */
  readonly loads: number;
  readonly pValue: number;
}

/** Loads read both ways from which on a difference can be told from scatter. */
const FEWEST_LOADS = 2;

/**
 * Hysteresis of a calibration: paired differences at the loads that were read going up and coming down, and Student's
 * test of their mean. Null where fewer than two loads were read both ways.
 *
 * Source   paired t test, e.g. Snedecor & Cochran, Statistical Methods, 8th ed. (1989), 6.3.
 */
export function hysteresisOf({ points, span }: CalibrationLine): Hysteresis | null {
  const directions = directionsOf(points);
  const differences = [...new Set(points.map(({ applied }) => applied))].flatMap((load) => {
    const mean = (way: Direction) => {
      const readings = points.filter(({ applied }, i) => applied === load && directions[i] === way);
      return readings.length === 0 ? null : readings.reduce((sum, { reading }) => sum + reading, 0) / readings.length;
    };
    const [up, down] = [mean("loading"), mean("unloading")];
    return up === null || down === null ? [] : [down - up];
  });
  const loads = differences.length;
  if (loads < FEWEST_LOADS) return null;
  const { mean, standardDeviation } = moments(differences);
  const standardUncertainty = standardDeviation / Math.sqrt(loads);
  return {
    difference: mean,
    standardUncertainty,
    partOfSpan: mean / span,
    uncertaintyOfPart: standardUncertainty / span,
    loads,
    pValue: standardUncertainty > 0 ? twoSidedPValue(mean / standardUncertainty, loads - 1) : mean === 0 ? 1 : 0,
  };
}

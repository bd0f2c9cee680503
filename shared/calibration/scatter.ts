import type { CalibrationPoint } from "../model/instrument.ts";
import { twoSidedPValue } from "../numeric/studentT.ts";
import type { CalibrationLine } from "./calibrationLine.ts";
import { directionsOf } from "./direction.ts";

/** Agreement of readings of one load reached the same way. */
export interface Repeatability {
  /** Unit of the reading. */
  readonly standardDeviation: number;
  readonly degreesOfFreedom: number;
}

/** Pooled standard deviation of repeated readings. Null where none was repeated. Source ISO 5725-2:2019, 7.4 (from memory). */
export function repeatabilityOf(points: readonly CalibrationPoint[]): Repeatability | null {
  const directions = directionsOf(points);
  const groups = new Map<string, number[]>();
  points.forEach(({ applied, reading }, i) => {
    const key = `${applied} ${directions[i]}`;
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  });
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const readings of groups.values()) {
    const mean = readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
    squares += readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0);
    degreesOfFreedom += readings.length - 1;
  }
  return degreesOfFreedom === 0 ? null : { standardDeviation: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/** Chance, over the whole table, that a sound point is called an outlier. */
const FALSE_ALARM = 0.05;

/**
 * Points that do not belong to the line of the others, as indices: residuals studentised without the point itself,
 * with Bonferroni's correction for having looked at all of them. None is left out of the fit by itself.
 *
 * Source   Cook & Weisberg, Residuals and Influence in Regression (1982), 2.2.2.
 */
export function outliersOf({ points, residuals, meanApplied }: CalibrationLine): number[] {
  const n = points.length;
  const dof = n - 3;
  if (dof < 1) return [];
  const total = residuals.reduce((sum, e) => sum + e * e, 0);
  const about = points.reduce((sum, { applied }) => sum + (applied - meanApplied) ** 2, 0);
  return residuals.flatMap((e, i) => {
    const leverage = 1 / n + (points[i]!.applied - meanApplied) ** 2 / about;
    const own = (e * e) / (1 - leverage);
    if (e === 0 || !(leverage < 1)) return [];
    // Where the others lie on a line to the last digit, what is left is the rounding of the difference.
    const others = (total - own) / dof;
    const stands = others <= 1e-12 * total || n * twoSidedPValue(Math.sqrt(own / others), dof) < FALSE_ALARM;
    return stands ? [i] : [];
  });
}

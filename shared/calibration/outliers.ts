import { twoSidedPValue } from "../numeric/studentT.ts";
import type { CalibrationLine } from "./calibrationLine.ts";

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

import { predictedBollard } from "./predictedCurves.ts";
import type { Predictor } from "./predictor.ts";

/** Rotation rate that the one computed point is taken at, rev/s. */
const COMPUTED_AT = 4000 / 60;

/**
 * Rotation rate at bollard that takes about a shaft power (W) in a fluid of `density` (kg/m³), rev/s; 0 where the
 * prediction takes no power.
 *
 *   n = n_1 (P/P_1)^(1/3)
 *
 * Source   P = C_P ρ n³ D⁵ with one C_P for both rates; e.g. Carlton, Marine Propellers and Propulsion, ch. 6.
 * Assumes  a power coefficient that does not change with the Reynolds number between 4000 rpm and there.
 * Error    a third of what C_P changes by; good enough for how far a curve is drawn and for a Reynolds number.
 */
export function rateForPower(predictor: Predictor, density: number, shaftPower: number): number {
  const [point] = predictedBollard(predictor, density, [COMPUTED_AT]);
  if (point === undefined || !(point.shaftPower > 0)) return 0;
  return point.rotationRate * Math.cbrt(shaftPower / point.shaftPower);
}

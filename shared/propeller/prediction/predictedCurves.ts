import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../coefficients.ts";
import { openWaterEfficiency } from "../openWaterEfficiency.ts";
import type { Predictor } from "./predictor.ts";

/** A predicted open-water point. */
export interface PredictedOpenWater {
  readonly advanceRatio: number;
  readonly thrustCoefficient: number;
  readonly torqueCoefficient: number;
  /** J K_T/(2π K_Q); null where the torque is not positive. */
  readonly efficiency: number | null;
}

/** A predicted point at bollard. */
export interface PredictedBollard {
  /** rev/s */
  readonly rotationRate: number;
  /** N */
  readonly thrust: number;
  /** W */
  readonly shaftPower: number;
}

/** Advance ratio beyond which no curve is followed: far above the zero thrust of any pitch ratio a series has. */
const FARTHEST = 2.5;

/**
 * K_T, K_Q and efficiency against J at one rotation rate (rev/s), in `steps` equal steps from bollard until the thrust has
 * ended. Points that the prediction can not give are left out.
 *
 *   η = J K_T/(2π K_Q)
 *
 * Source   ITTC Symbols and Terminology List (2021); the end by Brent's method to 1e-9 of J.
 * Range    followed up to J = 2.5 where the thrust has no end.
 */
export function predictedOpenWater(predictor: Predictor, rotationRate: number, steps: number): PredictedOpenWater[] {
  const end = thrustEnd(predictor, rotationRate);
  return Array.from({ length: steps + 1 }, (_, step) => (end * step) / steps).flatMap((advanceRatio) => {
    const at = predictor.at({ rotationRate, advanceSpeed: advanceRatio * rotationRate * predictor.diameter });
    if (at.state === "unknown") return [];
    const { thrustCoefficient, torqueCoefficient } = at;
    const point = { advanceRatio, thrustCoefficient, torqueCoefficient };
    return [{ ...point, efficiency: torqueCoefficient > 0 ? openWaterEfficiency(point) : null }];
  });
}

const SCAN = 0.05;

/** First advance ratio at which the thrust is zero: steps to see it, Brent to place it. */
function thrustEnd(predictor: Predictor, rotationRate: number): number {
  const thrust = (J: number) => {
    const at = predictor.at({ rotationRate, advanceSpeed: J * rotationRate * predictor.diameter });
    return at.state === "known" ? at.thrustCoefficient : Number.NaN;
  };
  let before = 0;
  for (let J = SCAN; J < FARTHEST; before = J, J += SCAN) {
    if (!(thrust(J) <= 0)) continue;
    return thrust(before) > 0 ? bracketedRoot(thrust, before, J, { relativeTolerance: 1e-9 }).root : J;
  }
  return FARTHEST;
}

/**
 * Thrust (N) and shaft power (W) at bollard for each rotation rate (rev/s) in a fluid of `density` (kg/m³). Rates that
 * the prediction can not give are left out.
 *
 *   T = K_T ρ n² D⁴,   P = 2π K_Q ρ n³ D⁵
 *
 * Source   definitions of the coefficients: ITTC Symbols and Terminology List (2021).
 * Error    that of the prediction.
 */
export function predictedBollard(
  predictor: Predictor,
  density: number,
  rotationRates: readonly number[],
): PredictedBollard[] {
  return rotationRates.flatMap((rotationRate) => {
    const at = predictor.at({ rotationRate, advanceSpeed: 0 });
    if (at.state === "unknown") return [];
    const pressure = density * rotationRate ** 2;
    return [
      {
        rotationRate,
        thrust: at.thrustCoefficient * pressure * predictor.diameter ** 4,
        shaftPower:
          (at.torqueCoefficient / TORQUE_OVER_POWER_COEFFICIENT) * pressure * rotationRate * predictor.diameter ** 5,
      },
    ];
  });
}

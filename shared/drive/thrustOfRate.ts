import type { PropellerCurve } from "../model/drivePropeller.ts";
import { bracketedRoot } from "../numeric/rootFinding.ts";
import { firstZero } from "../propeller/firstZero.ts";
import { coefficientAt } from "./curveEnd.ts";

/** A propeller curve at one advance speed in one fluid. */
export interface RunningCurve {
  readonly curve: PropellerCurve;
  /** D, m. */ readonly diameter: number;
  /** ρ, kg/m³. */ readonly density: number;
  /** V_A, m/s. */ readonly advanceSpeed: number;
}

/**
 * Thrust, N, as a function of the rotation rate (rev/s): K_T(J) ρ n² D⁴ with J = V_A/(n D).
 *
 * Source   ITTC Symbols and Terminology List (2021).
 */
export function thrustOfRate(running: RunningCurve): (rotationRate: number) => number {
  const { diameter: D, density: rho, advanceSpeed: V } = running;
  const K_T = thrustCoefficientOf(running.curve);
  return (n) => K_T(V / (n * D)) * rho * n ** 2 * D ** 4;
}

/** Least rotation rate, rev/s, at which the curve is known and pushes; 0 at rest. */
export function leastPushingRate({ curve, diameter, advanceSpeed }: RunningCurve): number {
  if (advanceSpeed === 0) return 0;
  const end = curve.openWater?.greatestAdvanceRatio ?? 0;
  const zero = firstZero(thrustCoefficientOf(curve));
  const J = zero === null ? end : Math.min(zero, end);
  return advanceSpeed / (J * diameter);
}

const GREATEST_RATE = 1e4;

/**
 * Rotation rate, rev/s, at which `excess`, negative for slow turning and rising, passes 0, from `least` on; `least` where
 * it is above 0 already there, null where it is below up to a rate that no propeller turns at.
 */
export function rateWhere(excess: (rotationRate: number) => number, least: number): number | null {
  // A hair above: at the least rate itself there is no thrust for a loading.
  let low = least === 0 ? 1e-3 : least * (1 + 1e-6);
  if (excess(low) >= 0) return low;
  for (let high = 2 * low; high < GREATEST_RATE; low = high, high *= 2) {
    if (excess(high) >= 0) return bracketedRoot(excess, low, high).root;
  }
  return null;
}

function thrustCoefficientOf({ thrustCoefficient, openWater }: PropellerCurve): (J: number) => number {
  return (J) => coefficientAt(thrustCoefficient.value, openWater?.thrust ?? [], J);
}

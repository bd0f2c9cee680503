import type { Doubtful } from "../model/drivePropeller.ts";
import type { CoefficientFit, Reduction } from "../model/reduction.ts";
import { torqueCoefficientFromMerit } from "../propeller/staticMerit.ts";
import { NORMAL_975, type Uncertain } from "../quantity/uncertain.ts";

/** K_T and K_Q of a propeller with their doubts, and how these hang together. */
export interface CoefficientPair {
  readonly thrustCoefficient: Doubtful;
  readonly torqueCoefficient: Doubtful;
  /** Of the two errors, -1 to 1. */ readonly correlation: number;
}

/** Coefficients that were measured together: of one run, or the means of several mountings. */
export interface MeasuredPair {
  readonly thrustCoefficient: Uncertain;
  readonly torqueCoefficient: Uncertain;
  /** Fits of the runs they come from. */
  readonly runs: readonly Pick<Reduction, "thrustFit" | "powerFit">[];
  /**
   * The propeller that was measured is the one that will work: what its diameter is off by makes K_T too small as D⁴ makes
   * it too great, and leaves thrust and torque as they were measured. False: a copy, or another size.
   */
  readonly isSameCopy: boolean;
}

/**
 * Measured coefficients as an operating point takes them, with the correlation of their errors.
 *
 *   r = Σ e_T e_Q/(u_T u_Q)   over the causes that both share: diameter, density, rotation rate, advance speed;
 *   e = mean over the runs of each one's relative part under that cause
 *
 * Source   law of propagation, JCGM 100:2008, 5.2.2 and F.1.2.3.
 * Assumes  a shared cause moves both the same way: K_T goes with n⁻² D⁻⁴ ρ⁻¹, K_Q with n⁻² D⁻⁵ ρ⁻¹. Scatter of thrust and
 *          of torque, and their spread between mountings, is taken as independent; where both rise and fall together in
 *          truth, r is greater and thrust per power better known than is told.
 * Error    the standard uncertainties are widened to those of a normal distribution with the same 95 % interval, so that a
 *          mean of two mountings keeps its wide one.
 */
export function coefficientPair({ runs, isSameCopy, ...means }: MeasuredPair): CoefficientPair {
  const ofThrust = meanEffects(runs.map(({ thrustFit }) => thrustFit));
  const ofTorque = meanEffects(runs.flatMap(({ powerFit }) => powerFit ?? []));
  const drop = (key: string) => isSameCopy && key.startsWith(DIAMETER);
  const thrust = ownUncertainty(means.thrustCoefficient, ofThrust, drop);
  const torque = ownUncertainty(means.torqueCoefficient, ofTorque, drop);
  let covariance = 0;
  for (const [key, effect] of ofThrust) if (!drop(key)) covariance += effect * (ofTorque.get(key) ?? 0);
  // Means of several mountings count some causes in their spread: what both share can not be more than the whole.
  const whole = thrust * torque;
  return {
    thrustCoefficient: widened(means.thrustCoefficient, thrust),
    torqueCoefficient: widened(means.torqueCoefficient, torque),
    correlation: whole > 0 ? Math.min(1, covariance / whole) : 0,
  };
}

/** How the key of the diameter as a cause of doubt begins in a reduction. */
const DIAMETER = "diameter:";

/** Relative effect of one standard uncertainty of each common cause on the mean of the runs. */
function meanEffects(fits: readonly CoefficientFit[]): Map<string, number> {
  const effects = new Map<string, number>();
  for (const { components, coefficient } of fits) {
    for (const { key, standardUncertainty } of components) {
      const effect = standardUncertainty / Math.abs(coefficient.value) / fits.length;
      effects.set(key, (effects.get(key) ?? 0) + effect);
    }
  }
  return effects;
}

/** Relative standard uncertainty without the causes that drop out. */
function ownUncertainty(
  { value, standardUncertainty }: Uncertain,
  effects: ReadonlyMap<string, number>,
  drop: (key: string) => boolean,
): number {
  let variance = (standardUncertainty / value) ** 2;
  for (const [key, effect] of effects) if (drop(key)) variance -= effect ** 2;
  return Math.sqrt(Math.max(0, variance));
}

function widened({ value, standardUncertainty, interval95: [low, high] }: Uncertain, relative: number): Doubtful {
  const half = Math.max(high - value, value - low);
  const wider = standardUncertainty > 0 ? Math.max(1, half / (NORMAL_975 * standardUncertainty)) : 1;
  return { value, standardUncertainty: value * relative * wider };
}

/**
 * Coefficients of a propeller whose torque was not measured, from its thrust coefficient and a stated static merit.
 *
 *   K_Q = K_T^(3/2)/(2π FM sqrt(π/2)),   (u/K_Q)² = (1.5 u/K_T)² + (u/FM)²,   r = 1.5 (u/K_T)/(u/K_Q)
 *
 * Source   definition of the static merit; JCGM 100:2008, 5.2.2.
 * Throws   OutOfDomain as `torqueCoefficientFromMerit`.
 */
export function pairFromMerit(thrustCoefficient: Doubtful, merit: Doubtful): CoefficientPair {
  const torqueCoefficient = torqueCoefficientFromMerit({
    thrustCoefficient: thrustCoefficient.value,
    staticMerit: merit.value,
  });
  const ofThrust = (1.5 * thrustCoefficient.standardUncertainty) / thrustCoefficient.value;
  const relative = Math.hypot(ofThrust, merit.standardUncertainty / merit.value);
  return {
    thrustCoefficient,
    torqueCoefficient: { value: torqueCoefficient, standardUncertainty: torqueCoefficient * relative },
    correlation: relative > 0 ? ofThrust / relative : 0,
  };
}

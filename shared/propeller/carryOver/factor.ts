import type { CarryOverFactor } from "../../model/carryOver.ts";

/** A factor with its relative standard uncertainty. */
export interface DoubtfulFactor {
  readonly factor: number;
  readonly uncertainty: number;
}

/**
 * What is known of a factor that lies somewhere between two bounds: their middle, and the half-width over sqrt(3).
 * Source: JCGM 100:2008 (GUM), 4.3.7.
 */
export function between(one: number, other: number): DoubtfulFactor {
  const factor = (one + other) / 2;
  return { factor, uncertainty: Math.abs(one - other) / 2 / Math.sqrt(3) / factor };
}

/** An entry of the list from the factors on thrust and torque. */
export function entry(
  head: Pick<CarryOverFactor, "cause" | "actsOn" | "reason">,
  thrust: DoubtfulFactor,
  torque: DoubtfulFactor,
): CarryOverFactor {
  return {
    ...head,
    thrust: thrust.factor,
    torque: torque.factor,
    thrustUncertainty: thrust.uncertainty,
    torqueUncertainty: torque.uncertainty,
  };
}

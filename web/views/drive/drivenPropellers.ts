import { torqueCoefficientFromMerit } from "../../../shared/propeller/staticMerit.ts";
import type { Uncertain } from "../../../shared/quantity/uncertain.ts";
import { uncertain } from "../../../shared/quantity/uncertain.ts";
import { freeStyle, reductionsOf, type VariantRuns } from "../variants/variantGroups.ts";
import { meanThrustCoefficient, meanTorqueCoefficient } from "../variants/variantMean.ts";
import { type DrivenPropeller, exactly } from "./driveModel.ts";

/** Coefficients written by hand. */
export interface TypedPropeller {
  readonly name: string;
  /** m. */
  readonly diameter: number;
  readonly thrustCoefficient: number;
  /** Null: worked out from the stated static merit. */
  readonly torqueCoefficient: number | null;
}

/** Every variant that has been measured, and the propeller that was typed, as the drive sees them. */
export function drivenPropellers(
  groups: readonly VariantRuns[],
  statedMerit: number,
  typed: TypedPropeller | null,
): DrivenPropeller[] {
  const measured = groups.flatMap((group) => measuredPropeller(group, statedMerit) ?? []);
  return typed === null ? measured : [...measured, typedPropeller(typed, statedMerit, freeStyle(groups))];
}

function measuredPropeller(group: VariantRuns, statedMerit: number): DrivenPropeller | null {
  const reductions = reductionsOf(group);
  const [first] = reductions;
  const thrustCoefficient = meanThrustCoefficient(reductions);
  if (first === undefined || thrustCoefficient === null || !(thrustCoefficient.value > 0)) return null;
  const torque = meanTorqueCoefficient(reductions);
  const source = reductions.find(({ powerSource }) => powerSource !== null)?.powerSource ?? "statedMerit";
  return {
    name: group.name,
    style: group.style,
    // The same propeller with the same diameter was on the stand: what its diameter is wrong by cancels in the thrust.
    diameter: exactly(first.diameter.value),
    thrustCoefficient,
    torqueCoefficient: torque ?? torqueFromMerit(thrustCoefficient, statedMerit),
    torqueSource: torque === null ? "statedMerit" : source,
    runs: reductions.length,
  };
}

function typedPropeller(typed: TypedPropeller, statedMerit: number, style: number): DrivenPropeller {
  const thrustCoefficient = exactly(typed.thrustCoefficient);
  const { torqueCoefficient } = typed;
  return {
    name: typed.name,
    style,
    diameter: exactly(typed.diameter),
    thrustCoefficient,
    torqueCoefficient:
      torqueCoefficient === null ? torqueFromMerit(thrustCoefficient, statedMerit) : exactly(torqueCoefficient),
    torqueSource: torqueCoefficient === null ? "statedMerit" : "typed",
    runs: 0,
  };
}

/** The doubt of the thrust coefficient is carried on, to the power 3/2 that it enters with; the merit is taken as exact. */
function torqueFromMerit({ value, standardUncertainty }: Uncertain, staticMerit: number): Uncertain {
  const torque = torqueCoefficientFromMerit({ thrustCoefficient: value, staticMerit });
  return uncertain(torque, 1.5 * torque * (standardUncertainty / value));
}

import type { FluidState } from "../../../shared/model/fluid.ts";
import { reynoldsFactor } from "../../../shared/propeller/carryOver/reynoldsFactor.ts";
import { reynoldsWords } from "../../../shared/propeller/reynoldsWords.ts";
import { formatUncertain } from "../../../shared/quantity/format.ts";
import { uncertain } from "../../../shared/quantity/uncertain.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { bladeOf } from "../theory/carryOver/carryOverModel.ts";
import type { Subject } from "../theory/subject.ts";
import type { Driven } from "./driveModel.ts";

/** A measured variant with the fluid it was measured in. */
export interface OnStand {
  readonly subject: Pick<Subject, "propeller" | "topRate">;
  readonly fluid: FluidState;
}

/**
 * What the operating point leaves out on the way from the stand to the water, with its size: the coefficients are used as
 * measured, whatever the Reynolds number. Empty for a propeller at rest.
 */
export function leftOutText({ propeller, point }: Driven, { subject, fluid }: OnStand, water: FluidState): string {
  if (point === null || !(point.rotationRate > 0)) return "";
  const { diameter, nozzle } = subject.propeller;
  const { thrustCoefficient, torqueCoefficient } = propeller;
  try {
    const { reynolds, factor } = reynoldsFactor({
      measured: {
        ...{ fluid, rotationRate: subject.topRate, diameter, nozzle, advanceRatio: 0 },
        ...{ thrustCoefficient, torqueCoefficient },
      },
      target: { fluid: water, rotationRate: point.rotationRate, diameter, nozzle },
      ...bladeOf(subject.propeller),
    });
    const change =
      reynolds.measured === null || reynolds.target === null
        ? "the blade Reynolds number is not known, as chord and pitch are not stated"
        : `the blade Reynolds number is ${reynoldsWords(reynolds.target)} here and was at most ${reynoldsWords(reynolds.measured)} on the stand`;
    const size = (value: number, relative: number) => formatUncertain(uncertain(value, relative * value));
    return `${propeller.name}: ${change}. At equal rotation rate that means thrust × ${size(factor.thrust, factor.thrustUncertainty)} and torque × ${size(factor.torque, factor.torqueUncertainty)}.`;
  } catch (thrown) {
    return `${propeller.name}: ${sentenceOf(thrown)}`;
  }
}

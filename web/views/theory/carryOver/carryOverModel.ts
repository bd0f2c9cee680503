import type { CarryOver, CarryOverFactor, CarryOverRequest } from "../../../../shared/model/carryOver.ts";
import type { FluidState } from "../../../../shared/model/fluid.ts";
import { carryOver } from "../../../../shared/propeller/carryOver/carryOver.ts";
import { formatQuantity, formatUncertain } from "../../../../shared/quantity/format.ts";
import { uncertain } from "../../../../shared/quantity/uncertain.ts";
import { capitalised } from "../../../app/words.ts";
import { MILLIMETRE, NEWTON, RPM, WATT } from "../../bench/shownUnits.ts";
import type { Subject } from "../subject.ts";

/** Where the propeller, or one of the same shape, is to work. */
export interface Target {
  readonly fluid: FluidState;
  /** rev/s */
  readonly rotationRate: number;
  /** m */
  readonly diameter: number;
}

/** What is not known of the variant and is needed; empty when it can be carried over. */
export function missingOf({ torqueCoefficient }: Subject): string {
  return torqueCoefficient === null || torqueCoefficient.value <= 0
    ? "The shaft power of this variant is not known, so its torque can not be carried over."
    : "";
}

/** The variant as it was measured, carried to the target. */
export function carried(subject: Subject, bench: FluidState, target: Target): CarryOver {
  return carryOver({
    measured: {
      fluid: bench,
      rotationRate: subject.topRate,
      diameter: subject.propeller.diameter,
      nozzle: subject.propeller.nozzle,
      thrustCoefficient: subject.thrustCoefficient,
      torqueCoefficient: subject.torqueCoefficient!,
      advanceRatio: 0,
    },
    target: { ...target, nozzle: subject.propeller.nozzle },
    ...bladeOf(subject.propeller),
  });
}

/** What the parts know of the blade: its shape, else pitch, chord and number of blades. */
export function bladeOf(propeller: Subject["propeller"]): Pick<CarryOverRequest, "blade" | "shape"> {
  const { bladeCount, chordAt07, pitchRatio, diameter, geometry } = propeller;
  if (geometry !== undefined) return { shape: { geometry, surface: SMOOTH } };
  if (bladeCount === undefined || chordAt07 === undefined || pitchRatio === undefined) return {};
  return {
    blade: { bladeCount, pitchRatio, chordRatio: chordAt07 / diameter, thicknessRatio: 0.1, roughness: 0 },
  };
}

/** What the finish costs is in the measured coefficients; that rough blades change less with the Reynolds number is told. */
const SMOOTH = { roughness: 0, liftFactor: 1, dragFactor: 1 };

/** One sentence: thrust and power in the target. */
export function carriedSentence({ name }: Subject, { thrust, shaftPower }: CarryOver, target: Target): string {
  return (
    `${capitalised(name)} at ${formatQuantity(target.rotationRate, RPM)} and ${formatQuantity(target.diameter, MILLIMETRE)} ` +
    `pushes ${formatUncertain(thrust, NEWTON)} there and takes ${formatUncertain(shaftPower, WATT)} at the shaft.`
  );
}

const CAUSES: Readonly<Record<CarryOverFactor["cause"], string>> = {
  density: "Density",
  rotationRate: "Rotation rate",
  diameter: "Diameter",
  reynolds: "Reynolds number",
  returnFlow: "Return flow in the tank",
  surface: "Nearness of the surface on the stand",
  nozzle: "Nozzle",
};

/** Every factor with its size and its doubt, 95 %. */
export function factorRows({ factors }: CarryOver) {
  return factors.map(({ cause, thrust, torque, thrustUncertainty, torqueUncertainty, reason }) => ({
    cause: CAUSES[cause],
    thrust: withDoubt(thrust, thrustUncertainty),
    torque: withDoubt(torque, torqueUncertainty),
    reason,
  }));
}

function withDoubt(factor: number, relative: number): string {
  return `× ${formatUncertain(uncertain(factor, relative * factor))}`;
}

import { type DescribedBlade, FinishFitRequest } from "../model/finishFit.ts";
import type { CoefficientFit, Reduction } from "../model/reduction.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../propeller/coefficients.ts";
import type { InFluid } from "../propeller/inFluid.ts";
import { InputProblem } from "../quantity/problem.ts";

export interface FinishedRun {
  readonly name: string;
  readonly reduction: Reduction;
}

const Question = FinishFitRequest.omit({ fluid: true });

/**
 * The question to `finishFit` that two bollard runs of one propeller ask, the rougher first: coefficients with their
 * doubts, the parts of these that both runs share by the keys of their causes, and the mean rotation rate; with the gain that somebody claims, if anybody does.
 *
 * Throws   InputProblem `compare.no-torque` for a run whose torque is not known.
 */
export function finishOfRuns(
  blade: DescribedBlade,
  [before, after]: readonly [FinishedRun, FinishedRun],
  claimedFactor?: number,
): InFluid<FinishFitRequest> {
  const rotationRate = (rotationRateOf(before.reduction) + rotationRateOf(after.reduction)) / 2;
  const finishes = [finishOf(before, after), finishOf(after, before)];
  const claim = claimedFactor === undefined ? {} : { claimedFactor };
  return { ...Question.parse({ blade, rotationRate, finishes, ...claim }), fluid: before.reduction.fluid };
}

function finishOf({ name, reduction }: FinishedRun, other: FinishedRun) {
  const [own, its] = [fitsOf(name, reduction), fitsOf(other.name, other.reduction)];
  const thrustCoefficient = measuredOf(own.thrust, its.thrust, 1);
  const torqueCoefficient = measuredOf(own.torque, its.torque, TORQUE_OVER_POWER_COEFFICIENT);
  return { name, measured: [{ thrustCoefficient, torqueCoefficient, correlation: correlationOf(own) }] };
}

function fitsOf(name: string, { thrustFit, powerFit }: Reduction) {
  if (powerFit !== null) return { thrust: thrustFit, torque: powerFit };
  throw new InputProblem({
    code: "compare.no-torque",
    where: name,
    found: "The torque of this run is not known",
    needed: "a torque column, or the constants of the motor",
    mend: "Without torque the drag of the blade sections can not be told",
  });
}

type Fits = ReturnType<typeof fitsOf>;

/** A coefficient in units of `scale`, with the causes that the other run has under the same key as common part. */
function measuredOf(own: CoefficientFit, other: CoefficientFit, scale: number) {
  const keys = new Set(other.components.map(({ key }) => key));
  const shared = own.components.filter(({ key }) => keys.has(key));
  const common = Math.hypot(...shared.map(({ standardUncertainty }) => standardUncertainty));
  const { value, standardUncertainty } = own.coefficient;
  return {
    value: scale * value,
    standardUncertainty: scale * standardUncertainty,
    commonUncertainty: scale * Math.min(common, standardUncertainty),
  };
}

/** Most that two coefficients are taken to go together: beyond, their small difference would be trusted too far. */
const GREATEST_CORRELATION = 0.9;

/** Of thrust and torque through causes that reach both, such as diameter and density. */
function correlationOf({ thrust, torque }: Fits): number {
  const ofTorque = new Map(torque.components.map(({ key, standardUncertainty }) => [key, standardUncertainty]));
  const together = thrust.components.reduce(
    (sum, { key, standardUncertainty }) => sum + standardUncertainty * (ofTorque.get(key) ?? 0),
    0,
  );
  const whole = thrust.coefficient.standardUncertainty * torque.coefficient.standardUncertainty;
  return whole > 0 ? Math.min(GREATEST_CORRELATION, together / whole) : 0;
}

function rotationRateOf({ plateaus }: Reduction): number {
  const rates = plateaus.filter(({ used }) => used).map(({ rotationRate }) => rotationRate.value);
  return rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
}

import {
  type IdentifiedConstants,
  MOTOR_CONSTANTS,
  type MotorIdentification,
  type MotorIdentificationRequest,
  type WetLoss,
} from "../model/motorIdentification.ts";
import { formatUncertain } from "../quantity/format.ts";
import { InputProblem, OutOfDomain } from "../quantity/problem.ts";
import { uncertain } from "../quantity/uncertain.ts";
import { warning } from "../quantity/warning.ts";
import { identificationDoubts, torqueDisagrees } from "./identifyDoubts.ts";
import { fitMotor, type MotorFit } from "./identifyFit.ts";
import { polePairsFrom } from "./identifyPolePairs.ts";
import { identificationSentence } from "./identifySentence.ts";
import { throttleMapOf } from "./identifyThrottle.ts";
import { planUnknowns, type UnknownName, type UnknownPlan } from "./identifyUnknowns.ts";

/** Distance from agreement, in standard uncertainties, that is told. */
const TOLD = 2.5;

/**
 * Constants of a motor from steady points: free running in air, free running flooded, and loaded, with or without a
 * torque cell. Every point gives those balances (`identifyEquations`) that its measurements close; all are met together
 * in the sense of least squares, with the errors that meters share.
 *
 * - Free running: the no-load current I_0 = a + b ω, and K_v once the resistance is known.
 * - Loaded with torque: K_t besides; `torqueConstantFromTorque` sets it against 1/K_v.
 * - Loaded without torque, full throttle: K_v and the resistance, and nothing of the losses.
 * - Flooded: the extra torque k ω^m over the dry losses.
 *
 * Assumes  steady points, current of the motor continuous, no saturation, one winding temperature.
 * Throws   InputProblem `motor.*` where the points can not give a speed constant; OutOfDomain for a stated speed
 *          constant of zero. What else they can not give is null in the result, with a warning that says what is needed.
 */
export function identifyMotor(request: MotorIdentificationRequest): MotorIdentification {
  const polePairs = request.polePairReadings.length > 0 ? polePairsFrom(request.polePairReadings) : null;
  if (request.points.length === 0 && polePairs)
    return { ...NOTHING, polePairs, sentence: polePairsSentence(polePairs) };
  const { plan, fit } = physical(request, planUnknowns(request));
  const constants = constantsOf(fit, request, plan);
  const wetLoss = plan.wet ? wetLossOf(fit, plan) : null;
  const check = torqueCheck(request, plan);
  const throttleMap = throttleMapOf({ ...constants, ...request });
  const found = {
    constants,
    torqueConstantFromTorque: check?.torqueConstant ?? null,
    wetLoss,
    flooded: plan.wet ? flooded(request) : null,
    polePairs,
    throttleMap,
    residuals: [...fit.residuals],
    degreesOfFreedom: fit.degreesOfFreedom,
    chiSquared: fit.chiSquared,
    scatterRatio: fit.scatterRatio,
    converged: fit.converged,
  };
  const warnings = [...plan.warnings, ...(check?.warnings ?? []), ...identificationDoubts(fit, constants, wetLoss)];
  return { ...found, sentence: identificationSentence(found, request.points), warnings };
}

const NOTHING: Omit<MotorIdentification, "polePairs" | "sentence"> = {
  constants: null,
  torqueConstantFromTorque: null,
  wetLoss: null,
  flooded: null,
  throttleMap: null,
  residuals: [],
  degreesOfFreedom: 0,
  chiSquared: 0,
  scatterRatio: 1,
  converged: true,
  warnings: [],
};

function polePairsSentence({ polePairs, ratio }: NonNullable<MotorIdentification["polePairs"]>): string {
  return `${polePairs} pole pairs: the ratio is ${formatUncertain(ratio)}.`;
}

/** A growth of the loss that is negative within its doubt is none: it is taken as 0, and said. */
function physical(request: MotorIdentificationRequest, plan: UnknownPlan): { plan: UnknownPlan; fit: MotorFit } {
  const fit = fitMotor(request, plan);
  const at = fit.free.indexOf("noLoadCurrentSlope");
  const b = fit.unknowns.noLoadCurrentSlope;
  if (at < 0 || b >= 0 || b < -2 * Math.sqrt(fit.covariance[at]![at]!)) return { plan, fit };
  const flat: UnknownPlan = {
    ...plan,
    free: plan.free.filter((name) => name !== "noLoadCurrentSlope"),
    beliefs: plan.beliefs.filter(({ of }) => of !== "noLoadCurrentSlope"),
    start: { ...plan.start, ...fit.unknowns, noLoadCurrentSlope: 0 },
    warnings: [
      ...plan.warnings,
      warning({
        code: "motor.growth-not-seen",
        where: "no-load current",
        found:
          "The growth of the no-load current with speed is not to be told from 0 in these points and was taken as 0",
        needed: "",
        mend: "Points at a wider range of speeds would show it",
      }),
    ],
  };
  return { plan: flat, fit: fitMotor(request, flat) };
}

function constantsOf(
  fit: MotorFit,
  { controllerResistance }: MotorIdentificationRequest,
  { friction }: UnknownPlan,
): IdentifiedConstants {
  const { torqueConstant, pathResistance, noLoadCurrent, noLoadCurrentSlope } = fit.unknowns;
  const covariance = constantsCovariance(fit);
  const of = (value: number, at: number) =>
    uncertain(value, Math.sqrt(covariance[at]![at]!), fit.coverageDegreesOfFreedom);
  const speedConstant = of(1 / torqueConstant, 0);
  return {
    speedConstant,
    torqueConstant: uncertain(
      torqueConstant,
      speedConstant.standardUncertainty * torqueConstant ** 2,
      fit.coverageDegreesOfFreedom,
    ),
    resistance: of(pathResistance - controllerResistance, 1),
    pathResistance: of(pathResistance, 1),
    noLoadCurrent: friction ? of(noLoadCurrent, 2) : null,
    noLoadCurrentSlope: friction ? of(noLoadCurrentSlope, 3) : null,
    covariance,
  };
}

/** Of K_v, R, a, b: zeros where a constant was taken as exact. */
function constantsCovariance({ free, covariance, unknowns }: MotorFit): number[][] {
  const names: readonly UnknownName[] = ["torqueConstant", "pathResistance", "noLoadCurrent", "noLoadCurrentSlope"];
  const turned = [-1 / unknowns.torqueConstant ** 2, 1, 1, 1];
  const at = (i: number) => free.indexOf(names[i]!);
  return MOTOR_CONSTANTS.map((_, i) =>
    MOTOR_CONSTANTS.map((__, j) => (at(i) < 0 || at(j) < 0 ? 0 : covariance[at(i)]![at(j)]! * turned[i]! * turned[j]!)),
  );
}

/** Q_wet = k ω^m; fitted as torque at a speed in the middle, where it does not hang on the exponent. */
function wetLossOf(fit: MotorFit, { referenceSpeed }: UnknownPlan): WetLoss {
  const { wetTorque, wetExponent: m } = fit.unknowns;
  const [q, e] = [fit.free.indexOf("wetTorque"), fit.free.indexOf("wetExponent")];
  const of = (value: number, variance: number) =>
    uncertain(value, Math.sqrt(Math.max(0, variance)), fit.coverageDegreesOfFreedom);
  const [vq, ve, c] = [fit.covariance[q]![q]!, fit.covariance[e]![e]!, fit.covariance[q]![e]!];
  // k = Q_r ω_r^(−m): d k / k = d Q_r / Q_r − ln ω_r dm.
  const k = wetTorque * referenceSpeed ** -m;
  const log = Math.log(referenceSpeed);
  return {
    coefficient: of(k, k * k * (vq / wetTorque ** 2 + log * log * ve - (2 * log * c) / wetTorque)),
    exponent: of(m, ve),
    rotationRate: referenceSpeed / (2 * Math.PI),
    torque: of(wetTorque, vq),
    power: of(wetTorque * referenceSpeed, vq * referenceSpeed ** 2),
  };
}

/** The motor as it is under water: its losses are those of the wet points; dry ones serve K_v and R alone. */
function flooded(request: MotorIdentificationRequest): IdentifiedConstants | null {
  const { noLoadCurrent: _a, noLoadCurrentSlope: _b, ...stated } = request.stated;
  const points = request.points.map((point) => ({
    ...point,
    load: point.load === "noLoadWet" ? ("noLoadDry" as const) : ("loaded" as const),
    torque: null,
  }));
  const wet = { ...request, stated, points };
  try {
    const { plan, fit } = physical(wet, planUnknowns(wet));
    return constantsOf(fit, wet, plan);
  } catch (thrown) {
    if (thrown instanceof InputProblem || thrown instanceof OutOfDomain) return null;
    throw thrown;
  }
}

/** K_t by torque against current alone, set against 1/K_v from voltage and speed: in SI they are one constant. */
function torqueCheck(request: MotorIdentificationRequest, plan: UnknownPlan) {
  const withTorque = request.points.filter(({ load, torque }) => load === "loaded" && torque !== null);
  if (withTorque.length < 3 || !plan.friction) return null;
  let fit: MotorFit;
  try {
    fit = fitMotor(request, { ...plan, free: [...plan.free, "torqueConstantOfLoad"] });
  } catch (thrown) {
    if (thrown instanceof InputProblem) return null;
    throw thrown;
  }
  const [a, b] = [fit.free.indexOf("torqueConstant"), fit.free.indexOf("torqueConstantOfLoad")];
  const { torqueConstant: Kt, torqueConstantOfLoad: byTorque } = fit.unknowns;
  const variance = (i: number, j: number) => (i < 0 ? 0 : fit.covariance[i]![j]!);
  const torqueConstant = uncertain(byTorque, Math.sqrt(variance(b, b)), fit.coverageDegreesOfFreedom);
  const apart = Math.sqrt(Math.max(0, variance(a, a) + variance(b, b) - 2 * variance(a, b)));
  if (Math.abs(byTorque - Kt) <= TOLD * apart) return { torqueConstant, warnings: [] };
  return { torqueConstant, warnings: [torqueDisagrees(byTorque / Kt)] };
}

import type { AdvanceCurve, AdvanceFit, AdvancePoint } from "../../model/advance.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../../propeller/coefficients.ts";
import { openWaterEfficiency } from "../../propeller/openWaterEfficiency.ts";
import { scaled, type Uncertain } from "../../quantity/uncertain.ts";
import { type Contribution, withContributions } from "../contributions.ts";
import type { FullFit } from "../fullFit.ts";
import type { JudgedPlateau } from "../judgedPlateau.ts";
import { type FitSetting, powerFullFit, thrustFullFit } from "../runFits.ts";
import type { Advance } from "./advanceSpeed.ts";
import { type CurveFit, curveFit, differentRatios } from "./curveFit.ts";
import { advanceRatioParts, singlePoint } from "./singlePoint.ts";
import { peakOf, zeroThrustOf } from "./turningPoints.ts";

/** A plateau whose speed through the water is known. */
export type MovingPlateau = JudgedPlateau & { readonly advance: Advance };

/** The coefficients of a run as functions of the advance ratio J, with the whole of their doubt. */
export interface AdvanceCurves {
  readonly thrust: CurveFit;
  readonly power: CurveFit | null;
  readonly thrustAt: (advanceRatio: number) => FullFit;
  readonly powerAt: ((advanceRatio: number) => FullFit) | null;
  /** Least and greatest J of the points. */
  readonly range: readonly [number, number];
}

/** Fewest different advance ratios, and least spread of them, that make a curve. */
const FEWEST = 3;
const LEAST_SPREAD = 0.05;
/** Steps in which the curves are told. */
const STEPS = 40;

/** Whether plateaus are enough, and far enough apart, for curves against the advance ratio. */
export function makeCurves(plateaus: readonly MovingPlateau[]): boolean {
  const ratios = plateaus.map(({ advance }) => advance.ratio);
  return differentRatios(ratios) >= FEWEST && Math.max(...ratios) - Math.min(...ratios) >= LEAST_SPREAD;
}

/** K_T(J) and, where the shaft power of enough plateaus is known, C_P(J). Throws as `curveFit`. */
export function advanceCurves(plateaus: readonly MovingPlateau[], run: FitSetting): AdvanceCurves {
  const { singleReadings, recipe } = run;
  const known = plateaus.filter(({ powerPoint }) => powerPoint !== null);
  const curve = (of: readonly MovingPlateau[], key: "thrustPoint" | "powerPoint") =>
    curveFit(
      of.map(({ advance, [key]: point }) => ({
        ...{ advanceRatio: advance.ratio, advanceRatioUncertainty: advance.ratioUncertainty },
        point: point!,
      })),
      singleReadings,
      recipe.advanceOrder,
    );
  const thrust = curve(plateaus, "thrustPoint");
  const power = makeCurves(known) ? curve(known, "powerPoint") : null;
  const ratios = plateaus.map(({ advance }) => advance.ratio);
  return {
    thrust,
    power,
    thrustAt: (J) => thrustFullFit(plateaus, { fit: thrust.at(J), advancePulls: thrust.advancePulls(J) }, run),
    powerAt: power && ((J) => powerFullFit(known, { fit: power.at(J), advancePulls: power.advancePulls(J) }, run)),
    range: [Math.min(...ratios), Math.max(...ratios)],
  };
}

/** The document of the curves. `shown`: also plateaus that have a speed and do not count. */
export function advanceFitOf(
  curves: AdvanceCurves,
  fitted: readonly MovingPlateau[],
  shown: readonly MovingPlateau[],
  run: FitSetting,
): AdvanceFit {
  const { thrust, power, range } = curves;
  const ratioParts = (J: number) => advanceRatioParts(J, run);
  const hasRest = fitted.some(({ advance }) => advance.isAtRest);
  return {
    speedFrom: run.channels.advanceSpeed ? "column" : "recipe",
    points: shown.map((plateau) => pointDocument(plateau, fitted.indexOf(plateau), curves, run)),
    range: [...range],
    thrustCurve: curveDocument(thrust),
    powerCurve: power && curveDocument(power),
    samples: samplesOf(curves, hasRest),
    bollard: hasRest ? "plateaus" : "extrapolated",
    zeroThrust: zeroThrustOf(curves),
    peak: peakOf(curves, ratioParts),
  };
}

function curveDocument({ points, polynomial, orderFrom, criteria, scatterRatio }: CurveFit): AdvanceCurve {
  const { order, coefficients, covariance, chiSquared, degreesOfFreedom, converged } = polynomial;
  return {
    ...{ order, orderFrom, criteria, chiSquared, degreesOfFreedom, scatterRatio, converged },
    coefficients: [...coefficients],
    covariance: covariance.map((row) => row.map((value) => value * scatterRatio ** 2)),
    points: points.length,
  };
}

/** From rest, or from the least J below it, to the greatest J, in equal steps. */
function samplesOf(curves: AdvanceCurves, hasRest: boolean): AdvanceFit["samples"] {
  const [low, high] = curves.range;
  const from = Math.min(0, low);
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const J = from + (step / STEPS) * (high - from);
    const K_T = curves.thrustAt(J);
    const C_P = curves.powerAt?.(J) ?? null;
    const power = C_P?.document.coefficient ?? null;
    return {
      advanceRatio: J,
      isExtrapolated: !hasRest && J < low,
      thrustCoefficient: K_T.document.coefficient,
      powerCoefficient: power,
      torqueCoefficient: power && torqueOf(power),
      efficiency: C_P && efficiencyOf(J, K_T, C_P),
    };
  });
}

const torqueOf = (C_P: Uncertain) => scaled(C_P, TORQUE_OVER_POWER_COEFFICIENT);

/**
 * η_O at J with the doubt of both coefficients, 1; null where the shaft takes no power. `ofRatio`: doubt of J itself.
 *
 *   η_O = J K_T/C_P;   ∂η/∂K_T = J/C_P,   ∂η/∂C_P = −J K_T/C_P²,   ∂η/∂J = K_T/C_P
 *
 * Source   ITTC Symbols and Terminology List (2021); JCGM 100:2008, 5.1 and 5.2, from memory.
 */
export function efficiencyOf(
  J: number,
  thrust: FullFit,
  power: FullFit,
  ofRatio: Contribution[] = [],
): Uncertain | null {
  const [K_T, C_P] = [thrust.fit.coefficient, power.fit.coefficient];
  if (!(C_P > 0)) return null;
  const value = openWaterEfficiency({
    ...{ advanceRatio: J, thrustCoefficient: K_T },
    torqueCoefficient: C_P * TORQUE_OVER_POWER_COEFFICIENT,
  });
  return withContributions(value, [
    contribution(thrust, J / C_P),
    contribution(power, -(J * K_T) / C_P ** 2),
    ...ofRatio.map((one) => ({ ...one, weight: (one.weight * K_T) / C_P })),
  ]);
}

const contribution = ({ fit, parts }: FullFit, weight: number): Contribution => ({
  ...{ weight, parts },
  ...{ independent: fit.independent, degreesOfFreedom: fit.degreesOfFreedom },
});

function pointDocument(
  plateau: MovingPlateau,
  index: number,
  { thrust }: AdvanceCurves,
  run: FitSetting,
): AdvancePoint {
  const { speed, thrust: K_T, power: C_P, ratio } = singlePoint(plateau, run);
  const { advance } = plateau;
  const power = C_P?.document.coefficient ?? null;
  return {
    plateau: plateau.number,
    speed,
    advanceRatio: withContributions(advance.ratio, [ratio]),
    thrustCoefficient: K_T.document.coefficient,
    powerCoefficient: power,
    torqueCoefficient: power && torqueOf(power),
    efficiency: C_P && efficiencyOf(advance.ratio, K_T, C_P, [ratio]),
    isAtRest: advance.isAtRest,
    isFitted: index >= 0,
    residual: index < 0 ? null : thrust.polynomial.residuals[index]!,
  };
}

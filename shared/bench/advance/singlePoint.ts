import type { Uncertain } from "../../quantity/uncertain.ts";
import { type FitPoint, type OriginFit, weighingUncertainty } from "../coefficientFit.ts";
import { type CommonPart, calibrationPart, diameterPart } from "../commonParts.ts";
import { type Contribution, withContributions } from "../contributions.ts";
import type { FullFit } from "../fullFit.ts";
import { type FitSetting, powerFullFit, speedPart, thrustFullFit } from "../runFits.ts";
import type { MovingPlateau } from "./advanceFit.ts";

/** One plateau by itself, with the whole of its doubt. */
export interface SinglePoint {
  readonly speed: Uncertain;
  readonly thrust: FullFit;
  readonly power: FullFit | null;
  /** Doubt of the advance ratio. */
  readonly ratio: Contribution;
}

/** A plateau as a fit of one point: its coefficients are y/x, its doubts those of the plateau and of what all share. */
export function singlePoint(plateau: MovingPlateau, run: FitSetting): SinglePoint {
  const { thrustPoint, powerPoint, advance } = plateau;
  const { speed, ratio: J, ratioUncertainty } = advance;
  const independent = Math.hypot(speed.scatter, speed.rounding);
  const own = { weight: 1, degreesOfFreedom: speed.degreesOfFreedom };
  return {
    speed: withContributions(speed.mean, [{ ...own, independent, parts: speedPart(run, speed.mean) }]),
    thrust: thrustFullFit([plateau], { fit: alone(thrustPoint) }, run),
    power: powerPoint && powerFullFit([plateau], { fit: alone(powerPoint) }, run),
    ratio: { ...own, independent: ratioUncertainty, parts: advanceRatioParts(J, run) },
  };
}

/** What all plateaus share in the advance ratio J = V/(n D). */
export function advanceRatioParts(J: number, run: FitSetting): CommonPart[] {
  return [
    ...speedPart(run, J),
    ...calibrationPart(run.channels.rotationRate, "rotation rate", 1, -J),
    ...diameterPart(run.propeller, 1, -J),
  ];
}

/** y/x of one point. Its tare is its own here as little as in a fit, so that it is left to what is shared. */
function alone(point: FitPoint): OriginFit {
  const { x, y, tareUncertainty } = point;
  const own = Math.sqrt(Math.max(0, weighingUncertainty(point) ** 2 - tareUncertainty ** 2));
  return {
    coefficient: y / x,
    influences: [1 / x],
    independent: Math.hypot(own, (y / x) * point.roundingX) / x,
    degreesOfFreedom: point.scatterDegreesOfFreedom,
    ...{ chiSquared: 0, scatterRatio: 1, residuals: [0], converged: true },
  };
}

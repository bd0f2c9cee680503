import type { ReverseFit } from "../../model/reduction.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../../propeller/coefficients.ts";
import { scaled } from "../../quantity/uncertain.ts";
import type { FitPoint } from "../coefficientFit.ts";
import { withContributions } from "../contributions.ts";
import { type FullFit, meritOf } from "../fullFit.ts";
import type { JudgedPlateau } from "../judgedPlateau.ts";
import { withSpread } from "../plateauSpread.ts";
import { type FitSetting, powerFitOf, thrustFitOf } from "../runFits.ts";
import type { Turning } from "./turning.ts";

/**
 * Coefficients of plateaus that turn the other way. Their thrust counts as positive where it points against that of the
 * main direction; power that a log without the sign of the rotation rate makes negative is taken by its size.
 */
export function reverseFitOf(
  plateaus: readonly JudgedPlateau[],
  ahead: FullFit,
  foundBy: NonNullable<Turning["foundBy"]>,
  run: FitSetting,
): ReverseFit {
  const sign = Math.sign(ahead.fit.coefficient) || 1;
  const signed = plateaus.map((plateau) => ({
    ...plateau,
    thrustPoint: times(plateau.thrustPoint, -sign),
    powerPoint: plateau.powerPoint && positive(plateau.powerPoint),
  }));
  const turned = withSpread(signed, run.singleReadings);
  const thrust = thrustFitOf(turned, run);
  const power = powerFitOf(turned, run);
  const [K, K_ahead] = [thrust.fit.coefficient, ahead.fit.coefficient * sign];
  const C_P = power?.document.coefficient ?? null;
  return {
    foundBy,
    plateaus: plateaus.map(({ number }) => number),
    thrustCoefficient: thrust.document.coefficient,
    powerCoefficient: C_P,
    torqueCoefficient: C_P && scaled(C_P, TORQUE_OVER_POWER_COEFFICIENT),
    staticMerit: power && meritOf(thrust, power),
    toForward: withContributions(K / K_ahead, [
      { weight: 1 / K_ahead, ...own(thrust), parts: thrust.parts },
      { weight: (-K / K_ahead ** 2) * sign, ...own(ahead), parts: ahead.parts },
    ]),
    thrustFit: thrust.document,
    powerFit: power?.document ?? null,
  };
}

const own = ({ fit }: FullFit) => ({ independent: fit.independent, degreesOfFreedom: fit.degreesOfFreedom });

const positive = (point: FitPoint): FitPoint => (point.y < 0 ? times(point, -1) : point);

const times = (point: FitPoint, sign: number): FitPoint => ({
  ...point,
  y: sign * point.y,
  perTare: sign * point.perTare,
});

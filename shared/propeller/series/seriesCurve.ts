import type { SeriesCurve, SeriesCurveRequest } from "../../model/seriesPropeller.ts";
import { goldenMaximum } from "../../numeric/goldenSection.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../coefficients.ts";
import { staticMerit } from "../staticMerit.ts";
import { artefact, pointAt, polynomialsAt } from "./openWaterOfSeries.ts";
import type { SeriesPolynomials } from "./seriesPlanes.ts";
import { seriesWarnings } from "./seriesRange.ts";
import { zeroThrustRatio } from "./zeroThrust.ts";

/**
 * The open-water curve of a series propeller in equal steps of J from bollard to zero thrust, its best efficiency and
 * its static merit.
 *
 * Source, range and error as `openWaterOfSeries`.
 * Throws   OutOfDomain outside the range unless asked for, and `propeller.series-no-thrust` where the polynomials there
 *          give no curve that begins with thrust and torque and ends with none.
 */
export function seriesCurve({ points, ...state }: SeriesCurveRequest): SeriesCurve {
  const warnings = seriesWarnings(state);
  const polynomials = polynomialsAt(state);
  const zeroThrust = requireCurve(polynomials);
  const curve = Array.from({ length: points }, (_, i) => pointAt(polynomials, (zeroThrust * i) / (points - 1)));
  const { thrustCoefficient, torqueCoefficient } = curve[0]!;
  return {
    points: curve,
    zeroThrust,
    peak: peakEfficiency(polynomials, zeroThrust),
    staticMerit: staticMerit({
      thrustCoefficient,
      powerCoefficient: torqueCoefficient / TORQUE_OVER_POWER_COEFFICIENT,
    }),
    warnings: [...warnings, ...curve.flatMap(artefact).slice(0, 1)],
  };
}

/** Advance ratio at which the thrust of the curve ends; throws OutOfDomain where it is no curve of a propeller. */
export function requireCurve(polynomials: SeriesPolynomials): number {
  const zeroThrust = zeroThrustRatio(polynomials.thrust);
  if (zeroThrust !== null && polynomials.torque[0]! > 0) return zeroThrust;
  throw new OutOfDomain({
    code: "propeller.series-no-thrust",
    where: "series",
    found:
      "So far outside its tests the series gives no propeller: its thrust or torque at bollard is not positive, or the thrust never ends",
    needed: "a propeller nearer to the tested range",
    mend: "Change pitch ratio, area ratio or number of blades",
  });
}

const SCAN = 50;

/** Best of the first hump of J K_T/(2π K_Q): steps to see it, golden section to place it. */
function peakEfficiency(polynomials: SeriesPolynomials, zeroThrust: number): SeriesCurve["peak"] {
  const efficiency = (J: number) => pointAt(polynomials, J).efficiency ?? 0;
  const step = zeroThrust / SCAN;
  let best = 1;
  while (best < SCAN - 1 && efficiency((best + 1) * step) >= efficiency(best * step)) best++;
  const { at, value } = goldenMaximum(efficiency, (best - 1) * step, (best + 1) * step);
  return { advanceRatio: at, efficiency: value };
}

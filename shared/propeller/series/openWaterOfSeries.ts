import type { OpenWaterPoint } from "../../model/seriesPropeller.ts";
import { finite } from "../../quantity/domain.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { discArea } from "../coefficients.ts";
import { idealEfficiency } from "../momentum.ts";
import { openWaterEfficiency } from "../openWaterEfficiency.ts";
import { coefficientAt } from "./pitchPlane.ts";
import { atReynolds } from "./reynoldsCorrection.ts";
import { type SeriesPolynomials, seriesPolynomials } from "./seriesPlanes.ts";
import { outsideSeries, refuseUnlessAsked, type SeriesState, seriesWarnings } from "./seriesRange.ts";
import { zeroThrustRatio } from "./zeroThrust.ts";

/**
 * Thrust and torque coefficient of a series propeller at one advance ratio, with what a reader must know of them.
 *
 *   K_T = Σ C J^s (P/D)^t (A_E/A_0)^u Z^v,   K_Q likewise,   η_O = J K_T/(2π K_Q)
 *
 * Source   B series: Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, tables 5 and 6; Ka
 *          screws in nozzle 19A: Oosterveld, Netherlands Ship Model Basin publication 345 (1970).
 * Range    B: 2 to 7 blades, A_E/A_0 0.30 to 1.05, P/D 0.5 to 1.4; Ka: P/D 0.6 to 1.4; J from 0 to where the thrust
 *          ends. The Reynolds number corrects the B series from 2e6 to 2e9; below it the numbers stay those of 2e6, and
 *          say so.
 * Error    the fit reproduces the tests to some 1 % of the bollard coefficient (common practice, no source).
 * Throws   OutOfDomain `propeller.series-range` outside the range, unless `outsideRange` asks for numbers there.
 *
 * @example openWaterOfSeries({ series: { family: "wageningen-b", blades: 4, areaRatio: 0.7, pitchRatio: 1 }, advanceRatio: 0.8 }).thrustCoefficient // 0.1297
 */
export function openWaterOfSeries({
  advanceRatio,
  ...state
}: SeriesState & { readonly advanceRatio: number }): OpenWaterPoint & { readonly warnings: readonly Warning[] } {
  const J = finite(advanceRatio, "advance ratio", "");
  const warnings = seriesWarnings(state);
  const polynomials = polynomialsAt(state);
  const zeroThrust = zeroThrustRatio(polynomials.thrust);
  const outside = J >= 0 && (zeroThrust === null || J <= zeroThrust) ? [] : [advanceOutside(J, zeroThrust)];
  refuseUnlessAsked(outside, state.outsideRange ?? false);
  const point = pointAt(polynomials, J);
  return { ...point, warnings: [...warnings, ...outside.map(warning), ...artefact(point)] };
}

/** The polynomials of a series propeller at its Reynolds number. Range as `openWaterOfSeries`, not checked here. */
export function polynomialsAt({ series, reynolds }: Pick<SeriesState, "series" | "reynolds">): SeriesPolynomials {
  const polynomials = seriesPolynomials(series);
  if (reynolds === undefined || series.family !== "wageningen-b") return polynomials;
  return atReynolds(polynomials, series, reynolds);
}

/** All coefficients at advance ratio `J`. */
export function pointAt({ thrust, torque, nozzleThrust }: SeriesPolynomials, J: number): OpenWaterPoint {
  const thrustCoefficient = coefficientAt(thrust, J);
  const torqueCoefficient = coefficientAt(torque, J);
  const nozzleThrustCoefficient = nozzleThrust === null ? 0 : coefficientAt(nozzleThrust, J);
  const propellerThrustCoefficient = thrustCoefficient - nozzleThrustCoefficient;
  const atJ = { advanceRatio: J, thrustCoefficient, torqueCoefficient };
  return {
    ...atJ,
    efficiency: torqueCoefficient > 0 ? openWaterEfficiency(atJ) : null,
    idealEfficiency: idealOf(propellerThrustCoefficient, J),
    ...(nozzleThrust === null ? {} : { nozzleThrustCoefficient, propellerThrustCoefficient }),
  };
}

/** Ideal efficiency of a disc that carries `K_T` at `J`, in units of ρ, n and D. */
function idealOf(K_T: number, J: number): number | null {
  if (!(K_T > 0) || J < 0) return null;
  return idealEfficiency({ thrust: K_T, discArea: discArea(1), density: 1, advanceSpeed: J });
}

/** A polynomial outside its data can push without torque, or better than any propeller. */
export function artefact({ advanceRatio, thrustCoefficient, efficiency, idealEfficiency }: OpenWaterPoint): Warning[] {
  if (thrustCoefficient <= 0 || (efficiency !== null && efficiency <= (idealEfficiency ?? 1))) return [];
  return [
    warning({
      code: "propeller.series-artefact",
      where: "series",
      found: `At an advance ratio of ${formatNumber(advanceRatio)} the polynomials give more thrust than momentum theory allows for the power`,
      needed: "an efficiency below the ideal one",
      mend: "Do not use this point; no propeller can do that",
    }),
  ];
}

function advanceOutside(J: number, zeroThrust: number | null) {
  const found = `An advance ratio of ${formatNumber(J)} lies outside the tests of the series`;
  return outsideSeries(
    "advanceRatio",
    found,
    zeroThrust === null ? "0 or more" : `0 to ${formatNumber(zeroThrust, 4)}`,
  );
}

import type { WageningenB } from "../../model/seriesPropeller.ts";
import { type CorrectionTerm, THRUST_CORRECTION, TORQUE_CORRECTION } from "./reynoldsCorrection.data.ts";
import type { SeriesPolynomials } from "./seriesPlanes.ts";

/** Reynolds number of the polynomials of the B series; below it nothing is known of them. */
export const SERIES_REYNOLDS = 2e6;

/** Largest Reynolds number the correction was made for. */
export const GREATEST_REYNOLDS = 2e9;

/**
 * Polynomials of a B screw at a Reynolds number above that of the series.
 *
 *   K_T(Re) = K_T(2e6) + ΔK_T,   K_Q(Re) = K_Q(2e6) + ΔK_Q
 *
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, table 6.
 * Range    2e6 to 2e9, at 0.75 of the radius; at 2e6 and below the polynomials are returned as they are, never
 *          extrapolated. The published ΔK_T keeps 0.00035 at bollard that does not depend on the Reynolds number.
 */
export function atReynolds(polynomials: SeriesPolynomials, series: WageningenB, reynolds: number): SeriesPolynomials {
  if (reynolds <= SERIES_REYNOLDS) return polynomials;
  const thrust = polynomials.thrust.slice();
  const torque = polynomials.torque.slice();
  addCorrection(thrust, THRUST_CORRECTION, series, reynolds);
  addCorrection(torque, TORQUE_CORRECTION, series, reynolds);
  return { ...polynomials, thrust, torque };
}

function addCorrection(
  polynomial: Float64Array,
  terms: readonly CorrectionTerm[],
  { blades: Z, areaRatio, pitchRatio }: WageningenB,
  reynolds: number,
): void {
  const L = Math.log10(reynolds) - 0.301;
  for (const [C, l, z, a, p, j] of terms) {
    polynomial[j]! += C * L ** l * Z ** z * areaRatio ** a * pitchRatio ** p;
  }
}

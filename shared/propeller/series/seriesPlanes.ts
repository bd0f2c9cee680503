import type { NozzleScrew, SeriesPropeller, WageningenB } from "../../model/seriesPropeller.ts";
import { KA_4_70_IN_19A, KA_5_75_IN_19A, type NozzleSeriesTable } from "./nozzleSeries.data.ts";
import { type AdvancePolynomial, alongAdvance, type PitchPlane, planeOf } from "./pitchPlane.ts";
import { type SeriesTerm, WAGENINGEN_B_THRUST, WAGENINGEN_B_TORQUE } from "./wageningenB.data.ts";

/** A series once everything but the pitch is chosen: thrust, torque and nozzle thrust as planes of P/D and J. */
export interface SeriesPlanes {
  readonly thrust: PitchPlane;
  readonly torque: PitchPlane;
  /** Of the nozzle alone; null for an open propeller. */
  readonly nozzleThrust: PitchPlane | null;
}

/** A series propeller: thrust, torque and nozzle thrust as polynomials of J. */
export interface SeriesPolynomials {
  readonly thrust: AdvancePolynomial;
  readonly torque: AdvancePolynomial;
  readonly nozzleThrust: AdvancePolynomial | null;
}

/**
 * Planes of a series: Ka screws are published so; the B series becomes one when blades and area ratio are put in.
 *
 *   K = Σ C J^s (P/D)^t (A_E/A_0)^u Z^v
 *
 * Source   see `wageningenB.data.ts` and `nozzleSeries.data.ts`.
 * Range    not checked here: `seriesRange.ts`.
 */
export function seriesPlanes(series: SeriesPropeller): SeriesPlanes {
  if (series.family !== "wageningen-b") return NOZZLE_SERIES[series.family];
  return {
    thrust: wageningenBPlane(WAGENINGEN_B_THRUST, series),
    torque: wageningenBPlane(WAGENINGEN_B_TORQUE, series),
    nozzleThrust: null,
  };
}

/** The polynomials in J of one propeller of a series. */
export function seriesPolynomials(series: SeriesPropeller): SeriesPolynomials {
  const { thrust, torque, nozzleThrust } = seriesPlanes(series);
  return {
    thrust: alongAdvance(thrust, series.pitchRatio),
    torque: alongAdvance(torque, series.pitchRatio),
    nozzleThrust: nozzleThrust && alongAdvance(nozzleThrust, series.pitchRatio),
  };
}

function wageningenBPlane(terms: readonly SeriesTerm[], { areaRatio, blades }: WageningenB): PitchPlane {
  return planeOf(terms.map(([C, s, t, u, v]) => [C * areaRatio ** u * blades ** v, t, s] as const));
}

const NOZZLE_SERIES = {
  "ka-4-70-19a": nozzlePlanes(KA_4_70_IN_19A),
  "ka-5-75-19a": nozzlePlanes(KA_5_75_IN_19A),
} as const satisfies Record<NozzleScrew["family"], SeriesPlanes>;

function nozzlePlanes({ thrust, torque, nozzleThrust }: NozzleSeriesTable): SeriesPlanes {
  return { thrust: planeOf(thrust), torque: planeOf(torque), nozzleThrust: planeOf(nozzleThrust) };
}

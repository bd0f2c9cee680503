import type { SeriesWithoutPitch } from "../../model/seriesPropeller.ts";
import { type BladeFlow, bladeReynolds } from "../coefficients.ts";

/**
 * Reynolds number of a B screw as its series counts it, at 0.75 of the radius.
 *
 *   Re = c sqrt(V_A² + (0.75 π n D)²) / ν,   c = 2.073 (A_E/A_0) D/Z
 *
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251; the chord also in Holtrop & Mennen,
 *          International Shipbuilding Progress 29 (1982) 166.
 * Returns  null for screws in a nozzle, whose chords are not at hand.
 * Throws   OutOfDomain as `bladeReynolds`.
 */
export function seriesReynolds(series: SeriesWithoutPitch, flow: Omit<BladeFlow, "chord" | "radius">): number | null {
  if (series.family !== "wageningen-b") return null;
  return bladeReynolds({ ...flow, radius: 0.75, chord: chordAt075(series) * flow.diameter });
}

/** Chord of a B screw at 0.75 of the radius over the diameter: c/D = 2.073 (A_E/A_0)/Z. Source as `seriesReynolds`. */
export function chordAt075({ areaRatio, blades }: { readonly areaRatio: number; readonly blades: number }): number {
  return (2.073 * areaRatio) / blades;
}

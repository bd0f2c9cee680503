import type { SeriesWithoutPitch } from "../../model/seriesPropeller.ts";
import { type BladeFlow, bladeReynolds } from "../coefficients.ts";
import { screwOf } from "./screwOf.ts";
import { HUB_RATIO } from "./seriesGeometry.data.ts";

/**
 * Reynolds number of a series propeller as the series counts it, at 0.75 of the radius.
 *
 *   Re = c sqrt(V_A² + (0.75 π n D)²) / ν,   c = 2.073 (A_E/A_0) D/Z
 *
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251; the chord also in Holtrop &
 *          Mennen, International Shipbuilding Progress 29 (1982) 166.
 * Assumes  for screws in a nozzle, whose chords are not at hand, the mean chord that follows from their area.
 * Error    in a nozzle some 15 %: their blades widen to the tip.
 * Throws   OutOfDomain as `bladeReynolds`.
 */
export function seriesReynolds(series: SeriesWithoutPitch, flow: Omit<BladeFlow, "chord" | "radius">): number {
  return bladeReynolds({ ...flow, radius: 0.75, chord: chordRatio(series) * flow.diameter });
}

function chordRatio(series: SeriesWithoutPitch): number {
  const { blades, areaRatio } = screwOf(series);
  if (series.family === "wageningen-b") return (2.073 * areaRatio) / blades;
  // A_E = Z c (D - d)/2 with A_0 = π D²/4.
  return (areaRatio * Math.PI) / (2 * blades * (1 - HUB_RATIO.fourAndMore));
}

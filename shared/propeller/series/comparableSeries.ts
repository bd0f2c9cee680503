import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { WageningenB } from "../../model/seriesPropeller.ts";
import { monotoneCubic } from "../../numeric/monotoneCubic.ts";
import { bladeShape } from "../blade/bladeShape.ts";
import { discArea } from "../coefficients.ts";

/**
 * The B screw of equal blade count, pitch ratio at 0.7 of the radius and expanded area ratio; null where the series has no
 * such number of blades.
 *
 *   P/D = 0.7 π tan φ_0.7,   A_E/A_0 = Z ∫ c dr / (π D²/4)
 *
 * Source   definitions, ITTC Symbols and Terminology List (2021). The result may lie outside the tests of the series.
 */
export function comparableSeries(geometry: BladeGeometry): WageningenB | null {
  const { bladeCount, diameter, stations } = geometry;
  if (bladeCount < 2 || bladeCount > 7) return null;
  const pitchAngle = monotoneCubic(
    stations.map(({ radius }) => radius),
    stations.map((station) => station.pitchAngle),
  )(0.35 * diameter);
  const bladeArea = bladeShape(geometry).pieces.reduce((sum, { chord, width }) => sum + chord * width, 0);
  return {
    family: "wageningen-b",
    blades: bladeCount,
    areaRatio: (bladeCount * bladeArea) / discArea(diameter),
    pitchRatio: 0.7 * Math.PI * Math.tan(pitchAngle),
  };
}

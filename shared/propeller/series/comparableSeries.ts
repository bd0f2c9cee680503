import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { WageningenB } from "../../model/seriesPropeller.ts";
import { bladeShape, sectionsOf } from "../blade/bladeShape.ts";
import { seriesGeometry } from "./seriesGeometry.ts";

/** Any area ratio: the blades of the series grow straight with it. */
const TRIAL = 0.5;

/**
 * The B screw of equal blade count, pitch ratio at 0.7 of the radius and blade area; null where the series has no such
 * number of blades.
 *
 *   P/D = 0.7 π tan φ_0.7,   A_E/A_0 from Z ∫ c dr of both
 *
 * The area is compared with that of the printed outline, which is 1 to 2 % below its nominal one.
 *
 * Source   definitions, ITTC Symbols and Terminology List (2021). The result may lie outside the tests of the series.
 */
export function comparableSeries(geometry: BladeGeometry): WageningenB | null {
  const { bladeCount: blades, diameter, stations } = geometry;
  if (blades < 2 || blades > 7) return null;
  const { pitchAngle } = sectionsOf(stations)(0.35 * diameter);
  const pitchRatio = 0.7 * Math.PI * Math.tan(pitchAngle);
  const series = { family: "wageningen-b", blades, areaRatio: TRIAL, pitchRatio } as const;
  const trial = seriesGeometry({ series, diameter, outsideRange: true });
  return { ...series, areaRatio: (TRIAL * bladeArea(geometry)) / bladeArea(trial) };
}

const bladeArea = (geometry: BladeGeometry) =>
  bladeShape(geometry).pieces.reduce((sum, { chord, width }) => sum + chord * width, 0);

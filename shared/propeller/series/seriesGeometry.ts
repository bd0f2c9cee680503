import type { BladeGeometry, BladeStation } from "../../model/bladeGeometry.ts";
import type { SeriesGeometryRequest, WageningenB } from "../../model/seriesPropeller.ts";
import { positive } from "../../quantity/domain.ts";
import { HUB_RATIO, type SeriesStation, WAGENINGEN_B_STATIONS } from "./seriesGeometry.data.ts";
import { seriesWarnings } from "./seriesRange.ts";

/**
 * Blades of a B screw as sections, so that blade elements can compute the propeller that the series was measured with.
 *
 *   c = K_r (A_E/A_0) D/Z,   t = (A_r - B_r Z) D,   φ = atan(P/(2π r)),   camber t/2
 *
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, table 1. The table's blade has 98 to
 *          99 % of the nominal area.
 * Assumes  the pitch is that of the face, and the face is flat: the middle line then stands half the thickness above it. Inner
 *          sections have raised edges, so their true camber is smaller. Rake is left out, and skew.
 * Range    as the series.
 * Throws   OutOfDomain outside the range of the series, unless asked for, and unless the diameter is greater than 0.
 */
export function seriesGeometry({ series, diameter, outsideRange }: SeriesGeometryRequest): BladeGeometry {
  seriesWarnings({ series, outsideRange });
  const D = positive(diameter, "diameter", "m");
  const isFew = series.blades <= 3;
  return {
    bladeCount: series.blades,
    diameter: D,
    hubDiameter: D * (isFew ? HUB_RATIO.upToThree : HUB_RATIO.fourAndMore),
    stations: WAGENINGEN_B_STATIONS.map((station) => bladeStation(station, series, D)),
  };
}

function bladeStation(
  station: SeriesStation,
  { blades: Z, areaRatio, pitchRatio }: WageningenB,
  D: number,
): BladeStation {
  const K_r = Z <= 3 ? station.chordOfThree : station.chordOfFour;
  const thickness = (station.thickness - station.thicknessPerBlade * Z) * D;
  const radius = (station.radius * D) / 2;
  const pitch = pitchRatio * D * (Z === 4 ? station.pitchOfFour : 1);
  return {
    radius,
    chord: (K_r * areaRatio * D) / Z,
    pitchAngle: Math.atan(pitch / (2 * Math.PI * radius)),
    thickness,
    camber: thickness / 2,
  };
}

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
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, table 1. With the tip outside
 *          0.9 R rounded like an ellipse the blades have the nominal area to 1.3 %.
 * Assumes  the pitch is that of the face, and the face is flat: the middle line then stands half the thickness above
 *          it. Inner sections have raised edges, so their true camber is smaller. Rake is left out, and skew.
 * Error    of blade elements of these sections, whose wide blades curve the flow: `broadBlades.data.ts`.
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
    stations: WITH_ROUND_TIP.map((station) => bladeStation(station, series, D)),
  };
}

/**
 * Places between the last two of the table, where the outline is a quarter of an ellipse: a straight one would cut the
 * tip.
 */
const TIP_RADII = [0.925, 0.95, 0.97, 0.985, 0.995];

const WITH_ROUND_TIP: readonly SeriesStation[] = [
  ...WAGENINGEN_B_STATIONS.slice(0, -1),
  ...TIP_RADII.map(tipStation),
  WAGENINGEN_B_STATIONS.at(-1)!,
];

function tipStation(radius: number): SeriesStation {
  const [inner, tip] = WAGENINGEN_B_STATIONS.slice(-2) as [SeriesStation, SeriesStation];
  const part = (radius - inner.radius) / (tip.radius - inner.radius);
  const width = Math.sqrt((1 - radius ** 2) / (1 - inner.radius ** 2));
  return {
    ...inner,
    radius,
    chordOfThree: inner.chordOfThree * width,
    chordOfFour: inner.chordOfFour * width,
    thickness: inner.thickness + part * (tip.thickness - inner.thickness),
    thicknessPerBlade: inner.thicknessPerBlade + part * (tip.thicknessPerBlade - inner.thicknessPerBlade),
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

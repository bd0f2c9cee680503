import type { BladeGeometry, BladeStation } from "../../model/bladeGeometry.ts";
import { monotoneCubic } from "../../numeric/monotoneCubic.ts";
import { positive } from "../../quantity/domain.ts";
import type { Warning } from "../../quantity/warning.ts";
import { geometryWarnings } from "./geometryWarnings.ts";
import type { Annulus } from "./ringSearch.ts";

/** A blade cut into pieces, ready to be put into any flow. */
export interface BladeShape {
  readonly bladeCount: number;
  readonly diameter: number;
  /** Length of the blade over its mean chord. */
  readonly aspectRatio: number;
  readonly pieces: readonly BladePiece[];
  readonly warnings: readonly Warning[];
}

export interface BladePiece extends Annulus {
  readonly radius: number;
  readonly width: number;
  readonly chord: number;
  readonly thicknessRatio: number;
  readonly camberRatio: number;
}

/** Pieces of a blade unless told otherwise. */
const PIECES = 30;

/**
 * Cuts the blade from hub to tip into pieces, narrow towards both ends where the load falls away steeply.
 *
 *   edges r = r_h + (R - r_h)(1 - cos(π i/N))/2, middles at half steps of the angle
 *
 * Between stations chord, pitch angle, thickness over chord and camber over chord follow `monotoneCubic`; inside the first
 * and outside the last station they are held. A tip without chord takes thickness and camber ratio of the station before.
 *
 * Source   cosine spacing towards both ends, as in lifting-line work: common practice, no source.
 * Error    second order in 1/N; thrust and torque of 30 pieces within 0.1 % of those of very many.
 * Throws   OutOfDomain for a chord that is 0 all along; the geometry is one that `checkedGeometry` has passed.
 */
export function bladeShape(geometry: BladeGeometry, count = PIECES): BladeShape {
  const { bladeCount: B, diameter, hubDiameter } = geometry;
  const [R, hub] = [diameter / 2, hubDiameter / 2];
  const bladeAt = sectionsOf(geometry.stations);
  const at = (step: number) => hub + ((R - hub) * (1 - Math.cos((Math.PI * step) / count))) / 2;
  const pieces = Array.from({ length: count }, (_, i): BladePiece => {
    const radius = at(i + 0.5);
    const section = bladeAt(radius);
    return {
      radius,
      width: at(i + 1) - at(i),
      ...section,
      solidity: (B * section.chord) / (2 * Math.PI * radius),
      tipExponent: (B * (R - radius)) / (2 * radius),
      hubExponent: hub > 0 ? (B * (radius - hub)) / (2 * hub) : Number.POSITIVE_INFINITY,
    };
  }).filter(({ chord }) => chord > 0);
  const area = pieces.reduce((sum, { chord, width }) => sum + chord * width, 0);
  const aspectRatio = (R - hub) ** 2 / positive(area, "area of a blade", "m²");
  return { bladeCount: B, diameter, aspectRatio, pieces, warnings: geometryWarnings(geometry) };
}

type SectionShape = Pick<BladePiece, "chord" | "pitchAngle" | "thicknessRatio" | "camberRatio">;

/** Chord, pitch angle and the ratios of a section at any radius (m), between the stations. */
export function sectionsOf(stations: readonly BladeStation[]): (radius: number) => SectionShape {
  const solid = stations.filter(({ chord }) => chord > 0);
  const through = (those: readonly BladeStation[], value: (station: BladeStation) => number) =>
    monotoneCubic(
      those.map(({ radius }) => radius),
      those.map(value),
    );
  const chord = through(stations, (station) => station.chord);
  const pitchAngle = through(stations, (station) => station.pitchAngle);
  const thicknessRatio = through(solid, (station) => station.thickness / station.chord);
  const camberRatio = through(solid, (station) => station.camber / station.chord);
  return (radius) => ({
    chord: chord(radius),
    pitchAngle: pitchAngle(radius),
    thicknessRatio: thicknessRatio(radius),
    camberRatio: camberRatio(radius),
  });
}

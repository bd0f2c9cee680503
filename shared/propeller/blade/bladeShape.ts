import type { BladeGeometry, BladeStation } from "../../model/bladeGeometry.ts";
import { monotoneCubic } from "../../numeric/monotoneCubic.ts";
import type { Annulus } from "./annulus.ts";

/** A blade cut into pieces, ready to be put into any flow. */
export interface BladeShape {
  readonly bladeCount: number;
  readonly diameter: number;
  /** Length of the blade over its mean chord. */
  readonly aspectRatio: number;
  readonly pieces: readonly BladePiece[];
}

export interface BladePiece extends Annulus {
  readonly radius: number;
  readonly width: number;
  readonly chord: number;
  readonly thicknessRatio: number;
  readonly camberRatio: number;
}

/** Pieces of a blade unless told otherwise: thrust and torque are within 0.1 % of those of very many. */
export const PIECES = 30;

/**
 * Cuts the blade from hub to tip into pieces, narrow towards both ends where the load falls away steeply.
 *
 *   edges r = r_h + (R - r_h)(1 - cos(π i/N))/2, middles at half steps of the angle
 *
 * Between stations chord, pitch angle, thickness and camber follow `monotoneCubic`; inside the first and outside the last
 * station they are held.
 * Range    a geometry that `checkedGeometry` has passed.
 */
export function bladeShape(geometry: BladeGeometry, count = PIECES): BladeShape {
  const { bladeCount: B, diameter, hubDiameter } = geometry;
  const [R, hub] = [diameter / 2, hubDiameter / 2];
  const along = (field: NumberOfStation) =>
    monotoneCubic(
      geometry.stations.map(({ radius }) => radius),
      geometry.stations.map((station) => station[field]),
    );
  const [chordAt, pitchAt, thicknessAt, camberAt] = [
    along("chord"),
    along("pitchAngle"),
    along("thickness"),
    along("camber"),
  ];
  const at = (step: number) => hub + ((R - hub) * (1 - Math.cos((Math.PI * step) / count))) / 2;
  const pieces = Array.from({ length: count }, (_, i): BladePiece => {
    const radius = at(i + 0.5);
    const chord = chordAt(radius);
    return {
      radius,
      width: at(i + 1) - at(i),
      chord,
      pitchAngle: pitchAt(radius),
      thicknessRatio: thicknessAt(radius) / chord,
      camberRatio: camberAt(radius) / chord,
      solidity: (B * chord) / (2 * Math.PI * radius),
      tipExponent: (B * (R - radius)) / (2 * radius),
      hubExponent: hub > 0 ? (B * (radius - hub)) / (2 * hub) : Number.POSITIVE_INFINITY,
    };
  });
  const area = pieces.reduce((sum, { chord, width }) => sum + chord * width, 0);
  return { bladeCount: B, diameter, aspectRatio: (R - hub) ** 2 / area, pieces };
}

type NumberOfStation = Exclude<keyof BladeStation, "skew" | "radius">;

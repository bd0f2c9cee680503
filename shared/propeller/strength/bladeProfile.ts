import type { BladeGeometry, BladeStation } from "../../model/bladeGeometry.ts";
import { monotoneCubic } from "../../numeric/monotoneCubic.ts";
import { sectionsOf } from "../blade/bladeShape.ts";

/** A blade section at any radius (m), between the stations as blade elements take it. */
export type BladeProfile = (radius: number) => Required<BladeStation>;

/** The blade between its stations; beyond the first or last as there. Range: what `checkedGeometry` has passed. */
export function bladeProfile({ stations }: BladeGeometry): BladeProfile {
  const sectionAt = sectionsOf(stations);
  const skewAt = monotoneCubic(
    stations.map(({ radius }) => radius),
    stations.map(({ skew }) => skew ?? 0),
  );
  return (radius) => {
    const { chord, pitchAngle, thicknessRatio, camberRatio } = sectionAt(radius);
    const [thickness, camber] = [thicknessRatio * chord, camberRatio * chord];
    return { radius, chord, pitchAngle, thickness, camber, skew: skewAt(radius) };
  };
}

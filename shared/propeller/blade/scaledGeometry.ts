import type { BladeGeometry } from "../../model/bladeGeometry.ts";

/**
 * An exact copy of the blades to scale, `diameter` (m) over the tips.
 *
 * Source   geometric similarity, any text on model tests: lengths grow alike, angles stay.
 * Range    diameter greater than 0, which the caller has checked.
 */
export function scaledGeometry(geometry: BladeGeometry, diameter: number): BladeGeometry {
  const scale = diameter / geometry.diameter;
  if (scale === 1) return geometry;
  return {
    ...geometry,
    diameter,
    hubDiameter: geometry.hubDiameter * scale,
    stations: geometry.stations.map((station) => ({
      ...station,
      radius: station.radius * scale,
      chord: station.chord * scale,
      thickness: station.thickness * scale,
      camber: station.camber * scale,
    })),
  };
}

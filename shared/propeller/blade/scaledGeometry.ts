import type { BladeGeometry } from "../../model/bladeGeometry.ts";

/** An exact copy of the blades to scale, `diameter` (m) over the tips: lengths grow alike, angles stay. */
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

import type { BladeGeometry } from "../../model/bladeGeometry.ts";

/** The geometry, if it is one a blade can have. */
export function checkedGeometry(geometry: BladeGeometry): BladeGeometry {
  return geometry;
}

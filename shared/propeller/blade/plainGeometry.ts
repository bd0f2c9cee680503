import type { BladeGeometryRequest } from "../../model/bladeElements.ts";
import type { BladeGeometry } from "../../model/bladeGeometry.ts";

type PlainOutline = Extract<BladeGeometryRequest, { readonly from: "outline" }>;

/** Stations from hub to tip, closer together towards the tip. */
const STATIONS = 15;

/**
 * Blades of constant pitch with a plain outline, to start from.
 *
 *   θ = atan(P / 2πr);   c = c_0 (constant), or c_0 sqrt(1 - ((r - r_h)/(R - r_h))²) (elliptic, widest at the hub)
 *   A_E/A_0 = B ∫ c dr / (π R²)
 *
 * Source   definition of the expanded area ratio: ITTC Symbols and Terminology List (2021).
 */
export function plainGeometry(outline: PlainOutline): BladeGeometry {
  const { bladeCount, diameter, hubDiameter, pitchRatio, areaRatio, thicknessRatio, camberRatio } = outline;
  const [R, hub] = [diameter / 2, hubDiameter / 2];
  const isElliptic = outline.outline === "elliptic";
  const meanOverRoot = isElliptic ? Math.PI / 4 : 1;
  const rootChord = (areaRatio * Math.PI * R * R) / (bladeCount * (R - hub) * meanOverRoot);
  // A station on the axis has no pitch angle; without a hub the blade begins at the first step.
  const first = hub > 0 ? 0 : 1;
  const steps = Array.from({ length: STATIONS - first }, (_, i) =>
    Math.sin((Math.PI * (i + first)) / (2 * (STATIONS - 1))),
  );
  return {
    bladeCount,
    diameter,
    hubDiameter,
    stations: steps.map((along) => {
      const radius = hub + (R - hub) * along;
      const chord = isElliptic ? rootChord * Math.sqrt(Math.max(0, 1 - along * along)) : rootChord;
      return {
        radius,
        chord,
        pitchAngle: Math.atan((pitchRatio * diameter) / (2 * Math.PI * radius)),
        thickness: thicknessRatio * chord,
        camber: camberRatio * chord,
      };
    }),
  };
}

import type { StrengthChoices } from "../../shared/model/bladeStrength.ts";
import type { BladeLoad } from "../../shared/propeller/strength/bladeStrength.ts";

/** A flat bar of 20 x 4 mm, 80 mm long, its flat side in the plane of rotation. */
export const BAR = {
  bladeCount: 2,
  diameter: 0.2,
  hubDiameter: 0.04,
  stations: [0.02, 0.06, 0.1].map((radius) => ({ radius, chord: 0.02, thickness: 0.004, camber: 0, pitchAngle: 0 })),
};

/** Round numbers, so that the formulas can be followed by hand. */
export const PRINT: StrengthChoices = {
  material: {
    name: "test print",
    density: 1240,
    strengthInLayer: 40e6,
    strengthAcrossLayers: 20e6,
    modulusInLayer: 2e9,
    modulusAcrossLayers: 1e9,
    layerAngle: 0,
    temperatureFactor: 1,
    waterFactor: 1,
    fatigueFactor: 0.3,
    source: "invented",
  },
  sectionShape: "plate",
  rakeAngle: 0,
  loadFactor: 1,
  wantedSafety: 2,
};

/** `count` pieces of the bar under a thrust per length that depends on the part `s` of its length. */
export function evenPieces(count: number, thrustPerLength: (s: number) => number): BladeLoad[] {
  const [root, tip] = [BAR.hubDiameter / 2, BAR.diameter / 2];
  const width = (tip - root) / count;
  return Array.from({ length: count }, (_, i) => ({
    radius: root + (i + 0.5) * width,
    width,
    thrustPerLength: thrustPerLength((i + 0.5) / count),
    tangentialForcePerLength: 0,
  }));
}

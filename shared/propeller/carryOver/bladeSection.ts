import type { BladeSection, CarryOverRequest } from "../../model/carryOver.ts";
import { sectionsOf } from "../blade/bladeShape.ts";
import { checkedGeometry } from "../blade/checkedGeometry.ts";

/**
 * What the Reynolds factor needs of the blade: as stated, else from the shape of the blades at 0.75 of the radius, P/D =
 * 0.75 π tan θ; undefined where neither is known.
 *
 * Throws   InputProblem as `checkedGeometry`.
 */
export function bladeSection({ blade, shape }: CarryOverRequest): BladeSection | undefined {
  if (blade !== undefined || shape === undefined) return blade;
  const { bladeCount, diameter, stations } = checkedGeometry(shape.geometry);
  const { chord, pitchAngle, thicknessRatio } = sectionsOf(stations)(0.375 * diameter);
  const pitchRatio = 0.75 * Math.PI * Math.tan(pitchAngle);
  if (!(pitchRatio > 0)) return undefined;
  return { bladeCount, chordRatio: chord / diameter, pitchRatio, thicknessRatio, roughness: shape.surface.roughness };
}

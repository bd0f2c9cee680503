import type { SectionLoads } from "./loadsBeyond.ts";
import type { SectionProperties } from "./sectionProperties.ts";

export interface SectionStress {
  /** About the axis along the chord, N·m: bends the tip towards the back. */ readonly flatwiseMoment: number;
  /** About the normal of the chord, N·m: bends the tip towards the trailing edge. */ readonly edgewiseMoment: number;
  /** Mean pull over the area, Pa. */ readonly centrifugalStress: number;
  /** Greatest pull along the blade anywhere on the outline, Pa; negative where all is pressed. */
  readonly greatestTension: number;
  /** Greatest push along the blade, Pa, as a positive number; negative where all is pulled. */
  readonly greatestCompression: number;
}

/**
 * Stress along the blade from bending about both principal axes of the twisted section and the centrifugal pull.
 *
 *   M_flat = M_axial cos φ + M_tangential sin φ,   M_edge = M_tangential cos φ - M_axial sin φ
 *   σ = F_c/A - M_flat y/I_flat - M_edge x/I_edge          y towards the back, x towards the trailing edge
 *
 * Source   flexure formula for bending about two principal axes; Gere & Timoshenko, Mechanics of Materials (1997), ch. 5
 *          and 6. Resolving by the pitch angle: Carlton, Marine Propellers and Propulsion, chapter on blade stress.
 * Assumes  slender beam, linear material; no stress concentration at fillets, pores or layer steps.
 */
export function sectionStress(
  { axialMoment, tangentialMoment, centrifugalForce }: SectionLoads,
  pitchAngle: number,
  { area, secondMomentFlatwise, secondMomentEdgewise, outline }: SectionProperties,
): SectionStress {
  const [cos, sin] = [Math.cos(pitchAngle), Math.sin(pitchAngle)];
  const flatwiseMoment = axialMoment * cos + tangentialMoment * sin;
  const edgewiseMoment = tangentialMoment * cos - axialMoment * sin;
  const centrifugalStress = centrifugalForce / area;
  const stresses = outline.map(
    ({ alongChord, towardsBack }) =>
      centrifugalStress -
      (flatwiseMoment * towardsBack) / secondMomentFlatwise -
      (edgewiseMoment * alongChord) / secondMomentEdgewise,
  );
  return {
    flatwiseMoment,
    edgewiseMoment,
    centrifugalStress,
    greatestTension: Math.max(...stresses),
    greatestCompression: -Math.min(...stresses),
  };
}

import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { BladeStrength, StrengthChoices, StressedSection } from "../../model/bladeStrength.ts";
import { finite } from "../../quantity/domain.ts";
import { checkedGeometry } from "../blade/checkedGeometry.ts";
import { type MaterialAlongBlade, materialAlongBlade } from "./allowableStress.ts";
import { type BladeProfile, bladeProfile } from "./bladeProfile.ts";
import { type BentStation, curvatureOf, deflections } from "./deflection.ts";
import { type LoadedPiece, loadsBeyond } from "./loadsBeyond.ts";
import { sectionProperties } from "./sectionProperties.ts";
import { sectionStress } from "./sectionStress.ts";
import { STRENGTH_CAUTIONS, strengthSentence } from "./strengthInWords.ts";
import { strengthWarnings } from "./strengthWarnings.ts";

/** What acts on a piece of one blade; `bladeElements` gives these. */
export interface BladeLoad {
  /** Middle of the piece, m. */ readonly radius: number;
  /** Its length along the blade, m. */ readonly width: number;
  /** N/m of one blade. */ readonly thrustPerLength: number;
  /** N/m of one blade, against the turning. */ readonly tangentialForcePerLength: number;
}

export interface StrengthRequest extends StrengthChoices {
  readonly geometry: BladeGeometry;
  /** From hub to tip. */ readonly elements: readonly BladeLoad[];
  /** n, rev/s. */ readonly rotationRate: number;
}

/** Sections are stressed up to this part of the radius: at a pointed tip load over section is 0/0. */
const OUTERMOST = 0.95;
const SECTIONS = 41;

/**
 * Stress, safety factor and deflection of one blade under its predicted load and its own centrifugal pull.
 *
 * Source   cantilever beam method; Carlton, Marine Propellers and Propulsion, chapter on propeller blade stress; flexure
 *          formula and deflection after Gere & Timoshenko, Mechanics of Materials (1997), ch. 5 and 9.
 * Assumes  a slender solid blade held rigidly at the hub, steady even inflow, linear material, no fillet, no notch. Twisting
 *          of a skewed blade is left out. Tension and compression are both held against the tensile strength.
 * Range    any load; section shapes as `sectionProperties`.
 * Throws   InputProblem of `checkedGeometry` that names station and field; OutOfDomain for numbers that are not finite.
 */
export function bladeStrength(request: StrengthRequest): BladeStrength {
  const { geometry, rotationRate } = request;
  finite(rotationRate, "rotation rate", "rev/s");
  const profile = bladeProfile(checkedGeometry(geometry));
  const [root, tip] = [geometry.hubDiameter / 2, geometry.diameter / 2];
  const beam: Beam = {
    profile,
    pieces: request.elements.map((element) => loadedPiece(element, profile, request)),
    material: materialAlongBlade(request.material),
    choices: request,
  };
  const radii = Array.from({ length: SECTIONS }, (_, i) => root + ((OUTERMOST * tip - root) * i) / (SECTIONS - 1));
  const stressed = radii.map((radius) => stressedAt(radius, beam));
  const bent = deflections(
    stressed.map(({ curvature }) => curvature),
    tip,
  );
  const sections = stressed.map(({ section }, i) => ({
    ...section,
    axialDeflection: bent.stations[i]!.axial,
    tangentialDeflection: bent.stations[i]!.tangential,
  }));
  const critical = sections.reduce((worst, section) => (stressOf(section) > stressOf(worst) ? section : worst));
  const result = {
    state: "solved" as const,
    sections,
    critical,
    ...beam.material,
    tipDeflection: { ...bent.tip, total: Math.hypot(bent.tip.axial, bent.tip.tangential) },
  };
  return {
    ...result,
    sentence: strengthSentence(result, request),
    cautions: [...STRENGTH_CAUTIONS],
    warnings: strengthWarnings(result, request),
  };
}

interface Beam {
  readonly profile: BladeProfile;
  readonly pieces: readonly LoadedPiece[];
  readonly material: MaterialAlongBlade;
  readonly choices: StrengthChoices;
}

/** The larger of tension and compression, Pa. */
const stressOf = (section: Pick<StressedSection, "greatestTension" | "greatestCompression">) =>
  Math.max(section.greatestTension, section.greatestCompression);

/** Place of the blade's axis forward of the root, m: rake is positive aft. */
const forwardAt = (radius: number, rakeAngle: number) => -radius * Math.tan(rakeAngle);

function loadedPiece(
  element: BladeLoad,
  profile: BladeProfile,
  { rotationRate, loadFactor, material, sectionShape, rakeAngle }: StrengthRequest,
): LoadedPiece {
  const { radius, width } = element;
  const { chord, thickness, camber, skew } = profile(radius);
  const solid = chord > 0 && thickness > 0;
  const area = solid ? sectionProperties({ shape: sectionShape, chord, thickness, camber }).area : 0;
  return {
    radius,
    width,
    thrustPerLength: loadFactor * finite(element.thrustPerLength, "thrust per length", "N/m"),
    tangentialForcePerLength:
      loadFactor * finite(element.tangentialForcePerLength, "tangential force per length", "N/m"),
    pullPerRadius: material.density * area * (2 * Math.PI * rotationRate) ** 2,
    forward: forwardAt(radius, rakeAngle),
    skew,
  };
}

function stressedAt(radius: number, { profile, pieces, material, choices }: Beam) {
  const { chord, thickness, camber, pitchAngle, skew } = profile(radius);
  const properties = sectionProperties({ shape: choices.sectionShape, chord, thickness, camber });
  const loads = loadsBeyond({ radius, forward: forwardAt(radius, choices.rakeAngle), skew }, pieces);
  const stress = sectionStress(loads, pitchAngle, properties);
  const greatest = stressOf(stress);
  const curvature: BentStation = {
    radius,
    ...curvatureOf({
      ...stress,
      pitchAngle,
      flatwiseStiffness: material.modulus * properties.secondMomentFlatwise,
      edgewiseStiffness: material.modulus * properties.secondMomentEdgewise,
    }),
  };
  const section = {
    radius,
    area: properties.area,
    axialForce: loads.axialForce,
    tangentialForce: loads.tangentialForce,
    centrifugalForce: loads.centrifugalForce,
    ...stress,
    safetyFactor: greatest > 0 ? material.strength / greatest : null,
    fatigueSafetyFactor: greatest > 0 ? material.fatigueStrength / greatest : null,
  };
  return { section, curvature };
}

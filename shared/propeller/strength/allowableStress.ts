import type { PrintedMaterial } from "../../model/bladeStrength.ts";
import { positive, within } from "../../quantity/domain.ts";

/**
 * A property along the blade where the layers lie at `layerAngle` (rad; 0 the blade lies in the layer, π/2 the layers are
 * stacked along it).
 *
 *   X = X_in X_across / (X_in sin² ψ + X_across cos² ψ)
 *
 * Source   Hankinson, Investigation of crushing strength of spruce at varying angles of grain, US Air Service Information
 *          Circular 259 (1921), the usual formula for wood across its grain; that printed layers follow it is common
 *          practice, no source.
 * Throws   OutOfDomain for values that are not positive or an angle outside 0 to π/2.
 *
 * @example acrossLayers(40e6, 20e6, Math.PI / 4) // 26.667e6 Pa
 */
export function acrossLayers(inLayer: number, acrossLayer: number, layerAngle: number): number {
  const along = positive(inLayer, "property in the layer", "Pa");
  const across = positive(acrossLayer, "property across the layers", "Pa");
  const angle = within(layerAngle, 0, Math.PI / 2, "layer angle", "rad");
  return (along * across) / (along * Math.sin(angle) ** 2 + across * Math.cos(angle) ** 2);
}

export interface MaterialAlongBlade {
  /** Stress that breaks it in a single pull, warm and soaked as stated, Pa. */ readonly strength: number;
  /** Stress it stands for the stated number of turns, Pa. */ readonly fatigueStrength: number;
  /** E, Pa. */ readonly modulus: number;
}

/**
 * Strength and stiffness along the blade: layers, then the typed factors for temperature, water and load repeated at blade
 * rate, all in Pa. Stiffness takes temperature and water too.
 *
 * Source   layers as `acrossLayers`; that the factors multiply is common practice, no source.
 * Assumes  heat, water and repetition weaken independently of each other.
 * Throws   OutOfDomain as `acrossLayers`.
 */
export function materialAlongBlade(material: PrintedMaterial): MaterialAlongBlade {
  const { layerAngle, temperatureFactor, waterFactor, fatigueFactor } = material;
  const inWater = temperatureFactor * waterFactor;
  const strength = acrossLayers(material.strengthInLayer, material.strengthAcrossLayers, layerAngle) * inWater;
  return {
    strength,
    fatigueStrength: strength * fatigueFactor,
    modulus: acrossLayers(material.modulusInLayer, material.modulusAcrossLayers, layerAngle) * inWater,
  };
}

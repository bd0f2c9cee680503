import type { FactorName } from "../../../../shared/model/factor.ts";

/** Factors as a person chooses them. */
export const FACTOR_WORDS: Readonly<Record<FactorName, string>> = {
  finish: "Finish",
  pitchRatio: "Pitch ratio",
  diameter: "Diameter",
  bladeCount: "Number of blades",
  nozzle: "Nozzle",
  material: "Material",
  layerHeight: "Layer height",
  roughness: "Roughness height",
  propeller: "Propeller",
  motor: "Motor",
  controller: "Controller",
  pack: "Pack",
  day: "Day",
  instruments: "Instruments",
  fluid: "Water",
  temperature: "Water temperature",
  immersion: "Depth of the shaft",
};

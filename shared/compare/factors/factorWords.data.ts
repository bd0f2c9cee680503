import type { FactorName } from "../../model/factor.ts";

/** What a factor is called in sentences and tables, and what of a comparison it acts on. */
interface FactorWords {
  readonly title: string;
  /** Answers that it can move where it is a circumstance; empty for a property of the propeller. */
  readonly acts: string;
}

const ON_THE_DRIVE = "the answers at equal electrical power and at equal throttle";
const ON_ALL = "every answer";

export const FACTOR_WORDS: { readonly [F in FactorName]: FactorWords } = {
  finish: { title: "finish", acts: "" },
  pitchRatio: { title: "pitch ratio", acts: "" },
  diameter: { title: "diameter", acts: "" },
  bladeCount: { title: "number of blades", acts: "" },
  nozzle: { title: "nozzle", acts: "" },
  material: { title: "material", acts: "" },
  layerHeight: { title: "layer height", acts: "" },
  roughness: { title: "roughness height", acts: "" },
  propeller: { title: "propeller", acts: "" },
  motor: { title: "motor", acts: ON_THE_DRIVE },
  controller: { title: "controller", acts: ON_THE_DRIVE },
  pack: { title: "pack", acts: ON_THE_DRIVE },
  day: { title: "day", acts: ON_ALL },
  instruments: { title: "calibration", acts: ON_ALL },
  fluid: { title: "fluid", acts: ON_ALL },
  temperature: { title: "temperature of the fluid", acts: `${ON_ALL}, by the Reynolds number` },
  immersion: { title: "immersion", acts: `${ON_ALL}, where air is drawn in or the surface is near` },
};

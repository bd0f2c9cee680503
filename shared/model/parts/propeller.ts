import { z } from "zod";
import { BladeGeometry } from "../bladeGeometry.ts";
import { Name, Note, si } from "../fields.ts";
import { Bought } from "./bought.ts";

/** Which way a blade surface was finished: what a builder calls it, free text. */
const Finish = z.string().trim().max(60).describe("Surface finish in the builder's words, e.g. as printed, sanded");

export const Propeller = z
  .strictObject({
    name: Name,
    diameter: si(z.number().positive().max(1), { symbol: "D", unit: "m", text: "Diameter over the blade tips" }),
    diameterUncertainty: si(z.number().min(0).max(0.1), {
      symbol: "u(D)",
      unit: "m",
      text: "Standard uncertainty of the diameter",
    }),
    bladeCount: z.int().min(1).max(12).describe("Number of blades").exactOptional(),
    pitchRatio: si(z.number().positive().max(3), {
      symbol: "P/D",
      unit: "1",
      text: "Pitch ratio at 0.7 R",
    }).exactOptional(),
    chordAt07: si(z.number().positive().max(1), {
      symbol: "c_0.7",
      unit: "m",
      text: "Blade chord at 0.7 of the tip radius",
    }).exactOptional(),
    finish: Finish.exactOptional(),
    material: z.string().trim().min(1).max(60).exactOptional().describe("What it is made of, e.g. PETG"),
    layerHeight: si(z.number().positive().max(0.002), {
      symbol: "h",
      unit: "m",
      text: "Layer height of the print",
    }).exactOptional(),
    roughness: si(z.number().positive().max(0.005), {
      symbol: "k_p",
      unit: "m",
      text: "Roughness height of the blade",
    }).exactOptional(),
    geometry: BladeGeometry.exactOptional().describe("Shape of the blades, for blade elements and strength"),
    nozzle: z.boolean().describe("The propeller runs in a nozzle that carries part of the thrust").default(false),
    ...Bought,
    note: Note.default(""),
  })
  .meta({ id: "Propeller" });
export type Propeller = z.infer<typeof Propeller>;

import { z } from "zod";
import { si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { ResultWarning } from "./uncertain.ts";

/** Properties of a propeller that a builder changes on purpose, to compare. */
export const DESIGN_FACTORS = [
  "finish",
  "pitchRatio",
  "diameter",
  "bladeCount",
  "nozzle",
  "material",
  "layerHeight",
  "roughness",
  "propeller",
] as const;

/** What a run was made with and in; it should be the same on both sides of a comparison, or mixed evenly. */
export const SETTING_FACTORS = [
  "motor",
  "controller",
  "pack",
  "day",
  "instruments",
  "fluid",
  "temperature",
  "immersion",
] as const;

export const FactorName = z.enum([...DESIGN_FACTORS, ...SETTING_FACTORS]);
export type FactorName = z.infer<typeof FactorName>;

/** Factors that are numbers, so that a trend over them has a meaning. */
export const NumberFactorName = z.enum([
  "pitchRatio",
  "diameter",
  "bladeCount",
  "layerHeight",
  "roughness",
  "temperature",
  "immersion",
]);
export type NumberFactorName = z.infer<typeof NumberFactorName>;

const words = z.string().trim().min(1).max(200).exactOptional();
const length = (symbol: string, text: string) => si(z.number().positive(), { symbol, unit: "m", text }).exactOptional();

/** What is known of a run beside its log: the properties that can differ between the runs compared. */
export const RunFacts = z
  .strictObject({
    id: z.string().min(1).describe("Identity of the run: its id, or the name of its file"),
    name: z.string().min(1).describe("What the run is called in sentences"),
    variant: z.string().default("").describe("The variant it was given, if any"),
    mounting: z.string().default("").describe("Which mounting of the propeller it was"),
    tags: z.array(z.string()).default([]),
    propeller: words.describe("The one propeller, so that a second print of the same shape is told from a re-mounting"),
    finish: words,
    material: words,
    motor: words,
    controller: words,
    pack: words,
    day: words.describe("Day the run was made, ISO 8601"),
    instruments: words.describe("Names of the instruments whose calibration was used"),
    pitchRatio: si(z.number().positive(), { symbol: "P/D", unit: "1", text: "Pitch ratio at 0.7 R" }).exactOptional(),
    diameter: length("D", "Diameter over the blade tips"),
    bladeCount: z.int().min(1).exactOptional().describe("Number of blades"),
    nozzle: z.boolean().exactOptional(),
    layerHeight: length("h", "Layer height of the print"),
    roughness: length("k_p", "Roughness height of the blade"),
    immersion: length("h_s", "Depth of the shaft under the surface"),
    fluid: FluidState.exactOptional(),
  })
  .meta({ id: "RunFacts" });
export type RunFacts = z.infer<typeof RunFacts>;

/**
 * How a factor lies over the variants. `separates`: one value in each variant and not the same in all, so that its
 * effect and that of the variant are one; `partly`: unevenly mixed, so that some of its effect goes into the ratio;
 * `mixed`: in equal parts in all variants, so that it cancels; `unknown`: not stated for some run.
 */
export const FactorRole = z.enum(["constant", "separates", "partly", "mixed", "unknown"]);
export type FactorRole = z.infer<typeof FactorRole>;

export const FactorRow = z
  .strictObject({
    factor: FactorName,
    title: z.string().describe("In words, e.g. pitch ratio at 0.7 R"),
    isDesign: z.boolean().describe("Changed on purpose, rather than a circumstance of the run"),
    role: FactorRole,
    values: z
      .array(
        z.strictObject({
          variant: z.string(),
          values: z.array(
            z.strictObject({
              text: z.string().describe("The value, ready to show with its unit; not known where not stated"),
              runs: z.int().min(1).describe("Runs of the variant that have it"),
            }),
          ),
        }),
      )
      .describe("One entry a variant, in the order of the variants"),
    sentence: z.string().describe("What it means for the comparison, in words; empty for a constant"),
  })
  .meta({ id: "FactorRow" });
export type FactorRow = z.infer<typeof FactorRow>;

/** Which properties differ between the variants, which are the same, and which can not be told apart from the variant. */
export const FactorTable = z
  .strictObject({
    rows: z.array(FactorRow).describe("Factors of which something is known: those that differ first"),
    compared: z.array(FactorName).describe("Design factors that separate the variants: what is compared"),
    confounded: z
      .array(FactorName)
      .describe("Circumstances that go with the variant, wholly or in part: their effect can not be told from its own"),
    unknown: z.array(FactorName).describe("Factors that are not stated for every run"),
    sentence: z.string().describe("The table in a sentence or two"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "FactorTable" });
export type FactorTable = z.infer<typeof FactorTable>;

import { z } from "zod";
import { Name, si } from "./fields.ts";
import { ResultWarning } from "./uncertain.ts";

const relative = (schema: z.ZodNumber, text: string) => si(schema, { symbol: "", unit: "1", text });

/** How the runs of a plan are cut into blocks: each block holds every variant, so that what differs between blocks cancels. */
export const RunSheetRequest = z
  .strictObject({
    variants: z.array(Name).min(1).max(40).describe("What is mounted, by name"),
    seed: z
      .int()
      .min(0)
      .max(2 ** 32 - 1)
      .describe("Of the order: the same seed gives the same sheet"),
    blocks: z
      .array(Name)
      .max(60)
      .default([])
      .describe("Names of days or packs, in order; the mountings are spread over them. Empty: one block"),
    blockKind: z.enum(["day", "pack", "block"]).default("block"),
    immersion: si(z.number().positive().max(100), {
      symbol: "h_s",
      unit: "m",
      text: "Depth of the shaft to be kept",
    }).exactOptional(),
    diameter: si(z.number().positive().max(1), {
      symbol: "D",
      unit: "m",
      text: "Greatest diameter, for the depth to keep",
    }).exactOptional(),
    inAir: z.boolean().default(false).describe("The stand runs in air, so nothing is said of water"),
  })
  .meta({ id: "RunSheetRequest" });
export type RunSheetRequest = z.infer<typeof RunSheetRequest>;

export const PlanRequest = z
  .strictObject({
    runToRun: relative(
      z.number().positive().max(2),
      "Relative standard deviation from mounting to mounting, seen so far or expected",
    ),
    runToRunDegreesOfFreedom: z
      .number()
      .positive()
      .exactOptional()
      .describe("Degrees of freedom of that spread; absent: it is taken as known"),
    difference: relative(
      z.number().positive().max(10),
      "Relative difference that must be seen: 0.03 is 3 % more, or as many times less",
    ),
    power: z.number().min(0.5).max(0.999).default(0.8).describe("Chance of seeing it, where it is there"),
    level: z.number().min(0.001).max(0.2).default(0.05).describe("Chance of claiming a difference where there is none"),
    design: z
      .enum(["separate", "paired"])
      .default("separate")
      .describe(
        "separate: two-sample test; paired: one mounting of each a block, the difference inside the block counts",
      ),
    mountingsSoFar: z.int().min(0).default(0).describe("Mountings of each variant that are there already"),
    sheet: RunSheetRequest.exactOptional(),
  })
  .meta({ id: "PlanRequest" });
export type PlanRequest = z.infer<typeof PlanRequest>;

export const PlanRow = z
  .strictObject({
    mountings: z.int().min(2).describe("Of each variant"),
    power: z.number().min(0).max(1).describe("Chance of seeing the difference"),
    smallestDifference: z.number().positive().describe("Relative difference that is seen with the wanted chance"),
  })
  .meta({ id: "PlanRow" });
export type PlanRow = z.infer<typeof PlanRow>;

export const RunSheetRow = z
  .strictObject({
    run: z.int().min(1).describe("Order in which to run"),
    block: z.string(),
    variant: z.string(),
    mounting: z.int().min(1).describe("Which mounting of this variant"),
  })
  .meta({ id: "RunSheetRow" });
export type RunSheetRow = z.infer<typeof RunSheetRow>;

/** What to do at the stand, in order, with room to write. */
export const RunSheet = z
  .strictObject({
    seed: z.int().min(0).describe("What the order was drawn from"),
    generator: z.string().describe("What made the order of the seed"),
    blockKind: z.enum(["day", "pack", "block"]),
    rows: z.array(RunSheetRow),
    blanks: z
      .array(z.strictObject({ title: z.string(), unit: z.string() }))
      .describe("Columns left empty on paper, with the unit to write in"),
    before: z.array(z.string()).describe("Before the first run"),
    eachRun: z.array(z.string()).describe("For every run, in order"),
    cautions: z.array(z.string()).describe("Blades, packs and water"),
  })
  .meta({ id: "RunSheet" });
export type RunSheet = z.infer<typeof RunSheet>;

export const MountingPlan = z
  .strictObject({
    mountings: z.int().min(2).nullable().describe("Of each variant, whole; null where over 1000 would be needed"),
    exactMountings: z.number().nullable().describe("Before rounding up; null where fewer than 2 or over 1000"),
    more: z.int().min(0).nullable().describe("Still to be made, of each variant"),
    power: z.number().min(0).max(1).nullable().describe("Chance of seeing the difference with that many"),
    mountingsIfSpreadIsLarger: z
      .int()
      .min(2)
      .nullable()
      .describe("The same if the spread lies at the upper end of its 80 % interval; null where it is taken as known"),
    largerSpread: z.number().positive().nullable().describe("That upper end, relative"),
    rows: z.array(PlanRow).describe("What other numbers of mountings give"),
    sentence: z.string(),
    sheet: RunSheet.nullable(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "MountingPlan" });
export type MountingPlan = z.infer<typeof MountingPlan>;

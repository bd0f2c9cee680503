import { z } from "zod";
import { Companion } from "./alignment.ts";
import { Name, Note } from "./fields.ts";
import { Recipe } from "./recipe.ts";

/** What a run was made for. Runs without propeller say nothing of thrust; they tell the constants of the motor. */
export const RunPurpose = z.enum(["propeller", "noLoadDry", "noLoadWet"]);
export type RunPurpose = z.infer<typeof RunPurpose>;

/** One log of one mounting of one propeller, or of a motor that turned free. */
export const Run = z
  .strictObject({
    name: Name,
    purpose: RunPurpose.default("propeller").describe(
      "What was on the shaft: a propeller, or nothing, with the rotor in air (dry) or flooded (wet)",
    ),
    propellerId: z.uuid().exactOptional().describe("The propeller that was on the stand"),
    takenPartIds: z
      .array(z.uuid())
      .max(3)
      .exactOptional()
      .describe("Propeller, motor and controller that nobody stated: the only ones of their kind when the log came"),
    variant: z.string().trim().max(60).default("").describe("Runs of one variant are compared as a group, e.g. sanded"),
    mounting: z.string().trim().max(60).default("").describe("Which mounting of the propeller this was, e.g. 2"),
    packId: z.uuid().exactOptional().describe("The pack that fed the stand"),
    day: z.iso.date().exactOptional().describe("Day the run was made"),
    tags: z
      .array(z.string().trim().min(1).max(40))
      .max(12)
      .exactOptional()
      .describe("Words to find and to group runs by"),
    file: z.strictObject({
      name: z.string().max(255).describe("Name of the file as it came"),
      sha256: z.string().length(64).describe("SHA-256 of its bytes"),
      size: z.int().min(1).describe("Number of bytes"),
    }),
    recipe: Recipe,
    companion: Companion.exactOptional().describe("The electrical log of the same run, where it was recorded apart"),
    confirmed: z.boolean().default(false).describe("A person looked at the column roles and agreed"),
    note: Note.default(""),
  })
  .meta({ id: "Run" });
export type Run = z.infer<typeof Run>;

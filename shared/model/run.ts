import { z } from "zod";
import { Name, Note } from "./fields.ts";
import { Recipe } from "./recipe.ts";

/** One log of one mounting of one propeller. */
export const Run = z
  .strictObject({
    name: Name,
    propellerId: z.uuid().exactOptional().describe("The propeller that was on the stand"),
    variant: z.string().trim().max(60).default("").describe("Runs of one variant are compared as a group, e.g. sanded"),
    mounting: z.string().trim().max(60).default("").describe("Which mounting of the propeller this was, e.g. 2"),
    file: z.strictObject({
      name: z.string().max(255).describe("Name of the file as it came"),
      sha256: z.string().length(64).describe("SHA-256 of its bytes"),
      size: z.int().min(1).describe("Number of bytes"),
    }),
    recipe: Recipe,
    confirmed: z.boolean().default(false).describe("A person looked at the column roles and agreed"),
    note: Note.default(""),
  })
  .meta({ id: "Run" });
export type Run = z.infer<typeof Run>;

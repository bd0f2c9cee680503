import { z } from "zod";
import { Name, Note } from "./fields.ts";
import { FluidState } from "./fluid.ts";

export const Project = z
  .strictObject({
    name: Name,
    note: Note.default(""),
    water: FluidState.describe("The water the vehicle works in"),
    invented: z.boolean().default(false).describe("The project holds demonstration data that nobody measured"),
  })
  .meta({ id: "Project" });
export type Project = z.infer<typeof Project>;

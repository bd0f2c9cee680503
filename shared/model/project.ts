import { z } from "zod";
import { Name, Note } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { Prediction } from "./prediction.ts";
import { VehicleBuild } from "./vehicle/vehicleBuild.ts";

export const Project = z
  .strictObject({
    name: Name,
    note: Note.default(""),
    water: FluidState.describe("The water the vehicle works in"),
    invented: z.boolean().default(false).describe("The project holds demonstration data that nobody measured"),
    predictions: z
      .array(Prediction)
      .max(20)
      .exactOptional()
      .describe("Computed curves that are laid over what was measured"),
    vehicles: z.array(VehicleBuild).max(8).exactOptional().describe("Vehicles made of the parts, side by side"),
  })
  .meta({ id: "Project" });
export type Project = z.infer<typeof Project>;

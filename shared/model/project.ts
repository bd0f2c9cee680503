import { z } from "zod";
import { Name, Note } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { Prediction } from "./prediction.ts";
import { ShortlistRequirement } from "./shortlist.ts";
import { ThrustClaim } from "./thrustClaim.ts";
import { VehicleBuild } from "./vehicle/vehicleBuild.ts";

export const Project = z
  .strictObject({
    name: Name,
    note: Note.default(""),
    water: FluidState.describe("The water the vehicle works in"),
    invented: z.boolean().default(false).describe("The project holds demonstration data that nobody measured"),
    thrustClaim: ThrustClaim.exactOptional().describe("A gain that somebody claims; absent: none is judged"),
    baselineVariant: z
      .string()
      .trim()
      .min(1)
      .max(60)
      .exactOptional()
      .describe("Variant that the others are measured against; absent: the one measured first"),
    predictions: z
      .array(Prediction)
      .max(20)
      .exactOptional()
      .describe("Computed curves that are laid over what was measured"),
    requirement: ShortlistRequirement.exactOptional().describe(
      "What its thrusters must do, which the shortlist begins with; absent: nothing is asked until somebody says so",
    ),
    vehicles: z.array(VehicleBuild).max(8).exactOptional().describe("Vehicles made of the parts, side by side"),
  })
  .meta({ id: "Project" });
export type Project = z.infer<typeof Project>;

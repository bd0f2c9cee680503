import { z } from "zod";
import { DrivePropeller } from "../drivePropeller.ts";
import { SupplyAssembly } from "../driveTrain.ts";
import { AsternEstimate } from "../driveTrainPoint.ts";
import { Name } from "../fields.ts";
import { Tether } from "./tether.ts";
import { Vehicle } from "./vehicle.ts";

const partId = (text: string) => z.string().min(1).max(64).describe(`${text}, by its identity among the parts`);

/** Where the coefficients of a propeller of a build come from. */
export const PropellerChoice = z
  .discriminatedUnion("from", [
    z.strictObject({ from: z.literal("named"), name: Name.describe("A variant that was measured, or a prediction") }),
    z.strictObject({ from: z.literal("typed"), propeller: DrivePropeller }),
  ])
  .meta({ id: "PropellerChoice" });
export type PropellerChoice = z.infer<typeof PropellerChoice>;

/** One kind of thruster, made of parts that the project keeps. */
export const DriveChoice = z
  .strictObject({
    name: Name.describe("Thrusters name their drive by it"),
    motorId: partId("Motor"),
    controllerId: partId("Controller").exactOptional(),
    gearId: partId("Gear").exactOptional(),
    propeller: PropellerChoice,
    asternEstimate: AsternEstimate.exactOptional().describe(
      "For a propeller without coefficients astern; absent too: it pushes ahead only, which a warning says",
    ),
  })
  .meta({ id: "DriveChoice" });
export type DriveChoice = z.infer<typeof DriveChoice>;

/**
 * A vehicle as the project keeps it: what is its own, and the parts it is made of by their identity, so that a better
 * measurement of a part reaches every vehicle that it is in.
 */
export const VehicleBuild = Vehicle.omit({ drives: true, supply: true, tether: true, water: true })
  .extend({
    drives: z.array(DriveChoice).min(1).max(16).describe("Each kind of thruster once"),
    supply: SupplyAssembly.omit({ pack: true, tether: true }).extend({
      packId: partId("Pack"),
      throughTether: z.boolean().default(false).describe("The pack is ashore and feeds through the tether"),
    }),
    tether: z
      .strictObject({
        tetherId: partId("Tether"),
        drag: Tether.pick({ normalDragCoefficient: true, tangentialDragCoefficient: true }).prefault({}),
        motion: Vehicle.shape.tether.unwrap().shape.motion,
      })
      .exactOptional()
      .describe("Absent: the vehicle swims free"),
  })
  .meta({ id: "VehicleBuild" });
export type VehicleBuild = z.infer<typeof VehicleBuild>;
export type VehicleBuildInput = z.input<typeof VehicleBuild>;

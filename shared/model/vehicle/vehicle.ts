import { z } from "zod";
import { Doubtful, DrivePropeller } from "../drivePropeller.ts";
import { SupplyAssembly } from "../driveTrain.ts";
import { AsternEstimate } from "../driveTrainPoint.ts";
import { Name, Note, si } from "../fields.ts";
import { FluidState } from "../fluid.ts";
import { Controller } from "../parts/controller.ts";
import { Gear } from "../parts/gear.ts";
import { Motor } from "../parts/motor.ts";
import { VehicleDrag } from "./drag.ts";
import { ThrusterPlacement } from "./layoutRequest.ts";
import { Mission } from "./mission.ts";
import { VehicleRequirement } from "./requirement.ts";
import { Scenario } from "./scenario.ts";
import { Tether, TetherMotion } from "./tether.ts";

/** What turns and drives one kind of thruster: a drive train without its supply. */
export const ThrusterDrive = z
  .strictObject({
    name: Name.describe("Thrusters name their drive by it"),
    motor: Motor,
    controller: Controller.exactOptional().describe("Absent: no resistance, no loss, no limit"),
    gear: Gear.exactOptional().describe("Absent: the propeller sits on the motor shaft"),
    propeller: DrivePropeller,
    asternEstimate: AsternEstimate.exactOptional().describe(
      "For a propeller without coefficients astern; absent too: it pushes ahead only, which a warning says",
    ),
  })
  .meta({ id: "ThrusterDrive" });
export type ThrusterDrive = z.infer<typeof ThrusterDrive>;

/** A thruster where it sits, with the drive in it; its limits follow from the drive. */
export const PlacedThruster = ThrusterPlacement.pick({ name: true, position: true, direction: true, spin: true })
  .extend({ drive: Name.describe("Name of one of the drives of the vehicle") })
  .meta({ id: "PlacedThruster" });
export type PlacedThruster = z.infer<typeof PlacedThruster>;

const share = (symbol: string, text: string, size: number, doubt: number) =>
  si(Doubtful, { symbol, unit: "1", text }).default({ value: size, standardUncertainty: doubt });

/**
 * How hull and propeller disturb each other. The defaults are for thrusters that stand clear of the hull, common
 * practice, no source.
 */
export const HullInteraction = z
  .strictObject({
    wakeFraction: share("w", "Wake fraction: V_A = V (1 − w)", 0.05, 0.05),
    thrustDeduction: share("t", "Thrust deduction: the vehicle gets T (1 − t)", 0.05, 0.03),
  })
  .meta({ id: "HullInteraction" });
export type HullInteraction = z.infer<typeof HullInteraction>;

/** The whole vehicle, complete in itself: everything that an answer rests on. */
export const Vehicle = z
  .strictObject({
    name: Name,
    note: Note.default(""),
    water: FluidState.describe("The water it works in"),
    mass: si(Doubtful, { symbol: "m", unit: "kg", text: "Mass with the water it encloses" }),
    netBuoyancy: si(Doubtful, {
      symbol: "B − W",
      unit: "N",
      text: "Buoyancy less weight, without payload; positive: it floats",
    }).default({ value: 0, standardUncertainty: 0 }),
    drag: VehicleDrag,
    interaction: HullInteraction.prefault({}),
    drives: z.array(ThrusterDrive).min(1).max(16).describe("Each kind of thruster once"),
    thrusters: z.array(PlacedThruster).min(1).max(16),
    supply: SupplyAssembly,
    hotelPower: si(Doubtful, { symbol: "P_h", unit: "W", text: "Constant power of lamps, camera, computer" }).default({
      value: 0,
      standardUncertainty: 0,
    }),
    tether: z
      .strictObject({
        cable: Tether.omit({ length: true }).describe("The tether in the water, whatever length of it is out"),
        motion: TetherMotion.default("bothEnds"),
      })
      .exactOptional()
      .describe("Absent: the vehicle swims free"),
    scenario: Scenario.prefault({}).describe("Where and how it works"),
    mission: Mission.exactOptional(),
    requirement: VehicleRequirement.exactOptional().describe("What it must be able to do"),
  })
  .meta({ id: "Vehicle" });
export type Vehicle = z.infer<typeof Vehicle>;
export type VehicleInput = z.input<typeof Vehicle>;

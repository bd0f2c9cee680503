import { z } from "zod";
import { DriveGround } from "../driveTrainPoint.ts";
import { si } from "../fields.ts";
import { Pack } from "../parts/pack.ts";
import { SupplyState } from "../supplyState.ts";
import { ResultWarning } from "../uncertain.ts";
import { AxisDrag } from "./drag.ts";
import { EnduranceAnswer } from "./enduranceAnswer.ts";
import { LayoutAnswer } from "./layoutAnswer.ts";
import { LayoutRequest } from "./layoutRequest.ts";
import { DesignChange, HeadingPolar, SteadyMotion, VerticalAnswer } from "./motionAnswer.ts";
import { RequirementCheck, VehicleDraws } from "./requirementAnswer.ts";
import { SpeedOverTether } from "./speedOverTether.ts";
import { TetherSolution } from "./tetherShape.ts";
import { Vehicle } from "./vehicle.ts";

/** The question to `vehicleAnswer`: the vehicle, and how often its requirement is to be drawn. */
export const VehicleRequest = z
  .strictObject({
    vehicle: Vehicle,
    packs: z.array(Pack).max(100).default([]).describe("Packs to choose from for the mission"),
    drawing: VehicleDraws.nullable().default(null).describe("Null: probabilities of first order alone"),
  })
  .meta({ id: "VehicleRequest" });
export type VehicleRequest = z.infer<typeof VehicleRequest>;

/** What a vehicle does: everything that its screen shows. */
export const VehicleAnswer = z
  .strictObject({
    name: z.string(),
    sentence: z.string().describe("The whole answer in a sentence or two"),
    density: si(z.number(), { symbol: "rho", unit: "kg/m³", text: "Density of the water" }),
    supply: SupplyState,
    drag: AxisDrag,
    layoutRequest: LayoutRequest.describe(
      "The thrusters with the limits that their drives give at rest on this supply",
    ),
    layout: LayoutAnswer,
    motions: z.array(SteadyMotion).describe("Ahead, astern, to starboard, to port, up, down, in this order"),
    headings: HeadingPolar.nullable().describe("Null: the vehicle does not go ahead"),
    vertical: VerticalAnswer,
    changes: z
      .array(DesignChange)
      .describe("What a change of the design does to the speed ahead, the greatest gain first"),
    tether: TetherSolution.nullable().describe("Its shape at the steady speed ahead; null: no tether is out"),
    tetherLimit: SpeedOverTether.nullable().describe(
      "Speed ahead over the tether paid out; null: no tether, or ahead is not commanded or its drag not given",
    ),
    endurance: EnduranceAnswer,
    requirement: RequirementCheck.nullable().describe("Null: nothing is asked"),
    grounds: z.array(DriveGround.extend({ drive: z.string().describe("Name of the drive") })),
    assumptions: z.array(z.string()),
    converged: z.boolean().describe("Every search came to its end"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "VehicleAnswer" });
export type VehicleAnswer = z.infer<typeof VehicleAnswer>;

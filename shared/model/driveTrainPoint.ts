import { z } from "zod";
import { DriveRequest, OperatingPoint } from "./drive.ts";
import { DriveTrain } from "./driveTrain.ts";
import { si } from "./fields.ts";
import { SupplyState } from "./supplyState.ts";
import { ResultWarning } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

export const DriveDirection = z.enum(["ahead", "astern"]);
export type DriveDirection = z.infer<typeof DriveDirection>;

/** Coefficients astern as parts of those ahead, for a propeller that was not measured astern. */
export const AsternEstimate = z
  .strictObject({
    thrustShare: number("K_T/K_T", "1", "Thrust coefficient astern over that ahead"),
    torqueShare: number("K_Q/K_Q", "1", "Torque coefficient astern over that ahead"),
    relativeUncertainty: si(z.number().min(0).max(1), {
      symbol: "u_r",
      unit: "1",
      text: "Relative standard uncertainty of both shares",
    }),
  })
  .meta({ id: "AsternEstimate" });
export type AsternEstimate = z.infer<typeof AsternEstimate>;

/** How a drive train is run. */
export const DriveRunning = z
  .strictObject({
    throttle: number("delta", "1", "Throttle, 0 to 1, in either direction"),
    direction: DriveDirection.default("ahead").describe("Which way the propeller turns"),
    advanceSpeed: si(z.number().min(0), {
      symbol: "V_A",
      unit: "m/s",
      text: "Speed of the water into the propeller, in the direction it pushes",
    }).default(0),
    asternEstimate: AsternEstimate.exactOptional().describe(
      "Stated shares for a propeller without coefficients astern; without them it is refused",
    ),
  })
  .meta({ id: "DriveRunning" });
export type DriveRunning = z.infer<typeof DriveRunning>;
export type DriveRunningInput = z.input<typeof DriveRunning>;

/** One thing that a request rests on, in words. */
export const DriveGround = z
  .strictObject({
    about: z.enum(["supply", "heat", "cavitation", "ventilation", "astern"]),
    text: z.string().describe("What was taken and what it rests on, or why it is left out"),
  })
  .meta({ id: "DriveGround" });
export type DriveGround = z.infer<typeof DriveGround>;

export const DriveTrainRequest = z
  .strictObject({ train: DriveTrain, running: DriveRunning })
  .meta({ id: "DriveTrainRequest" });
export type DriveTrainRequest = z.infer<typeof DriveTrainRequest>;

export const DriveTrainAnswer = z
  .strictObject({
    point: OperatingPoint,
    request: DriveRequest.describe("The question to the model of the operating point, made from the parts"),
    supply: SupplyState,
    grounds: z.array(DriveGround).describe("What limits and estimates rest on"),
    warnings: z.array(ResultWarning).describe("Of parts and their state; those of the point stand with it"),
  })
  .meta({ id: "DriveTrainAnswer" });
export type DriveTrainAnswer = z.infer<typeof DriveTrainAnswer>;

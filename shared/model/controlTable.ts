import { z } from "zod";
import { LIMIT_NAMES } from "./drive.ts";
import { DriveTrain } from "./driveTrain.ts";
import { AsternEstimate, DriveGround } from "./driveTrainPoint.ts";
import { si } from "./fields.ts";
import { ControllerCommand } from "./parts/controller.ts";
import { ResultWarning } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** Whether a stated voltage is that of the unloaded supply, or held at the controllers whatever they draw. */
export const VoltageKind = z.enum(["openCircuit", "bus"]);
export type VoltageKind = z.infer<typeof VoltageKind>;

export const ControlTableRequest = z
  .strictObject({
    train: DriveTrain,
    voltages: z
      .array(si(z.number().positive(), { symbol: "U", unit: "V", text: "Supply voltage" }))
      .min(1)
      .max(24)
      .exactOptional()
      .describe("Supply voltages that the table is for; the open-circuit voltage of the supply if absent"),
    voltageKind: VoltageKind.default("openCircuit").describe(
      "openCircuit: sag of pack, leads and tether is worked out; bus: the voltage is held at the controllers",
    ),
    steps: z.int().min(2).max(200).default(20).describe("Steps of throttle from where the motor starts to the end"),
    asternEstimate: AsternEstimate.exactOptional().describe(
      "Stated shares for a propeller without coefficients astern; without them the table ends at stop",
    ),
  })
  .meta({ id: "ControlTableRequest" });
export type ControlTableRequest = z.infer<typeof ControlTableRequest>;

/** One command and what one thruster does at it, at rest. Astern, throttle, thrust and rotation rate are negative. */
export const ControlRow = z
  .strictObject({
    command: z.number().describe("Pulse, µs"),
    throttle: number("delta", "1", "Throttle, -1 to 1"),
    zone: z.enum(["astern", "standing", "ahead"]).describe("standing: dead band, or too little to turn the motor"),
    thrust: number("T", "N", "Thrust of one thruster"),
    thrustUncertainty: si(z.number().min(0).nullable(), {
      symbol: "u(T)",
      unit: "N",
      text: "Standard uncertainty of the thrust; null where no input had a doubt",
    }),
    motorCurrent: number("I_m", "A", "Motor current"),
    supplyCurrent: number("I_s", "A", "Current from the supply, all thrusters and the hotel load"),
    rotationRate: number("n", "rev/s", "Rotation rate of the propeller"),
    electricalPower: number("P_e", "W", "Electrical power into one controller"),
  })
  .meta({ id: "ControlRow" });
export type ControlRow = z.infer<typeof ControlRow>;

/** The last command of a direction. */
export const ControlEnd = z
  .strictObject({
    command: z.number().describe("Pulse, µs"),
    throttle: number("delta", "1", "Throttle, 0 to 1"),
    thrust: number("T", "N", "Greatest thrust, astern negative"),
    endedBy: z.enum([...LIMIT_NAMES, "full throttle"]).describe("What ends the table in this direction"),
  })
  .meta({ id: "ControlEnd" });
export type ControlEnd = z.infer<typeof ControlEnd>;

export const ControlBlock = z
  .strictObject({
    voltage: number("U", "V", "Supply voltage, open-circuit or held, as the table says"),
    rows: z.array(ControlRow).min(1).describe("From full astern to full ahead, thrust rising"),
    ahead: ControlEnd,
    astern: ControlEnd.nullable().describe("Null where the thruster can not be run astern"),
  })
  .meta({ id: "ControlBlock" });
export type ControlBlock = z.infer<typeof ControlBlock>;

/** Commands against thrust for each supply voltage; between commands and between voltages straight lines hold. */
export const ControlTable = z
  .strictObject({
    command: ControllerCommand,
    voltageKind: VoltageKind,
    blocks: z.array(ControlBlock).min(1).describe("One for each voltage, rising"),
    grounds: z.array(DriveGround).describe("What limits and estimates rest on, of the direction ahead"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "ControlTable" });
export type ControlTable = z.infer<typeof ControlTable>;

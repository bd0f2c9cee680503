import { z } from "zod";
import { si } from "./fields.ts";
import { ResultWarning, uncertainSi } from "./uncertain.ts";

/** Steady running of a motor, whether or not a thrust was measured. */
export const ElectricalPlateau = z
  .strictObject({
    firstLine: z.int().min(1).describe("First line of the file that it rests on"),
    lastLine: z.int().min(1).describe("Last line of the file that it rests on"),
    start: si(z.number().nullable(), { symbol: "t", unit: "s", text: "Start; null in a table without time" }),
    end: si(z.number().nullable(), { symbol: "t", unit: "s", text: "End; null in a table without time" }),
    command: z.number().nullable().describe("Mean command in the unit of its column"),
    rotationRate: uncertainSi({ symbol: "n", unit: "rev/s", text: "Rotation rate of the shaft" }),
    voltage: uncertainSi({ symbol: "U", unit: "V", text: "Supply voltage" }),
    current: uncertainSi({ symbol: "I", unit: "A", text: "Supply current, reading at rest taken off" }),
    torque: uncertainSi({ symbol: "Q", unit: "N·m", text: "Shaft torque after tare" }).nullable(),
  })
  .meta({ id: "ElectricalPlateau" });
export type ElectricalPlateau = z.infer<typeof ElectricalPlateau>;

/** What a run says of the motor: voltage, current and speed of its plateaus. Thrust is not needed. */
export const ElectricalRun = z
  .strictObject({
    fileName: z.string(),
    plateaus: z.array(ElectricalPlateau),
    commandUnit: z.string().nullable().describe("Unit of the command column; null without one"),
    idleCommand: z.number().nullable().describe("Command at which the motor stands"),
    currentAtRest: uncertainSi({
      symbol: "I_r",
      unit: "A",
      text: "Current reading with the motor at rest, taken off every plateau; its doubt is the meter's zero",
    }).nullable(),
    calibration: z
      .partialRecord(z.enum(["voltage", "current", "rotationRate", "torque"]), z.number().min(0))
      .describe("Relative standard uncertainty of each channel, common to the run"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "ElectricalRun" });
export type ElectricalRun = z.infer<typeof ElectricalRun>;

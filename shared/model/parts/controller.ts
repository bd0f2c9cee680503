import { z } from "zod";
import { Name, Note, si } from "../fields.ts";
import { Bought } from "./bought.ts";

/** Command of a controller as pulses, µs. The defaults are common practice, no source. */
export const ControllerCommand = z
  .strictObject({
    stop: z.number().positive().max(20000).default(1500).describe("Pulse at which the motor stands, µs"),
    fullForward: z.number().positive().max(20000).default(1900).describe("Pulse of full throttle ahead, µs"),
    fullReverse: z
      .number()
      .positive()
      .max(20000)
      .nullable()
      .default(1100)
      .describe("Pulse of full throttle astern, µs; null: it turns one way only"),
    deadBand: z
      .number()
      .min(0)
      .max(2000)
      .default(25)
      .describe("Distance from the stop pulse, on either side, up to which the motor stands, µs"),
  })
  .meta({ id: "ControllerCommand" });
export type ControllerCommand = z.infer<typeof ControllerCommand>;

export const Controller = z
  .strictObject({
    name: Name,
    resistance: si(z.number().min(0), { symbol: "R_c", unit: "Ω", text: "Resistance in the motor current path" }),
    currentLimit: si(z.number().positive(), { symbol: "I_max", unit: "A", text: "Continuous current" }).exactOptional(),
    voltageLimit: si(z.number().positive(), {
      symbol: "U_max",
      unit: "V",
      text: "Greatest supply voltage",
    }).exactOptional(),
    freewheelVoltage: si(z.number().min(0).max(5), {
      symbol: "U_f",
      unit: "V",
      text: "Voltage lost while the current freewheels at part throttle; 0 if absent",
    }).exactOptional(),
    switchingLoss: si(z.number().min(0).max(0.5), {
      symbol: "kappa",
      unit: "1",
      text: "Switching loss at part throttle, as a share of supply voltage times motor current; 0 if absent",
    }).exactOptional(),
    standbyPower: si(z.number().min(0), {
      symbol: "P_0",
      unit: "W",
      text: "Power the controller draws by itself; 0 if absent",
    }).exactOptional(),
    command: ControllerCommand.exactOptional().describe(
      "What the controller takes as a command; usual values if absent",
    ),
    ...Bought,
    note: Note.default(""),
  })
  .meta({ id: "Controller" });
export type Controller = z.infer<typeof Controller>;

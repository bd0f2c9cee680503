import { z } from "zod";
import { STANDARD_GRAVITY } from "../quantity/constants.ts";
import { Name, Note, si } from "./fields.ts";

/** Channels of a log that an instrument can stand behind. */
export const InstrumentRole = z.enum(["thrust", "torque", "voltage", "current", "rotationRate"]);
export type InstrumentRole = z.infer<typeof InstrumentRole>;

/** "Within ± this", every value inside equally likely: its standard uncertainty is the half-width over √3. */
const tolerance = (text: string) =>
  z.number().min(0).max(0.5).default(0).describe(`${text}, relative half-width: 0.005 means within 0.5 %`);

export const Arm = z
  .strictObject({
    length: si(z.number().positive().max(20), { symbol: "l", unit: "m", text: "Length from the pivot or shaft" }),
    tolerance: si(z.number().min(0).max(1), { symbol: "Δl", unit: "m", text: "Half-width the length lies within" }),
  })
  .meta({ id: "Arm" });
export type Arm = z.infer<typeof Arm>;

/** A point as it was typed, in the units of its table. The order tells loading from unloading. */
export const CalibrationPoint = z
  .strictObject({
    applied: z.number().describe("What was applied, in the unit of the table"),
    reading: z.number().describe("What the instrument read, in the unit of the table"),
  })
  .meta({ id: "CalibrationPoint" });
export type CalibrationPoint = z.infer<typeof CalibrationPoint>;

const table = {
  appliedUnit: z.string().trim().min(1).max(20).describe("Unit of what was applied, e.g. g"),
  readingUnit: z.string().trim().max(20).default("").describe("Unit of the readings, e.g. gf or counts"),
  points: z.array(CalibrationPoint).min(3).max(500).describe("In the order in which they were taken"),
};
const resistance = (symbol: string, text: string) => si(z.number().positive(), { symbol, unit: "Ω", text });

/** How an instrument was calibrated: the raw data of one method. Factor, zero and doubt are always worked out of it. */
export const CalibrationMethod = z
  .discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("deadWeights"),
      ...table,
      appliedTolerance: tolerance("The weights, all off alike"),
      gravity: si(z.number().min(9.7).max(9.9), {
        symbol: "g",
        unit: "m/s²",
        text: "Gravity where the weights were hung",
      }).default(STANDARD_GRAVITY),
      lever: z
        .strictObject({ scaleArm: Arm, propellerArm: Arm })
        .exactOptional()
        .describe("Arms, where the weights lay on the scale itself; absent: they pulled where the propeller pulls"),
      arm: Arm.exactOptional().describe("Arm of the weights about the shaft, where a torque was applied"),
    }),
    z.strictObject({
      kind: z.literal("lever"),
      scaleArm: Arm,
      propellerArm: Arm,
      readingTolerance: tolerance("The scale itself"),
    }),
    z.strictObject({
      kind: z.literal("torqueArm"),
      readingUnit: z.string().trim().min(1).max(20).describe("Unit of the force that the log holds, e.g. gf"),
      arm: Arm,
      readingTolerance: tolerance("The scale itself"),
    }),
    z.strictObject({ kind: z.literal("comparison"), ...table, appliedTolerance: tolerance("The reference meter") }),
    z.strictObject({
      kind: z.literal("reference"),
      unit: z.string().trim().min(1).max(20).describe("Unit of both readings"),
      applied: z.number().describe("What the reference meter read, in the stated unit"),
      reading: z.number().describe("What the log read at the same time, in the stated unit"),
      appliedTolerance: tolerance("The reference meter"),
    }),
    z.strictObject({
      kind: z.literal("divider"),
      upperResistance: resistance("R_1", "Resistor from the supply to the tap"),
      lowerResistance: resistance("R_2", "Resistor from the tap to ground"),
      resistorTolerance: tolerance("Each resistor"),
    }),
    z.strictObject({
      kind: z.literal("markers"),
      pulsesPerTurn: z.int().min(1).max(1000).describe("Blades or markers that pass in one turn"),
    }),
  ])
  .meta({ id: "CalibrationMethod" });
export type CalibrationMethod = z.infer<typeof CalibrationMethod>;
export type MethodKind = CalibrationMethod["kind"];

/** The methods that make sense for each channel. */
export const METHODS_OF: { readonly [R in InstrumentRole]: readonly MethodKind[] } = {
  thrust: ["deadWeights", "lever"],
  torque: ["deadWeights", "torqueArm"],
  voltage: ["divider", "reference", "comparison"],
  current: ["comparison", "reference"],
  rotationRate: ["markers", "comparison"],
};

/** A measuring instrument of a stand, shared by the runs that were measured with it. */
export const Instrument = z
  .strictObject({
    name: Name,
    role: InstrumentRole.describe("Channel of a log that it stands behind"),
    calibration: CalibrationMethod,
    resolution: z
      .number()
      .positive()
      .exactOptional()
      .describe("Smallest step of its reading, in the unit of the readings; absent: as the digits show"),
    note: Note.default(""),
  })
  .refine(({ role, calibration }) => METHODS_OF[role].includes(calibration.kind), {
    path: ["calibration", "kind"],
    error: "this way of calibrating does not belong to this channel",
  })
  .meta({ id: "Instrument" });
export type Instrument = z.infer<typeof Instrument>;

/** An instrument with its identity: runs that share the identity share the error of its calibration. */
export interface UsedInstrument {
  readonly id: string;
  readonly instrument: Instrument;
}
export type UsedInstruments = { readonly [R in InstrumentRole]?: UsedInstrument };

import { z } from "zod";
import { si } from "./fields.ts";
import { FluidState } from "./fluid.ts";

/** What a column of a log can stand for. `ignore` says that a person looked at it and does not want it used. */
export const ColumnRole = z.enum([
  "time",
  "command",
  "thrust",
  "torque",
  "rotationRate",
  "voltage",
  "current",
  "electricalPower",
  "temperature",
  "ignore",
]);
export type ColumnRole = z.infer<typeof ColumnRole>;

export const ColumnUse = z
  .strictObject({
    column: z.int().min(0).describe("Index of the column in the file, from 0"),
    role: ColumnRole,
    unit: z.string().max(20).describe("Unit the numbers are written in, e.g. gf, erpm, us"),
  })
  .meta({ id: "ColumnUse" });
export type ColumnUse = z.infer<typeof ColumnUse>;

/** A straight-line correction of one channel: true = (reading - offset) × factor. */
export const ChannelCorrection = z
  .strictObject({
    factor: z.number().default(1).describe("Multiplier, lever ratio included; negative turns the sign round"),
    offset: z.number().default(0).describe("Reading at a true zero, in the unit of the column"),
    relativeUncertainty: z
      .number()
      .min(0)
      .max(1)
      .default(0)
      .describe("Relative standard uncertainty of the factor, common to all points of the run"),
    resolution: z.number().min(0).exactOptional().describe("Smallest step of the reading, in the unit of the column"),
  })
  .meta({ id: "ChannelCorrection" });
export type ChannelCorrection = z.infer<typeof ChannelCorrection>;

const Span = z.strictObject({
  start: si(z.number(), { symbol: "t", unit: "s", text: "Start, time in the log" }),
  end: si(z.number(), { symbol: "t", unit: "s", text: "End, time in the log" }),
});

/** Everything a person decided about a log. Bytes + recipe + propeller give every derived number again. */
export const Recipe = z
  .strictObject({
    columns: z.array(ColumnUse).describe("What each used column stands for"),
    polePairs: z
      .int()
      .min(1)
      .max(60)
      .exactOptional()
      .describe("Magnet pole pairs, where the log counts electrical turns"),
    fluid: FluidState.describe("What the propeller turned in during the run"),
    corrections: z
      .partialRecord(ColumnRole, ChannelCorrection)
      .default({})
      .describe("Calibration of a channel; absent: readings are taken as they are"),
    tare: z
      .discriminatedUnion("mode", [
        z.strictObject({ mode: z.literal("zeroThrottle") }),
        z.strictObject({ mode: z.literal("windows"), windows: z.array(Span).min(1) }),
        z.strictObject({ mode: z.literal("none") }),
      ])
      .default({ mode: "zeroThrottle" }),
    plateaus: z
      .discriminatedUnion("mode", [
        z.strictObject({
          mode: z.literal("automatic"),
          minimumDuration: si(z.number().positive(), {
            symbol: "t",
            unit: "s",
            text: "Shortest plateau",
          }).exactOptional(),
        }),
        z.strictObject({ mode: z.literal("spans"), spans: z.array(Span).min(1) }),
      ])
      .default({ mode: "automatic" }),
    leftOut: z
      .array(z.strictObject({ ...Span.shape, reason: z.string().trim().min(1).max(200) }))
      .default([])
      .describe("Plateaus whose middle lies in such a span are shown but not fitted; each has its reason"),
    motorId: z.uuid().exactOptional().describe("Motor on the stand; gives shaft power where no torque was measured"),
    controllerId: z.uuid().exactOptional().describe("Controller on the stand"),
  })
  .meta({ id: "Recipe" });
export type Recipe = z.infer<typeof Recipe>;

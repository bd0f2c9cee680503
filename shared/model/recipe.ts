import { z } from "zod";
import { si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { InstrumentRole } from "./instrument.ts";
import { LogReading } from "./reading.ts";
import { StandFacts } from "./stand.ts";

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
  "advanceSpeed",
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

/**
 * How a plateau set by hand came about. Ones that the search found before the first edit keep what found them, so that
 * an edit of one plateau says nothing about the others.
 */
const PlateauOrigin = z.enum(["command", "rotationRate", "moved", "split", "merged", "added"]);

const Reason = z.string().trim().min(1).max(200);

/** How the zero goes from one tare window to the next. */
const TareShape = z
  .enum(["piecewise", "line"])
  .exactOptional()
  .describe(
    "piecewise (where absent): straight from each window to the next; line: one least-squares line through all windows",
  );

const speedUncertainty = z
  .number()
  .min(0)
  .max(1)
  .default(0)
  .describe("Relative standard uncertainty of the speeds, common to all points of the run");

/** Advance speeds where no column of the log holds them; positive ahead. */
export const AdvanceSpeeds = z
  .discriminatedUnion("mode", [
    z.strictObject({
      mode: z.literal("constant"),
      speed: si(z.number(), { symbol: "V", unit: "m/s", text: "One speed for the whole run" }),
      relativeUncertainty: speedUncertainty,
    }),
    z.strictObject({
      mode: z.literal("spans"),
      spans: z
        .array(
          z.strictObject({
            ...Span.shape,
            speed: si(z.number(), { symbol: "V", unit: "m/s", text: "Speed during the span" }),
          }),
        )
        .min(1)
        .describe("Speed of the plateaus whose middle lies in the span; outside all spans: at rest"),
      relativeUncertainty: speedUncertainty,
    }),
  ])
  .meta({ id: "AdvanceSpeeds" });
export type AdvanceSpeeds = z.infer<typeof AdvanceSpeeds>;

/** Everything a person decided about a log. Bytes + recipe + propeller give every derived number again. */
export const Recipe = z
  .strictObject({
    columns: z.array(ColumnUse).describe("What each used column stands for"),
    reading: LogReading.exactOptional().describe("How the text is read, where a person said otherwise"),
    polePairs: z
      .int()
      .min(1)
      .max(60)
      .exactOptional()
      .describe("Magnet pole pairs, where the log counts electrical turns"),
    fluid: FluidState.describe("What the propeller turned in during the run"),
    fluidAssumed: z
      .literal(true)
      .exactOptional()
      .describe("Nobody stated the fluid: what stands there was taken as likely, and every result says so"),
    corrections: z
      .partialRecord(ColumnRole, ChannelCorrection)
      .default({})
      .describe("Calibration of a channel; absent: readings are taken as they are"),
    instrumentIds: z
      .partialRecord(InstrumentRole, z.uuid())
      .exactOptional()
      .describe("Instrument behind a channel; its calibration takes the place of the correction"),
    tare: z
      .discriminatedUnion("mode", [
        z.strictObject({ mode: z.literal("zeroThrottle"), shape: TareShape }),
        z.strictObject({ mode: z.literal("windows"), windows: z.array(Span).min(1), shape: TareShape }),
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
        z.strictObject({
          mode: z.literal("spans").describe("Set by hand: nothing else in the recipe moves them"),
          spans: z.array(z.strictObject({ ...Span.shape, origin: PlateauOrigin.exactOptional() })).min(1),
        }),
        z.strictObject({
          mode: z.literal("sweep").describe("A slow ramp: regression on the whole trace, no plateaus"),
        }),
      ])
      .default({ mode: "automatic" }),
    stand: StandFacts.exactOptional().describe("What a person stated of the stand and its water; absent: nothing"),
    leftOut: z
      .array(
        z.union([
          z.strictObject({ ...Span.shape, reason: Reason }),
          z.strictObject({
            line: z.int().min(1).describe("Line of the file, in a table without a clock"),
            reason: Reason,
          }),
        ]),
      )
      .default([])
      .describe(
        "Plateaus whose middle lies in such a span, or that rest on such a line, are shown but not fitted; each has its reason",
      ),
    advanceSpeeds: AdvanceSpeeds.exactOptional().describe(
      "Speed of the propeller through the water, where no column has it",
    ),
    advanceOrder: z
      .int()
      .min(1)
      .max(4)
      .exactOptional()
      .describe("Order of the polynomials of K_T and C_P in the advance ratio; absent: chosen by the points"),
    motorId: z.uuid().exactOptional().describe("Motor on the stand; gives shaft power where no torque was measured"),
    controllerId: z.uuid().exactOptional().describe("Controller on the stand"),
  })
  .meta({ id: "Recipe" });
export type Recipe = z.infer<typeof Recipe>;

import { z } from "zod";
import { si } from "./fields.ts";
import { ResultWarning } from "./uncertain.ts";

const number = (symbol: string, text: string, unit = "1") => si(z.number(), { symbol, unit, text });

const pitchRatio = si(z.number().positive().max(3), { symbol: "P/D", unit: "1", text: "Pitch ratio" });

const openScrew = {
  family: z.literal("wageningen-b"),
  blades: z.int().min(2).max(7).describe("Number of blades"),
  areaRatio: si(z.number().positive().max(2), { symbol: "A_E/A_0", unit: "1", text: "Expanded area ratio" }),
};
const nozzleScrew = { family: z.enum(["ka-4-70-19a", "ka-5-75-19a"]) };

/** Open screws of the Wageningen B series. */
export const WageningenB = z.strictObject({ ...openScrew, pitchRatio }).meta({ id: "WageningenB" });
export type WageningenB = z.infer<typeof WageningenB>;

/** Screws with wide tips in a nozzle: four blades of area ratio 0.70, or five of 0.75. */
export const NozzleScrew = z.strictObject({ ...nozzleScrew, pitchRatio }).meta({ id: "NozzleScrew" });
export type NozzleScrew = z.infer<typeof NozzleScrew>;

/** A propeller of a published series. */
export const SeriesPropeller = z
  .discriminatedUnion("family", [WageningenB, NozzleScrew])
  .meta({ id: "SeriesPropeller" });
export type SeriesPropeller = z.infer<typeof SeriesPropeller>;

/** A series with its pitch still open. */
export const SeriesWithoutPitch = z
  .discriminatedUnion("family", [z.strictObject(openScrew), z.strictObject(nozzleScrew)])
  .meta({ id: "SeriesWithoutPitch" });
export type SeriesWithoutPitch = z.infer<typeof SeriesWithoutPitch>;

/** Whether numbers outside the range the series was tested over are wanted; they are always flagged. */
export const outsideRange = z
  .boolean()
  .default(false)
  .describe("Compute outside the range the series was tested over too; always flagged");

const SERIES_NUMBERS = {
  advanceRatio: number("J", "Advance ratio V/(n D)"),
  thrustCoefficient: number("K_T", "Thrust coefficient, of propeller and nozzle together"),
  torqueCoefficient: number("K_Q", "Torque coefficient"),
  efficiency: si(z.number().nullable(), {
    symbol: "eta_O",
    unit: "1",
    text: "Efficiency J K_T/(2π K_Q); null where the torque is not positive",
  }),
  idealEfficiency: si(z.number().nullable(), {
    symbol: "eta_i",
    unit: "1",
    text: "What momentum theory allows at this loading; null without thrust of the blades",
  }),
} as const;

/** Coefficients of a series propeller at one advance ratio. */
export const OpenWaterPoint = z
  .strictObject({
    ...SERIES_NUMBERS,
    nozzleThrustCoefficient: number("K_TN", "Thrust coefficient of the nozzle alone").exactOptional(),
    propellerThrustCoefficient: number("K_TP", "Thrust coefficient of the blades alone").exactOptional(),
  })
  .meta({ id: "OpenWaterPoint" });
export type OpenWaterPoint = z.infer<typeof OpenWaterPoint>;

export const SeriesCurveRequest = z
  .strictObject({
    series: SeriesPropeller,
    reynolds: si(z.number().positive(), {
      symbol: "Re",
      unit: "1",
      text: "Reynolds number of the section at 0.75 of the radius; corrects the B series above 2e6",
    }).exactOptional(),
    points: z.int().min(2).max(500).default(41).describe("Points of the curve from J = 0 to where the thrust ends"),
    outsideRange,
  })
  .meta({ id: "SeriesCurveRequest" });
export type SeriesCurveRequest = z.infer<typeof SeriesCurveRequest>;

/** The open-water curve of a series propeller from bollard to zero thrust. */
export const SeriesCurve = z
  .strictObject({
    points: z.array(OpenWaterPoint).min(2),
    zeroThrust: number("J_0", "Advance ratio at which the thrust ends"),
    peak: z
      .strictObject({
        advanceRatio: number("J", "Advance ratio of the best efficiency"),
        efficiency: number("eta_O", "Best efficiency"),
      })
      .describe("Best efficiency on the curve"),
    staticMerit: number("FM", "Static merit at bollard: ideal over real shaft power"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "SeriesCurve" });
export type SeriesCurve = z.infer<typeof SeriesCurve>;

export const SeriesGeometryRequest = z
  .strictObject({
    series: WageningenB,
    diameter: si(z.number().positive().max(1), { symbol: "D", unit: "m", text: "Diameter over the blade tips" }),
    outsideRange,
  })
  .meta({ id: "SeriesGeometryRequest" });
export type SeriesGeometryRequest = z.infer<typeof SeriesGeometryRequest>;

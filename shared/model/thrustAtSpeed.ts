import { z } from "zod";
import { AdvanceCurve } from "./advance.ts";
import { nozzleAreaRatio } from "./disc.ts";
import { si } from "./fields.ts";
import { outsideRange, SeriesPropeller } from "./seriesPropeller.ts";
import { ResultWarning, uncertainSi } from "./uncertain.ts";

const positive = (symbol: string, unit: string, text: string) => si(z.number().positive(), { symbol, unit, text });
const least0 = (symbol: string, unit: string, text: string) => si(z.number().min(0), { symbol, unit, text });
const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** A coefficient that was measured at rest. */
export const MeasuredCoefficient = z
  .strictObject({
    value: z.number().positive().describe("Best estimate"),
    standardUncertainty: z.number().min(0).default(0).describe("Standard uncertainty"),
  })
  .meta({ id: "MeasuredCoefficient" });
export type MeasuredCoefficient = z.infer<typeof MeasuredCoefficient>;

export const AdvanceSource = z.enum(["openWater", "series", "bladeElements", "momentum"]);
export type AdvanceSource = z.infer<typeof AdvanceSource>;

const Polynomial = AdvanceCurve.pick({ coefficients: true, covariance: true });

const CurvePoint = z.strictObject({
  advanceRatio: least0("J", "1", "Advance ratio"),
  thrustCoefficient: number("K_T", "1", "Thrust coefficient"),
  torqueCoefficient: number("K_Q", "1", "Torque coefficient"),
});

export const ThrustAtSpeedRequest = z
  .strictObject({
    bollard: z
      .strictObject({
        thrustCoefficient: MeasuredCoefficient,
        torqueCoefficient: MeasuredCoefficient,
        correlation: si(z.number().min(-1).max(1), {
          symbol: "r",
          unit: "1",
          text: "Correlation of the two errors; 0 if absent",
        }).exactOptional(),
      })
      .describe("K_T and K_Q at rest, measured: every curve but a measured one is scaled to pass through them"),
    diameter: si(z.number().positive().max(20), { symbol: "D", unit: "m", text: "Diameter over the blade tips" }),
    density: positive("rho", "kg/m³", "Density of the fluid"),
    nozzleAreaRatio,
    openWater: z
      .strictObject({
        range: z
          .tuple([z.number().min(0), z.number().positive()])
          .describe("Least and greatest advance ratio that was measured"),
        thrustCurve: Polynomial.describe("K_T over J of the run"),
        powerCurve: Polynomial.describe("C_P over J of the run"),
      })
      .exactOptional()
      .describe("A measured run with advance speed"),
    series: SeriesPropeller.exactOptional().describe("A series propeller of the same kind"),
    bladeElements: z
      .array(CurvePoint)
      .min(2)
      .max(500)
      .exactOptional()
      .describe("Points of a curve computed by blade elements, from J = 0 up"),
    use: AdvanceSource.exactOptional().describe("Curve to use; the most trusted of those given if absent"),
    fixed: z.discriminatedUnion("given", [
      z.strictObject({ given: z.literal("rotationRate"), rotationRate: positive("n", "rev/s", "Rotation rate") }),
      z.strictObject({ given: z.literal("shaftPower"), shaftPower: positive("P", "W", "Shaft power") }),
    ]),
    speeds: z
      .array(least0("V_A", "m/s", "Advance speed"))
      .min(1)
      .max(500),
    outsideRange,
  })
  .meta({ id: "ThrustAtSpeedRequest" });
export type ThrustAtSpeedRequest = z.infer<typeof ThrustAtSpeedRequest>;

/** K_T and K_Q at one advance ratio, and where their doubt comes from. */
export const AdvanceSample = z
  .strictObject({
    advanceRatio: number("J", "1", "Advance ratio"),
    thrustCoefficient: uncertainSi({ symbol: "K_T", unit: "1", text: "Thrust coefficient" }),
    torqueCoefficient: uncertainSi({ symbol: "K_Q", unit: "1", text: "Torque coefficient" }),
    thrustParts: z
      .strictObject({
        bollard: z.number().describe("From the coefficient at rest, or from the measured curve"),
        spread: z.number().describe("From the differences between the curves that were given"),
        shape: z.number().describe("From the shape of the curve, which was not measured"),
      })
      .describe("Standard uncertainties in K_T"),
  })
  .meta({ id: "AdvanceSample" });
export type AdvanceSample = z.infer<typeof AdvanceSample>;

export const SpeedPoint = z
  .discriminatedUnion("state", [
    z.strictObject({
      state: z.literal("solved"),
      advanceSpeed: number("V_A", "m/s", "Advance speed"),
      advanceRatio: number("J", "1", "Advance ratio"),
      rotationRate: number("n", "rev/s", "Rotation rate"),
      thrust: uncertainSi({ symbol: "T", unit: "N", text: "Thrust" }),
      shaftPower: uncertainSi({ symbol: "P", unit: "W", text: "Shaft power" }),
      efficiency: number("eta_O", "1", "Efficiency T V/P"),
      idealThrust: number("T_max", "N", "Greatest thrust momentum theory allows at this shaft power and speed"),
    }),
    z.strictObject({
      state: z.literal("failed"),
      advanceSpeed: number("V_A", "m/s", "Advance speed"),
      reason: z.string().describe("Why there is no thrust to give"),
    }),
  ])
  .meta({ id: "SpeedPoint" });
export type SpeedPoint = z.infer<typeof SpeedPoint>;

export const ThrustAtSpeed = z
  .strictObject({
    source: AdvanceSource.describe("The curve that was used"),
    reason: z.string().describe("Why this one, and what it rests on"),
    curve: z.array(AdvanceSample).describe("The curve with its doubt, from J = 0 to where it ends"),
    zeroThrust: si(z.number().nullable(), {
      symbol: "J_0",
      unit: "1",
      text: "Advance ratio at which the thrust ends; null where the curve does not get there",
    }),
    alternatives: z
      .array(z.strictObject({ source: AdvanceSource, points: z.array(CurvePoint) }))
      .describe("The other curves through the same point at rest"),
    points: z.array(SpeedPoint).describe("Thrust at each of the speeds"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "ThrustAtSpeed" });
export type ThrustAtSpeed = z.infer<typeof ThrustAtSpeed>;

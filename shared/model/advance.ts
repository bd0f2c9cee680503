import { z } from "zod";
import { si } from "./fields.ts";
import { UncertainNumber, uncertainSi } from "./uncertain.ts";

const advanceRatio = { symbol: "J", unit: "1", text: "Advance ratio V/(n D)" };
const efficiency = { symbol: "eta_O", unit: "1", text: "Efficiency J K_T/(2π K_Q)" };
const thrustCoefficient = { symbol: "K_T", unit: "1", text: "Thrust coefficient" };
const powerCoefficient = { symbol: "C_P", unit: "1", text: "Power coefficient" };
const torqueCoefficient = { symbol: "K_Q", unit: "1", text: "Torque coefficient, C_P/2π" };

/** One plateau of a run with advance speed; the whole of the doubt of each number. */
export const AdvancePoint = z
  .strictObject({
    plateau: z.int().min(1).describe("Number of the plateau, from 1"),
    speed: uncertainSi({ symbol: "V", unit: "m/s", text: "Speed through the water" }),
    advanceRatio: uncertainSi(advanceRatio),
    thrustCoefficient: uncertainSi(thrustCoefficient),
    powerCoefficient: uncertainSi(powerCoefficient).nullable(),
    torqueCoefficient: uncertainSi(torqueCoefficient).nullable(),
    efficiency: uncertainSi(efficiency).nullable(),
    isAtRest: z.boolean().describe("Counts as bollard"),
    isFitted: z.boolean().describe("Counts in the curves"),
    residual: si(z.number(), {
      symbol: "r",
      unit: "1",
      text: "Distance from the K_T curve in standard uncertainties",
    }).nullable(),
  })
  .meta({ id: "AdvancePoint" });
export type AdvancePoint = z.infer<typeof AdvancePoint>;

/** A polynomial of a coefficient in the advance ratio, with the doubt of the single points. */
export const AdvanceCurve = z
  .strictObject({
    order: z.int().min(1).max(4).describe("Highest power of J"),
    orderFrom: z.enum(["stated", "informationCriterion", "fewPoints"]).describe("Who chose the order"),
    criteria: z
      .array(
        z.strictObject({
          order: z.int().describe("Highest power of J"),
          criterion: z.number().describe("AICc of it"),
        }),
      )
      .describe("Corrected information criterion of each order that was tried; less is better"),
    coefficients: z.array(z.number()).describe("Of 1, J, J² and so on"),
    covariance: z
      .array(z.array(z.number()))
      .describe("Of the coefficients, from what differs between points, widened; what all points share comes on top"),
    points: z.int().min(2).describe("Plateaus in the curve"),
    chiSquared: z.number().min(0).describe("Weighted residual sum of squares"),
    degreesOfFreedom: z.int().min(0).describe("Points less coefficients"),
    scatterRatio: z.number().min(1).describe("Factor the uncertainty was widened by"),
    converged: z.boolean(),
  })
  .meta({ id: "AdvanceCurve" });
export type AdvanceCurve = z.infer<typeof AdvanceCurve>;

/** The curves of a run with advance speed. */
export const AdvanceFit = z
  .strictObject({
    speedFrom: z.enum(["column", "recipe"]).describe("Where the speeds come from"),
    points: z.array(AdvancePoint),
    range: z.tuple([z.number(), z.number()]).describe("Least and greatest advance ratio in the curves"),
    thrustCurve: AdvanceCurve,
    powerCurve: AdvanceCurve.nullable(),
    samples: z
      .array(
        z.strictObject({
          advanceRatio: si(z.number(), advanceRatio),
          isExtrapolated: z.boolean().describe("Lies outside the measured advance ratios"),
          thrustCoefficient: uncertainSi(thrustCoefficient),
          powerCoefficient: uncertainSi(powerCoefficient).nullable(),
          torqueCoefficient: uncertainSi(torqueCoefficient).nullable(),
          efficiency: uncertainSi(efficiency).nullable(),
        }),
      )
      .describe("The curves in equal steps, with the whole of their doubt"),
    bollard: z
      .enum(["plateaus", "extrapolated"])
      .describe("What K_T and C_P of the run rest on: plateaus at rest, or the curve continued to J = 0"),
    zeroThrust: z
      .strictObject({ advanceRatio: uncertainSi(advanceRatio), isExtrapolated: z.boolean() })
      .nullable()
      .describe("Where the thrust falls to zero; null where the curve does not get there near the measured range"),
    peak: z
      .strictObject({
        efficiency: uncertainSi(efficiency),
        advanceRatio: UncertainNumber.describe("Advance ratio of the best efficiency"),
        isAtEdge: z.boolean().describe("The efficiency still rises where the measurements end"),
      })
      .nullable(),
  })
  .meta({ id: "AdvanceFit" });
export type AdvanceFit = z.infer<typeof AdvanceFit>;

import { z } from "zod";
import { NumberFactorName } from "./factor.ts";
import { ResultWarning, UncertainNumber } from "./uncertain.ts";

/** A number of a run that can be followed over a factor or taken apart by analysis of variance. */
export const RunQuantityName = z.enum([
  "thrustCoefficient",
  "powerCoefficient",
  "staticMerit",
  "thrustAtElectricalPower",
  "thrustAtThrottle",
]);
export type RunQuantityName = z.infer<typeof RunQuantityName>;

/** A quantity and, where it hangs on one, the condition it is taken at. */
export const QuantityChoice = z
  .strictObject({
    quantity: RunQuantityName.default("thrustCoefficient"),
    at: z
      .number()
      .positive()
      .exactOptional()
      .describe("Electrical power in W, or command in its own unit; absent: the middle of what all runs measured"),
  })
  .meta({ id: "QuantityChoice" });
export type QuantityChoice = z.infer<typeof QuantityChoice>;

export const TrendRequest = z
  .strictObject({
    factor: NumberFactorName,
    ...QuantityChoice.shape,
    order: z.int().min(1).max(2).exactOptional().describe("Order of the curve; absent: by the information criterion"),
    scale: z.enum(["linear", "logarithmic"]).default("linear").describe("Of the factor; the quantity is in logarithms"),
  })
  .meta({ id: "TrendRequest" });
export type TrendRequest = z.infer<typeof TrendRequest>;

const interval95 = z.tuple([z.number(), z.number()]).readonly();

const TrendPoint = z.strictObject({
  run: z.string().describe("Name of the run"),
  variant: z.string(),
  x: z.number().describe("Value of the factor, SI"),
  value: z.number().positive().describe("Value of the quantity, SI"),
  standardUncertainty: z.number().min(0).describe("Doubt with which the run was weighed, SI"),
  residual: z.number().describe("Distance from the curve, relative"),
});

/** Vertex of a curve of second order. */
export const Optimum = z
  .strictObject({
    kind: z.enum(["maximum", "minimum"]),
    at: UncertainNumber.describe("Factor at the vertex, SI; interval by first order (delta method)"),
    fieller95: interval95
      .nullable()
      .describe("The same by Fieller's method; null where the curvature can not be told from nought"),
    value: UncertainNumber.describe("Quantity there, SI"),
    inside: z.boolean().describe("It lies between the least and the greatest value measured"),
  })
  .meta({ id: "Optimum" });
export type Optimum = z.infer<typeof Optimum>;

/** A quantity over a continuous factor, one point a run. */
export const Trend = z
  .strictObject({
    factor: NumberFactorName,
    quantity: RunQuantityName,
    factorTitle: z.string(),
    factorUnit: z.string().describe("SI unit of the factor; 1 where it has none"),
    quantityTitle: z.string(),
    quantityUnit: z.string(),
    scale: z.enum(["linear", "logarithmic"]),
    points: z.array(TrendPoint),
    order: z.int().min(1).max(2).describe("Order of the curve"),
    orderBecause: z.enum(["stated", "criterion", "fewValues"]).describe("Why this order"),
    criteria: z
      .array(
        z.strictObject({
          order: z.int().min(0).max(2).describe("Order tried; 0 is no trend"),
          correctedCriterion: z.number().describe("AICc of Hurvich and Tsai"),
        }),
      )
      .describe("Corrected information criterion of each order that was tried; the least is best"),
    degreesOfFreedom: z.number().positive().describe("Of the scatter that the band rests on"),
    scatter: z.number().min(0).describe("Relative standard deviation of the runs about the curve"),
    lackOfFit: z
      .strictObject({
        F: z.number().min(0).describe("Mean square of the means about the curve over that inside equal values"),
        degreesOfFreedom: z.tuple([z.number(), z.number()]).readonly(),
        pValue: z.number().min(0).max(1).describe("Chance of such an F where the curve holds"),
      })
      .nullable()
      .describe(
        "Do the means of equal values lie further from the curve than re-mounting explains? Null without repeats",
      ),
    slopePValue: z
      .number()
      .min(0)
      .max(1)
      .describe(
        "Chance of such a curve if the factor had no effect; F test, of order 2 where the order was chosen by the criterion",
      ),
    band: z
      .array(
        z.strictObject({
          x: z.number().describe("Factor, SI"),
          value: z.number().describe("Quantity, SI"),
          interval95,
        }),
      )
      .describe(
        "The curve with its 95 % band, SI, from the least to the greatest value measured; where a line was chosen by the criterion, the band of the curve with a bend is taken in",
      ),
    change: z
      .strictObject({ value: z.number().positive().describe("Factor, 1 for no change"), interval95 })
      .describe(
        "Factor from the least to the greatest value measured, with the 95 % interval of the same curves as the band",
      ),
    sharedUncertainty: z
      .number()
      .min(0)
      .describe("Relative standard uncertainty that all runs share: it moves the whole curve and is not in the band"),
    optimum: Optimum.nullable().describe("Null for a straight line"),
    sentence: z.string(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "Trend" });
export type Trend = z.infer<typeof Trend>;

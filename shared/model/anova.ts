import { z } from "zod";
import { FactorName } from "./factor.ts";
import { QuantityChoice, RunQuantityName } from "./trend.ts";
import { ResultWarning, UncertainNumber } from "./uncertain.ts";

export const AnovaRequest = z
  .strictObject({
    factors: z.array(FactorName).min(1).max(2).describe("One or two, e.g. finish and pitchRatio, or finish and day"),
    ...QuantityChoice.shape,
  })
  .meta({ id: "AnovaRequest" });
export type AnovaRequest = z.infer<typeof AnovaRequest>;

export const AnovaRow = z
  .strictObject({
    source: z.string().describe("Factor, their interaction, residual or total, in words"),
    kind: z.enum(["factor", "interaction", "residual", "total"]),
    degreesOfFreedom: z.int().min(0).describe("Degrees of freedom"),
    sumOfSquares: z.number().min(0).describe("Of natural logarithms of the quantity"),
    meanSquare: z.number().min(0).nullable(),
    F: z.number().min(0).nullable(),
    pValue: z.number().min(0).max(1).nullable(),
  })
  .meta({ id: "AnovaRow" });
export type AnovaRow = z.infer<typeof AnovaRow>;

const Level = z.strictObject({ factor: FactorName, level: z.string().describe("Value, ready to show") });

/** Analysis of variance of a quantity's logarithms, one number a run. */
export const Anova = z
  .strictObject({
    factors: z.array(FactorName),
    quantity: RunQuantityName,
    quantityTitle: z.string(),
    quantityUnit: z.string(),
    design: z.enum(["balanced", "unbalanced", "emptyCells"]),
    sumsOfSquares: z.literal("II").describe("Each factor after the other, the interaction after both"),
    withInteraction: z.boolean().describe("False where no cell was repeated or a cell is empty"),
    rows: z.array(AnovaRow),
    spread: z
      .number()
      .min(0)
      .describe("Relative standard deviation from mounting to mounting: square root of the residual mean square"),
    spreadDegreesOfFreedom: z.int().min(1).describe("Degrees of freedom of that spread"),
    cells: z
      .array(
        z.strictObject({
          levels: z.array(Level),
          runs: z.int().min(0).describe("Runs in the cell"),
          mean: UncertainNumber.nullable().describe("Geometric mean of the cell, SI; null for an empty cell"),
        }),
      )
      .describe("Every combination of levels; the interval rests on the residual mean square"),
    effects: z
      .array(
        z.strictObject({
          factor: FactorName,
          level: z.string(),
          against: z.string().describe("First level of the factor"),
          ratio: UncertainNumber.describe("Of the quantity, the other factor allowed for"),
          adjustedPValue: z.number().min(0).max(1).describe("By Holm over all effects shown"),
        }),
      )
      .describe("Main effects by the model without interaction"),
    sentence: z.string(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "Anova" });
export type Anova = z.infer<typeof Anova>;

import { z } from "zod";
import { ResultWarning, UncertainNumber } from "./uncertain.ts";

/** What a run brings into a comparison: coefficients and where their doubt comes from. */
export const VariantGroup = z.strictObject({ name: z.string(), runs: z.array(z.uuid()).min(1) });

export const VariantSummary = z
  .strictObject({
    name: z.string(),
    runs: z.int().min(1).describe("Mountings counted"),
    thrustCoefficient: UncertainNumber.describe("Geometric mean of the runs"),
    runToRun: z
      .number()
      .min(0)
      .nullable()
      .describe("Relative standard deviation from run to run; null for a single run"),
  })
  .meta({ id: "VariantSummary" });
export type VariantSummary = z.infer<typeof VariantSummary>;

/** One quantity of the second variant over the first. */
export const VariantRatio = z
  .strictObject({
    value: z.number().describe("Variant over baseline, 1 where both are equal"),
    standardUncertainty: z.number().min(0).describe("Standard uncertainty of the ratio"),
    interval95: z.tuple([z.number(), z.number()]).readonly().describe("95 % interval of the ratio"),
    degreesOfFreedom: z.number().positive().describe("Degrees of freedom of the uncertainty"),
    pValue: z.number().min(0).max(1).describe("Two-sided, of the hypothesis that both are equal"),
    adjustedPValue: z.number().min(0).max(1).describe("The same after Holm's correction for all pairs shown together"),
    basis: z
      .enum(["replicates", "pooledReplicates", "withinRun"])
      .describe("What the doubt rests on: mountings of both, of one side only, or the scatter inside single runs"),
    fieller95: z.tuple([z.number(), z.number()]).readonly().nullable().describe("Fieller interval on plain means, a cross-check; told in the sentence where it differs"),
  })
  .meta({ id: "VariantRatio" });
export type VariantRatio = z.infer<typeof VariantRatio>;

export const Comparison = z
  .strictObject({
    baseline: VariantSummary,
    variant: VariantSummary,
    thrustCoefficientRatio: VariantRatio.describe("Thrust at equal rotation rate, variant over baseline"),
    equalShaftPowerRatio: VariantRatio.nullable().describe("Thrust at equal shaft power, variant over baseline"),
    staticMeritRatio: VariantRatio.nullable(),
    sentence: z.string().describe("The answer in words"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "Comparison" });
export type Comparison = z.infer<typeof Comparison>;

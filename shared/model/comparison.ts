import { z } from "zod";
import { ResultWarning, UncertainNumber } from "./uncertain.ts";

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

/** How the spread from mounting to mounting of two variants is put together where both have one. */
export const SpreadChoice = z
  .enum(["tested", "pooled", "separate"])
  .describe(
    "pooled: one spread for both variants (Student); separate: each its own (Welch); tested: one, unless an F test at 10 % tells them apart",
  );
export type SpreadChoice = z.infer<typeof SpreadChoice>;

const Spreads = z.strictObject({
  used: z.enum(["pooled", "separate"]),
  variant: z
    .number()
    .min(0)
    .describe(
      "Relative standard deviation from mounting to mounting, at least what the doubt inside the runs explains",
    ),
  baseline: z.number().min(0).describe("Likewise"),
  pValue: z.number().min(0).max(1).describe("Of the F test that both are the same"),
});

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
    spreads: Spreads.nullable().describe("Null where not both variants were mounted twice"),
    parts: z
      .strictObject({
        withinRuns: z.number().min(0).describe("From the doubt inside the runs"),
        remounting: z
          .number()
          .min(0)
          .nullable()
          .describe("What runs of one variant differ by beyond that; null where no variant was mounted twice"),
        shared: z.number().min(0).describe("From causes that the runs of one side share and the other does not"),
      })
      .describe("Relative standard uncertainties whose squares add up to that of the ratio"),
    fieller95: z
      .tuple([z.number(), z.number()])
      .readonly()
      .nullable()
      .describe("Fieller interval on plain means, a cross-check; told in the sentence where it differs"),
  })
  .meta({ id: "VariantRatio" });
export type VariantRatio = z.infer<typeof VariantRatio>;

/** What two variants can be asked for. Ratios are variant over baseline. */
export const ComparedQuantityName = z.enum([
  "thrustAtEqualRate",
  "thrustAtEqualShaftPower",
  "thrustAtEqualElectricalPower",
  "thrustAtEqualThrottle",
  "shaftPowerAtEqualThrust",
  "electricalPowerAtEqualThrust",
  "staticMerit",
]);
export type ComparedQuantityName = z.infer<typeof ComparedQuantityName>;

const Condition = z.strictObject({
  value: z.number().describe("Electrical power in W, thrust in N, or command in its own unit"),
  unit: z.string(),
  low: z.number().describe("Least value that every run of both sides covers; above high where they do not meet"),
  high: z.number().describe("Greatest value that every run of both sides covers"),
  extrapolated: z.boolean().describe("The value lies outside low to high"),
});

/** One answer of a comparison, or why there is none. */
export const ComparedQuantity = z
  .strictObject({
    quantity: ComparedQuantityName,
    title: z.string().describe("In words, e.g. thrust at equal electrical power"),
    ratio: VariantRatio.nullable(),
    asBuilt: VariantRatio.nullable().describe(
      "The same with the diameters as they are, in the same fluid; null where the diameters agree or it is measured so",
    ),
    condition: Condition.nullable().describe(
      "What is held equal; null where the ratio is the same at every value of it",
    ),
    along: z
      .array(
        z.strictObject({
          at: z.number().describe("Value of the condition, in its unit"),
          value: z.number().describe("Ratio there"),
          interval95: z.tuple([z.number(), z.number()]).readonly(),
        }),
      )
      .describe("The ratio from low to high of the condition; empty without condition"),
    why: z.string().describe("Why there is no ratio; empty where there is one"),
    sentence: z.string().describe("The answer in words"),
  })
  .meta({ id: "ComparedQuantity" });
export type ComparedQuantity = z.infer<typeof ComparedQuantity>;

export const Comparison = z
  .strictObject({
    baseline: VariantSummary,
    variant: VariantSummary,
    thrustCoefficientRatio: VariantRatio.describe("Thrust at equal rotation rate, variant over baseline"),
    equalShaftPowerRatio: VariantRatio.nullable().describe("Thrust at equal shaft power, variant over baseline"),
    staticMeritRatio: VariantRatio.nullable(),
    answers: z.array(ComparedQuantity).describe("Every quantity that can be compared, the three above among them"),
    sentence: z.string().describe("The answer in words"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "Comparison" });
export type Comparison = z.infer<typeof Comparison>;

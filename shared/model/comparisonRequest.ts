import { z } from "zod";
import { Anova, AnovaRequest } from "./anova.ts";
import { Comparison, SpreadChoice } from "./comparison.ts";
import { FactorName, FactorTable, RunFacts } from "./factor.ts";
import { Robustness } from "./robustness.ts";
import { JudgedClaim, ThrustClaim } from "./thrustClaim.ts";
import { Trend, TrendRequest } from "./trend.ts";
import { ResultWarning } from "./uncertain.ts";

/** What a run brings into a comparison: coefficients and where their doubt comes from. */
const VariantGroup = z.strictObject({ name: z.string(), runs: z.array(z.uuid()).min(1) });

/** Which runs a comparison takes, where the groups are not listed. */
export const RunFilter = z
  .strictObject({
    tags: z.array(z.string()).default([]).describe("Runs that carry all of these"),
    factors: z
      .array(z.strictObject({ factor: FactorName, text: z.string().describe("As the factor table shows it") }))
      .default([])
      .describe("Runs that have all of these values"),
  })
  .meta({ id: "RunFilter" });
export type RunFilter = z.infer<typeof RunFilter>;

/** What the answers of a comparison are taken at and how far they go. */
export const ComparisonQuestion = z.strictObject({
  pairs: z
    .enum(["baseline", "all"])
    .default("baseline")
    .describe("Every variant against the baseline, or every pair; p-values are adjusted over the pairs"),
  electricalPower: z
    .number()
    .positive()
    .exactOptional()
    .describe("W at which electrical powers are held equal; absent: the middle of what both sides cover"),
  thrust: z.number().positive().exactOptional().describe("N at which thrusts are held equal; absent: the middle"),
  throttle: z.number().positive().exactOptional().describe("Command held equal, in its own unit; absent: the middle"),
  spreads: SpreadChoice.default("tested"),
  claim: ThrustClaim.exactOptional().describe(
    "A claimed gain to judge; absent: the one that the project states, if any",
  ),
  trend: TrendRequest.exactOptional(),
  anova: AnovaRequest.exactOptional(),
  robustness: z.boolean().default(false).describe("Ask each pair again without each run, with other fits and plateaus"),
});
export type ComparisonQuestion = z.infer<typeof ComparisonQuestion>;

export const ComparisonRequest = z
  .strictObject({
    groups: z
      .array(VariantGroup)
      .min(2)
      .max(40)
      .exactOptional()
      .describe("Variants, each with the runs that were made of it; absent: made by groupBy"),
    groupBy: z
      .enum(["variant", "tags", ...FactorName.options])
      .exactOptional()
      .describe(
        "Makes a group of each value, or of runs with the same tags; runs that do not state it are left out and told",
      ),
    filter: RunFilter.exactOptional().describe("Runs that groupBy takes; absent: all runs with a propeller"),
    baseline: z
      .string()
      .exactOptional()
      .describe(
        "Name of the group to compare with; absent: the first of groups; where groupBy makes them the one that the project chose, else the one measured first",
      ),
    ...ComparisonQuestion.shape,
  })
  .meta({ id: "ComparisonRequest" });
export type ComparisonRequest = z.infer<typeof ComparisonRequest>;

export const ComparisonAnswer = z
  .strictObject({
    comparisons: z.array(Comparison),
    claim: JudgedClaim.nullable().describe("What the runs say of a claimed gain; null where nobody claims one"),
    factors: FactorTable,
    runs: z.array(RunFacts).describe("What is known of each run that was compared"),
    trend: Trend.nullable(),
    anova: Anova.nullable(),
    robustness: z.array(Robustness).describe("One a comparison, in the same order; empty where not asked for"),
    warnings: z.array(ResultWarning).describe("Of the question as a whole: runs that are in no group"),
  })
  .meta({ id: "ComparisonAnswer" });
export type ComparisonAnswer = z.infer<typeof ComparisonAnswer>;

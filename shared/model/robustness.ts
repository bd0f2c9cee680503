import { z } from "zod";
import { ResultWarning } from "./uncertain.ts";

/**
 * Ways of asking the same question again: without one run, with fits that wild points do not pull, or with another
 * choice of plateaus.
 */
export const RobustnessCheck = z.enum([
  "asAnswered",
  "leaveOneOut",
  "huberFit",
  "medianOfPlateaus",
  "upperHalf",
  "wayUp",
  "allPlateaus",
]);
export type RobustnessCheck = z.infer<typeof RobustnessCheck>;

export const RobustnessRow = z
  .strictObject({
    check: RobustnessCheck,
    title: z.string().describe("In words, e.g. without sanded-2.csv"),
    without: z.string().nullable().describe("The run that was left out"),
    value: z
      .number()
      .positive()
      .nullable()
      .describe("Ratio of thrust at equal rotation rate; null where it can not be told"),
    interval95: z.tuple([z.number(), z.number()]).readonly().nullable(),
    change: z.number().nullable().describe("Against the answer, in its own standard uncertainties"),
    claims: z.enum(["more", "less", "nothing"]).nullable().describe("What it would claim of the variant by itself"),
    agrees: z
      .boolean()
      .nullable()
      .describe("Inside the 95 % interval of the answer, and claims nothing that the answer does not"),
    why: z.string().describe("Why it can not be told; empty where it can"),
  })
  .meta({ id: "RobustnessRow" });
export type RobustnessRow = z.infer<typeof RobustnessRow>;

/** Does the answer of one comparison hold when the question is put another way? */
export const Robustness = z
  .strictObject({
    baseline: z.string(),
    variant: z.string(),
    rows: z.array(RobustnessRow).describe("The answer itself first"),
    holds: z.boolean().nullable().describe("All that could be told agree; null where none could"),
    sentence: z.string(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "Robustness" });
export type Robustness = z.infer<typeof Robustness>;

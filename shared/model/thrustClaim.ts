import { z } from "zod";
import { si } from "./fields.ts";

/** A gain that somebody claims for the variants of a project, for the measurements to judge. */
export const ThrustClaim = z
  .strictObject({
    factor: si(z.number().min(0.1).max(100), {
      symbol: "x",
      unit: "1",
      text: "Claimed: more than so many times the thrust of the baseline at equal rotation rate",
    }),
    source: z.string().trim().max(200).default("").describe("Who claims it, and where"),
  })
  .meta({ id: "ThrustClaim" });
export type ThrustClaim = z.infer<typeof ThrustClaim>;

/** What the measurements say of the claim, for each pair that was compared. */
export const JudgedClaim = z
  .strictObject({
    ...ThrustClaim.shape,
    verdicts: z
      .array(
        z.strictObject({
          baseline: z.string(),
          variant: z.string(),
          verdict: z
            .enum(["supported", "refuted", "open"])
            .describe("The whole 95 % interval lies above the factor, below it, or holds it"),
          sentence: z.string().describe("The verdict in words"),
        }),
      )
      .describe("One a comparison, in the same order"),
  })
  .meta({ id: "JudgedClaim" });
export type JudgedClaim = z.infer<typeof JudgedClaim>;

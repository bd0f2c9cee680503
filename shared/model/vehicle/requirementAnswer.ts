import { z } from "zod";
import { si } from "../fields.ts";
import { ResultWarning } from "../uncertain.ts";
import { LimitingPart } from "./motionAnswer.ts";
import { ToldNumber } from "./toldNumber.ts";

/** Fewest, most and usual draws of all inputs for the probability of a requirement. */
export const VEHICLE_DRAWS = { fewest: 100, most: 100_000, usual: 10_000 } as const;

export const VehicleDraws = z
  .strictObject({
    draws: z
      .int()
      .min(VEHICLE_DRAWS.fewest)
      .max(VEHICLE_DRAWS.most)
      .default(VEHICLE_DRAWS.usual)
      .describe("Times that all inputs are drawn"),
    seed: z.int().min(0).default(1).describe("The same seed gives the same draws"),
  })
  .meta({ id: "VehicleDraws" });
export type VehicleDraws = z.infer<typeof VehicleDraws>;

export const DemandName = z.enum(["speed", "depth", "climb", "lift", "endurance", "holdCurrent", "stoppingDistance"]);
export type DemandName = z.infer<typeof DemandName>;

const probability = (text: string) => si(z.number().min(0).max(1), { symbol: "p", unit: "1", text }).nullable();

/** One thing asked of a vehicle and whether it does it. */
export const DemandCheck = z
  .strictObject({
    demand: DemandName,
    name: z.string().describe("What is asked, in words"),
    unit: z.string(),
    needed: z.number().describe("Asked for, SI"),
    better: z.enum(["more", "less"]).describe("Whether more or less than asked is good"),
    found: ToldNumber.nullable().describe("What the vehicle does, SI; null: it can not, or it is not known"),
    margin: z.number().nullable().describe("Found over needed less 1, positive: better than asked"),
    met: z.boolean().describe("The best estimate meets it"),
    probability: probability(
      "Probability that it is met, of first order; null: not known, or first order does not hold",
    ),
    probabilityDrawn: probability("The same by draws of all inputs; null: not drawn"),
    certain: z.boolean().describe("The probability reaches the confidence asked for"),
    limitedBy: LimitingPart.nullable(),
    sentence: z.string(),
  })
  .meta({ id: "DemandCheck" });
export type DemandCheck = z.infer<typeof DemandCheck>;

export const RequirementCheck = z
  .strictObject({
    met: z.boolean().describe("Every best estimate meets what is asked"),
    certain: z.boolean().describe("Every probability reaches the confidence asked for"),
    confidence: z.number().describe("Probability that is asked of each demand, 0 to 1"),
    demands: z.array(DemandCheck),
    probabilityAll: probability("Probability that all are met together, by draws; null: not drawn"),
    draws: z
      .strictObject({
        draws: z.int().describe("Times that all inputs were drawn"),
        seed: z.int().describe("Start of the draws"),
        failed: z.int().describe("Draws that gave no state, such as a supply that collapses; they count as not met"),
      })
      .nullable(),
    sentence: z.string(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "RequirementCheck" });
export type RequirementCheck = z.infer<typeof RequirementCheck>;

import { z } from "zod";
import { DriveRequest, OPERATING_POINT_NUMBERS } from "./drive.ts";
import { ResultWarning } from "./uncertain.ts";

/** Fewest, most and usual draws. */
export const DRIVE_DRAWS = { fewest: 1000, most: 1_000_000, usual: 20_000 } as const;

export const DriveDraws = z
  .strictObject({
    draws: z
      .int()
      .min(DRIVE_DRAWS.fewest)
      .max(DRIVE_DRAWS.most)
      .default(DRIVE_DRAWS.usual)
      .describe("Times that all inputs are drawn"),
    seed: z.int().min(0).default(1).describe("The same seed gives the same draws"),
  })
  .meta({ id: "DriveDraws" });
export type DriveDraws = z.infer<typeof DriveDraws>;

export const DriveMonteCarloRequest = z
  .strictObject({ request: DriveRequest, drawing: DriveDraws })
  .meta({ id: "DriveMonteCarloRequest" });
export type DriveMonteCarloRequest = z.infer<typeof DriveMonteCarloRequest>;

const interval = z.tuple([z.number(), z.number()]).readonly();

/** Draws of one number of an operating point next to its first-order uncertainty. */
export const DriveDrawn = z
  .strictObject({
    quantity: z.enum(Object.keys(OPERATING_POINT_NUMBERS) as [keyof typeof OPERATING_POINT_NUMBERS]),
    mean: z.number().describe("Mean of the draws"),
    standardUncertainty: z.number().min(0).describe("Standard deviation of the draws"),
    interval95: interval.describe("Symmetric in probability"),
    shortest95: interval.describe("Shortest interval that holds 95 %"),
    firstOrder95: interval.describe("Interval by first-order propagation"),
    difference: z.number().min(0).describe("Greatest distance between ends of the two intervals"),
    tolerance: z.number().min(0).describe("Numerical tolerance of the standard uncertainty to one digit"),
    agrees: z.boolean().describe("The difference is within the tolerance: the first order holds"),
    settled: z.boolean().describe("More draws would not move the numbers by more than the tolerance"),
  })
  .meta({ id: "DriveDrawn" });
export type DriveDrawn = z.infer<typeof DriveDrawn>;

/** An operating point by propagation of distributions. */
export const DriveMonteCarlo = z
  .strictObject({
    draws: z.int().min(1).describe("Times that all inputs were drawn"),
    seed: z.int().min(0),
    used: z.int().min(0).describe("Draws that gave a point"),
    collapsed: z.int().min(0).describe("Draws in which the supply collapses"),
    beyondCurve: z.int().min(0).describe("Draws in which the propeller leaves its curve"),
    notPhysical: z.int().min(0).describe("Draws that are not physical, such as a negative resistance"),
    results: z.array(DriveDrawn).describe("Numbers of the point that the inputs leave doubtful, over the draws used"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "DriveMonteCarlo" });
export type DriveMonteCarlo = z.infer<typeof DriveMonteCarlo>;

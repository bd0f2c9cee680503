import { z } from "zod";
import { si } from "./fields.ts";
import { uncertainSi } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** A steady reading of the stand beside what the drive model gives at the same rotation rate and voltage. */
export const BenchDifferencePoint = z
  .strictObject({
    rotationRate: number("n", "rev/s", "Measured rotation rate"),
    voltage: number("U", "V", "Measured supply voltage"),
    thrust: number("T", "N", "Measured thrust"),
    measuredPower: uncertainSi({ symbol: "P_e", unit: "W", text: "Measured electrical power" }),
    predictedPower: number("P_e", "W", "Electrical power that the model gives at that rate and voltage"),
    ratio: uncertainSi({
      symbol: "r",
      unit: "1",
      text: "Measured over predicted power; its doubt is that of the readings alone",
    }),
    throttle: number("delta", "1", "Throttle that the model needs there"),
  })
  .meta({ id: "BenchDifferencePoint" });
export type BenchDifferencePoint = z.infer<typeof BenchDifferencePoint>;

/** How a drive model stands to the bench. */
export const BenchDifference = z
  .strictObject({
    points: z.array(BenchDifferencePoint),
    ratio: uncertainSi({
      symbol: "r",
      unit: "1",
      text: "Mean of measured over predicted power, the doubt of the model's inputs included",
    }).nullable(),
    spread: z.number().min(0).describe("Standard deviation of the ratios of the points"),
    agreement: z
      .strictObject({
        chiSquare: z.number().min(0).describe("Of the ratios about their weighted mean, by the doubt of the readings"),
        degreesOfFreedom: z.int().min(1),
        probability: z.number().min(0).max(1).describe("Chance of as much or more, if one ratio holds for all points"),
      })
      .nullable()
      .describe("Whether one ratio holds for all points; null for a single point"),
    sentence: z.string(),
  })
  .meta({ id: "BenchDifference" });
export type BenchDifference = z.infer<typeof BenchDifference>;

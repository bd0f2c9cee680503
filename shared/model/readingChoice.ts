import { z } from "zod";
import { si } from "./fields.ts";
import { ColumnRole } from "./recipe.ts";

const implied = (symbol: string, unit: string, text: string) => si(z.number().nullable(), { symbol, unit, text });

/** One way to read a column, and what it would mean for the propeller on the stand. */
export const ReadingOption = z
  .strictObject({
    unit: z.string().describe("Unit the numbers would be written in"),
    chosen: z.boolean().describe("The recipe reads the column like this"),
    verdict: z.enum(["possible", "unlikely", "impossible"]),
    greatestThrust: implied("T", "N", "Thrust at the strongest rows"),
    rotationRate: implied("n", "rev/s", "Rotation rate of the shaft at the strongest rows"),
    thrustCoefficient: implied("K_T", "1", "Thrust coefficient at the strongest rows"),
    shaftPower: implied("P", "W", "Power of the shaft at the strongest rows; of a torque column only").exactOptional(),
    sentence: z.string().describe("What this reading would mean, with its verdict"),
  })
  .meta({ id: "ReadingOption" });
export type ReadingOption = z.infer<typeof ReadingOption>;

/** A column that can be read in more than one way. */
export const ReadingChoice = z
  .strictObject({
    column: z.int().min(0).describe("Index of the column in the file, from 0"),
    header: z.string(),
    role: ColumnRole,
    electricalPower: implied("P_e", "W", "Electrical power at the strongest rows; null where it was not measured"),
    momentumLimit: implied("T_max", "N", "Greatest thrust that momentum theory allows for that power"),
    options: z.array(ReadingOption).min(2),
    recommended: z
      .string()
      .nullable()
      .describe("The unit of the only possible reading; null where several are possible"),
    sentence: z.string().describe("All of it in words"),
  })
  .meta({ id: "ReadingChoice" });
export type ReadingChoice = z.infer<typeof ReadingChoice>;

import { z } from "zod";
import { nozzleAreaRatio, staticMerit } from "./disc.ts";
import { si } from "./fields.ts";
import { ResultWarning } from "./uncertain.ts";

const positive = (symbol: string, unit: string, text: string) => si(z.number().positive(), { symbol, unit, text });

/** What is asked for: a thrust, or the thrust that a power makes. */
export const BollardDuty = z.discriminatedUnion("given", [
  z.strictObject({ given: z.literal("thrust"), thrust: positive("T", "N", "Bollard thrust wanted") }),
  z.strictObject({ given: z.literal("shaftPower"), shaftPower: positive("P", "W", "Shaft power") }),
  z.strictObject({
    given: z.literal("electricalPower"),
    electricalPower: positive("P_e", "W", "Electrical power of motor and controller"),
  }),
]);
export type BollardDuty = z.infer<typeof BollardDuty>;

export const BollardEstimateRequest = z
  .strictObject({
    duty: BollardDuty,
    diameter: si(z.number().positive().max(1), { symbol: "D", unit: "m", text: "Propeller diameter" }),
    density: positive("rho", "kg/m³", "Density of the fluid"),
    staticMerit,
    nozzleAreaRatio,
    driveEfficiency: si(z.number().positive().max(1), {
      symbol: "eta",
      unit: "1",
      text: "Shaft power over electrical power",
    }).default(0.75),
    voltage: si(z.number().positive().nullable(), {
      symbol: "U",
      unit: "V",
      text: "Supply voltage, for the current",
    }).default(null),
  })
  .meta({ id: "BollardEstimateRequest" });
export type BollardEstimateRequest = z.infer<typeof BollardEstimateRequest>;

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

export const BollardEstimate = z
  .strictObject({
    thrust: number("T", "N", "Bollard thrust at the stated merit"),
    idealThrust: number("T_max", "N", "Greatest thrust momentum theory allows at this shaft power"),
    shaftPower: number("P", "W", "Shaft power"),
    idealShaftPower: number("P_min", "W", "Least shaft power momentum theory allows for this thrust"),
    electricalPower: number("P_e", "W", "Electrical power"),
    supplyCurrent: si(z.number().nullable(), {
      symbol: "I",
      unit: "A",
      text: "Supply current; null without a voltage",
    }),
    thrustPerPower: number("T/P_e", "N/W", "Thrust over electrical power"),
    idealMerit: number("FM_max", "1", "Static merit of the ideal: 1 open, more in a nozzle"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "BollardEstimate" });
export type BollardEstimate = z.infer<typeof BollardEstimate>;

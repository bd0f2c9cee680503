import { z } from "zod";
import { si } from "./fields.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

export const PolarPoint = z
  .strictObject({
    angle: number("α", "rad", "Angle of attack of the chord line"),
    lift: number("C_L", "1", "Lift coefficient"),
    drag: number("C_D", "1", "Drag coefficient"),
  })
  .meta({ id: "PolarPoint" });
export type PolarPoint = z.infer<typeof PolarPoint>;

/** Measured or computed lift and drag of a section, at one or several Reynolds numbers; checked by `checkedPolar`. */
export const SectionPolar = z
  .strictObject({
    blocks: z
      .array(
        z.strictObject({
          reynolds: si(z.number().positive(), {
            symbol: "Re",
            unit: "1",
            text: "Reynolds number of the block; without it the only block serves for all",
          }).exactOptional(),
          points: z.array(PolarPoint).min(2).max(1000).describe("In order of the angle"),
        }),
      )
      .min(1)
      .max(30)
      .describe("In order of the Reynolds number"),
  })
  .meta({ id: "SectionPolar" });
export type SectionPolar = z.infer<typeof SectionPolar>;

export const SectionPolarRequest = z
  .strictObject({
    text: z
      .string()
      .min(1)
      .max(500_000)
      .describe("Delimited text: alpha with its unit, C_L, C_D, and Re where there are several blocks"),
  })
  .meta({ id: "SectionPolarRequest" });
export type SectionPolarRequest = z.infer<typeof SectionPolarRequest>;

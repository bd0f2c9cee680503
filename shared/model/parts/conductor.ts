import { z } from "zod";
import { si } from "../fields.ts";

/** Two wires, there and back. */
export const Conductor = z
  .strictObject({
    length: si(z.number().positive().max(5000), { symbol: "l", unit: "m", text: "Length one way" }),
    size: z
      .discriminatedUnion("given", [
        z.strictObject({
          given: z.literal("area"),
          area: si(z.number().positive().max(1e-3), { symbol: "A", unit: "m²", text: "Nominal copper section" }),
        }),
        z.strictObject({ given: z.literal("gauge"), gauge: z.int().min(0).max(40).describe("AWG number") }),
        z.strictObject({
          given: z.literal("resistance"),
          resistancePerLength: si(z.number().positive().max(100), {
            symbol: "R'",
            unit: "Ω/m",
            text: "Resistance of one conductor at 20 °C over its length",
          }),
        }),
      ])
      .describe("Copper of one conductor"),
    pairs: z.int().min(1).max(50).default(1).describe("Pairs of conductors in parallel"),
  })
  .meta({ id: "Conductor" });
export type Conductor = z.infer<typeof Conductor>;

import { z } from "zod";
import { si } from "./fields.ts";
import { ColumnRole } from "./recipe.ts";

/** Least and greatest value of each channel in equal steps of time: what a chart of a long log needs. */
export const Trace = z
  .strictObject({
    start: si(z.number(), { symbol: "t", unit: "s", text: "Start of the first step" }),
    end: si(z.number(), { symbol: "t", unit: "s", text: "End of the last step" }),
    times: z.array(z.number()).describe("Middle of each step, s; of raw samples their own time"),
    raw: z.literal(true).exactOptional().describe("The span is so short that each step is one sample of the log"),
    channels: z.array(
      z.strictObject({
        role: ColumnRole,
        header: z.string(),
        unit: z.string().describe("SI unit of the numbers; the command keeps the unit of its column"),
        low: z.array(z.number().nullable()).describe("Least value in each step; null where there is no sample"),
        high: z.array(z.number().nullable()).describe("Greatest value in each step"),
      }),
    ),
  })
  .meta({ id: "Trace" });
export type Trace = z.infer<typeof Trace>;

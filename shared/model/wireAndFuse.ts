import { z } from "zod";
import { si } from "./fields.ts";
import { ResultWarning } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const positive = (symbol: string, unit: string, text: string) => si(z.number().positive(), { symbol, unit, text });

export const WireAndFuseRequest = z
  .strictObject({
    continuousCurrent: positive("I", "A", "Continuous current"),
    length: si(z.number().positive().max(5000), { symbol: "l", unit: "m", text: "Length one way" }),
    voltage: positive("U", "V", "Bus voltage"),
    allowedDrop: si(z.number().positive().max(0.5), {
      symbol: "d",
      unit: "1",
      text: "Part of the bus voltage that may be lost, there and back",
    }).default(0.03),
    currentDensity: positive("J", "A/m²", "Current that the copper may carry over its section").default(5e6),
    temperature: si(z.number().min(233).max(423), {
      symbol: "T",
      unit: "K",
      text: "Temperature of the copper",
    }).default(293.15),
    packCurrent: positive("I_max", "A", "Continuous current of the pack").exactOptional(),
  })
  .meta({ id: "WireAndFuseRequest" });
export type WireAndFuseRequest = z.infer<typeof WireAndFuseRequest>;

/** One size of conductor under the stated current. */
export const WireChoice = z
  .strictObject({
    name: z.string().describe("As it is sold: 1.5 mm² or AWG 16"),
    area: number("A", "m²", "Copper section"),
    resistance: number("R", "Ω", "Resistance there and back"),
    drop: number("ΔU", "V", "Voltage lost there and back"),
    dropShare: number("d", "1", "The same over the bus voltage"),
    loss: number("P", "W", "Heat in the wire"),
    carries: number("I", "A", "Current that the stated density allows"),
  })
  .meta({ id: "WireChoice" });
export type WireChoice = z.infer<typeof WireChoice>;

/** The suggestion from one list of sizes; null where no size of the list is large enough. */
export const WireSuggestion = z
  .strictObject({
    list: z.enum(["metric", "gauge"]).describe("IEC 60228 class 5, or AWG"),
    byDrop: WireChoice.nullable().describe("Smallest that keeps to the allowed drop"),
    byCurrent: WireChoice.nullable().describe("Smallest that carries the continuous current"),
    byFuse: WireChoice.nullable().describe("Smallest that carries the rating of the fuse; null without a fuse"),
    chosen: WireChoice.nullable().describe("The largest of them"),
  })
  .meta({ id: "WireSuggestion" });
export type WireSuggestion = z.infer<typeof WireSuggestion>;

export const WireAndFuse = z
  .strictObject({
    wires: z.array(WireSuggestion).describe("One for each list of sizes"),
    fuse: si(z.number().nullable(), {
      symbol: "I_f",
      unit: "A",
      text: "Next usual fuse above 1.25 times the continuous current; null where there is none",
    }),
    fuseSeries: z.string().describe("Where the ratings of the fuses come from"),
    sentences: z.array(z.string()).describe("The suggestion in words, with what to beware of"),
    warnings: z.array(ResultWarning).describe("What can not be met, or contradicts itself"),
  })
  .meta({ id: "WireAndFuse" });
export type WireAndFuse = z.infer<typeof WireAndFuse>;

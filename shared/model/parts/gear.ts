import { z } from "zod";
import { Name, Note, si } from "../fields.ts";
import { Bought } from "./bought.ts";

export const Gear = z
  .strictObject({
    name: Name,
    ratio: si(z.number().positive().max(100), {
      symbol: "g",
      unit: "1",
      text: "Turns of the motor for one turn of the propeller",
    }),
    efficiency: si(z.number().positive().max(1), {
      symbol: "eta_g",
      unit: "1",
      text: "Share of the power let through",
    }),
    ...Bought,
    note: Note.default(""),
  })
  .meta({ id: "Gear" });
export type Gear = z.infer<typeof Gear>;

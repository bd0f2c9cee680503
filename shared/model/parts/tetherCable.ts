import { z } from "zod";
import { Name, Note, si } from "../fields.ts";
import { Bought } from "./bought.ts";
import { Conductor } from "./conductor.ts";

/** A cable from the surface: what it carries, and what drags on it. */
export const TetherCable = z
  .strictObject({
    name: Name,
    diameter: si(z.number().positive().max(0.2), { symbol: "d", unit: "m", text: "Outer diameter" }),
    conductor: Conductor.exactOptional().describe("Power conductors; absent: the tether carries no power"),
    currentLimit: si(z.number().positive(), { symbol: "I_max", unit: "A", text: "Continuous current" }).exactOptional(),
    weightInWater: si(z.number().min(-50).max(200), {
      symbol: "w",
      unit: "N/m",
      text: "Weight in water over length; negative: it floats. 0 if absent",
    }).exactOptional(),
    strength: si(z.number().positive(), { symbol: "F", unit: "N", text: "Working load" }).exactOptional(),
    price: Bought.price,
    note: Note.default(""),
  })
  .meta({ id: "TetherCable" });
export type TetherCable = z.infer<typeof TetherCable>;

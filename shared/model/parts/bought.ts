import { z } from "zod";
import { si } from "../fields.ts";

/** What a shortlist weighs besides what a part does. */
export const Bought = {
  mass: si(z.number().positive().max(1000), { symbol: "m", unit: "kg", text: "Mass" }).exactOptional(),
  price: z.number().min(0).max(1e6).exactOptional().describe("Price, in the one currency that all parts are priced in"),
};

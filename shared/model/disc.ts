import { z } from "zod";
import { si } from "./fields.ts";

/** Fields of a propeller as a disc, open or in a nozzle. */
export const nozzleAreaRatio = si(z.number().positive().max(3).nullable(), {
  symbol: "sigma",
  unit: "1",
  text: "Exit area of the nozzle over disc area; null for an open propeller",
}).default(null);

export const staticMerit = si(z.number().positive().max(2), {
  symbol: "FM",
  unit: "1",
  text: "Static merit, ideal over real shaft power",
});

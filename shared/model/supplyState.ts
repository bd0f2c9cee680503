import { z } from "zod";
import { si } from "./fields.ts";
import { ResultWarning } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const doubt = (symbol: string, unit: string, text: string) => si(z.number().min(0), { symbol, unit, text });

/** Pack, leads and tether as one source in a stated state. */
export const SupplyState = z
  .strictObject({
    openCircuitVoltage: number("U_oc", "V", "Open-circuit voltage at this charge"),
    resistance: number("R_s", "Ω", "Resistance of pack, leads and tether together"),
    parts: z
      .array(
        z.strictObject({
          name: z.enum(["pack", "leads", "tether"]),
          resistance: number("R", "Ω", "Its resistance in this state, there and back"),
          resistanceUncertainty: doubt("u(R)", "Ω", "Its standard uncertainty"),
        }),
      )
      .describe("What the resistance is made of"),
    uncertainties: z
      .strictObject({
        openCircuitVoltage: doubt("u(U_oc)", "V", "Standard uncertainty of the open-circuit voltage"),
        resistance: doubt("u(R_s)", "Ω", "Standard uncertainty of the resistance"),
      })
      .describe("Standard uncertainties; 0 where nothing is stated and nothing is estimated"),
    limits: z.strictObject({
      supplyCurrent: number("I_max", "A", "Continuous current of the pack").exactOptional(),
      fuseCurrent: number("I_f", "A", "Rating of the fuse").exactOptional(),
      tetherCurrent: number("I_max", "A", "Continuous current of the tether").exactOptional(),
      supplyVoltage: number("U_min", "V", "Least voltage under load").exactOptional(),
    }),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "SupplyState" });
export type SupplyState = z.infer<typeof SupplyState>;

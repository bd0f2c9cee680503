import { z } from "zod";
import { si } from "../fields.ts";

/** Where what leaves the ideal source goes: one list for a power and for the energy that it comes to. */
const account = (symbol: string, unit: string) => {
  const part = (text: string) => si(z.number(), { symbol, unit, text });
  return {
    source: part("Leaves the ideal source: open-circuit voltage times current"),
    supplyLoss: part("Lost in pack, leads and tether"),
    hotel: part("Rest of the vehicle"),
    controllers: part("Lost in the controllers, with what they draw by themselves"),
    motors: part("Lost in windings, core, friction, water in the motor and gears"),
    propellers: part("Given to the water by the shafts beyond what moves the vehicle: wake and swirl"),
    useful: part("Moves the vehicle: force on the hull times way through the water"),
  };
};

/** Where the power of the ideal source goes, W; the parts add up to the whole. */
export const PowerAccount = z.strictObject(account("P", "W")).meta({ id: "PowerAccount" });
export type PowerAccount = z.infer<typeof PowerAccount>;

/** Where energy went, J; the parts add up to what left the ideal source. */
export const EnergyAccount = z.strictObject(account("E", "J")).meta({ id: "EnergyAccount" });
export type EnergyAccount = z.infer<typeof EnergyAccount>;

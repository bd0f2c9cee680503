import { z } from "zod";
import { si } from "../fields.ts";

const wanted = (symbol: string, unit: string, text: string) =>
  si(z.number().positive(), { symbol, unit, text }).exactOptional();

/** What a vehicle must be able to do. What is absent is not asked. */
export const VehicleRequirement = z
  .strictObject({
    speed: wanted("V", "m/s", "Speed ahead over the ground"),
    againstCurrent: si(z.number().min(0), { symbol: "U", unit: "m/s", text: "Current against it meanwhile" }).default(
      0,
    ),
    tetherLength: si(z.number().min(0), { symbol: "L", unit: "m", text: "Tether paid out meanwhile" }).default(0),
    depth: wanted("h", "m", "Depth it works at"),
    climb: wanted("w", "m/s", "Speed of climb with the lift aboard"),
    lift: wanted("m", "kg", "Mass in water that it must lift"),
    endurance: wanted("t", "s", "Time it must work, by its mission or at that speed"),
    holdCurrent: wanted("U", "m/s", "Current from any side in which it must hold its place"),
    stoppingDistance: wanted("s", "m", "Distance within which it must stop from that speed"),
    confidence: z.number().min(0.5).max(0.999).default(0.95).describe("Probability that must be reached"),
  })
  .meta({ id: "VehicleRequirement" });
export type VehicleRequirement = z.infer<typeof VehicleRequirement>;

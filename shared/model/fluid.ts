import { z } from "zod";
import { si } from "./fields.ts";

const temperature = si(z.number(), { symbol: "T", unit: "K", text: "Temperature" });
const pressure = si(z.number().positive(), { symbol: "p", unit: "Pa", text: "Absolute pressure" });

/** The fluid a propeller works in. Ranges are enforced where the properties are computed (shared/fluid). */
export const FluidState = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("fresh"), temperature }),
    z.strictObject({
      kind: z.literal("sea"),
      temperature,
      salinity: si(z.number().min(0), { symbol: "S", unit: "1", text: "Practical salinity" }),
    }),
    z.strictObject({
      kind: z.literal("air"),
      temperature,
      pressure,
      humidity: si(z.number().min(0).max(1), { symbol: "h", unit: "1", text: "Relative humidity, 0 to 1" }),
    }),
  ])
  .meta({ id: "FluidState" });
export type FluidState = z.infer<typeof FluidState>;

export const FluidProperties = z
  .strictObject({
    density: si(z.number(), { symbol: "rho", unit: "kg/m³", text: "Density" }),
    dynamicViscosity: si(z.number(), { symbol: "mu", unit: "Pa·s", text: "Dynamic viscosity" }),
    kinematicViscosity: si(z.number(), { symbol: "nu", unit: "m²/s", text: "Kinematic viscosity" }),
    vapourPressure: si(z.number(), { symbol: "p_v", unit: "Pa", text: "Vapour pressure of the water" }),
  })
  .readonly()
  .meta({ id: "FluidProperties" });
export type FluidProperties = z.infer<typeof FluidProperties>;

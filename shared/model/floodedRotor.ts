import { z } from "zod";
import { si } from "./fields.ts";
import { ResultWarning, uncertainSi } from "./uncertain.ts";

const length = (symbol: string, text: string) => si(z.number().positive().max(1), { symbol, unit: "m", text });
const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

export const FloodedRotorRequest = z
  .strictObject({
    radius: length("R", "Radius of the turning surface in the gap"),
    length: length("L", "Length of that surface"),
    radialGap: length("t", "Radial gap"),
    axialGap: length("s", "Axial gap at each end face; null: end faces left out").nullable().default(null),
    density: si(z.number().positive(), { symbol: "rho", unit: "kg/m³", text: "Density of the fluid" }),
    kinematicViscosity: si(z.number().positive(), { symbol: "nu", unit: "m²/s", text: "Kinematic viscosity" }),
    rotationRate: si(z.number().positive(), { symbol: "n", unit: "rev/s", text: "Rotation rate" }),
  })
  .meta({ id: "FloodedRotorRequest" });
export type FloodedRotorRequest = z.infer<typeof FloodedRotorRequest>;

export const FloodedRotorDrag = z
  .strictObject({
    torque: uncertainSi({ symbol: "Q_wet", unit: "N·m", text: "Extra torque, an estimate" }),
    power: uncertainSi({ symbol: "P_wet", unit: "W", text: "Extra shaft power, an estimate" }),
    cylinderTorque: number("M", "N·m", "Torque on the cylinder"),
    faceTorque: number("M", "N·m", "Torque on both end faces"),
    gapReynolds: number("Re", "1", "Reynolds number of the radial gap"),
    discReynolds: number("Re", "1", "Reynolds number of the end faces"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "FloodedRotorDrag" });
export type FloodedRotorDrag = z.infer<typeof FloodedRotorDrag>;

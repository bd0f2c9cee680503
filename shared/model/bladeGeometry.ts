import { z } from "zod";
import { si } from "./fields.ts";

const length = (symbol: string, text: string) => si(z.number().positive().max(1), { symbol, unit: "m", text });

/** One cylindrical section of a blade, unrolled. */
export const BladeStation = z
  .strictObject({
    radius: length("r", "Distance from the shaft axis"),
    chord: si(z.number().min(0).max(1), { symbol: "c", unit: "m", text: "Chord; 0 only at a pointed tip" }),
    pitchAngle: si(z.number().min(-1.6).max(1.6), {
      symbol: "phi",
      unit: "rad",
      text: "Angle of the chord from the plane of rotation",
    }),
    thickness: si(z.number().min(0).max(1), { symbol: "t", unit: "m", text: "Greatest thickness" }),
    camber: si(z.number().min(-1).max(1), { symbol: "f", unit: "m", text: "Greatest height of the camber line" }),
    skew: si(z.number().min(-3.2).max(3.2), {
      symbol: "theta_s",
      unit: "rad",
      text: "Skew angle, positive against the turning",
    }).exactOptional(),
  })
  .meta({ id: "BladeStation" });
export type BladeStation = z.infer<typeof BladeStation>;

/** Shape of one blade and how many there are. */
export const BladeGeometry = z
  .strictObject({
    bladeCount: z.int().min(1).max(12).describe("Number of blades"),
    diameter: length("D", "Diameter over the blade tips"),
    hubDiameter: length("d_h", "Diameter of the hub"),
    stations: z.array(BladeStation).min(2).max(200).describe("Sections from hub to tip"),
  })
  .meta({ id: "BladeGeometry" });
export type BladeGeometry = z.infer<typeof BladeGeometry>;

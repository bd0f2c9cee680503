import { z } from "zod";
import { si } from "./fields.ts";

const length = (symbol: string, text: string) => ({ symbol, unit: "m", text });

/** A section of a blade at one radius. */
export const BladeStation = z
  .strictObject({
    radius: si(z.number(), length("r", "Distance of the section from the shaft axis")),
    chord: si(z.number(), length("c", "Chord from leading to trailing edge")),
    pitchAngle: si(z.number(), {
      symbol: "θ",
      unit: "rad",
      text: "Angle of the chord line to the plane of rotation",
    }),
    thickness: si(z.number(), length("t", "Greatest thickness")),
    camber: si(
      z.number(),
      length("f", "Greatest height of the mean line over the chord line, positive towards the back"),
    ),
    skew: si(z.number(), {
      symbol: "θ_s",
      unit: "rad",
      text: "Skew angle, positive against the turning; for strength and for information, not for the flow",
    }).exactOptional(),
  })
  .meta({ id: "BladeStation" });
export type BladeStation = z.infer<typeof BladeStation>;

/** The shape of a propeller blade by its sections; checked by `checkedGeometry`, which names the station that can not be. */
export const BladeGeometry = z
  .strictObject({
    bladeCount: z.int().min(1).max(12).describe("Number of blades"),
    diameter: si(z.number().positive().max(50), length("D", "Diameter over the blade tips")),
    hubDiameter: si(z.number().min(0), length("d_h", "Diameter of the hub where the blades begin")),
    stations: z.array(BladeStation).min(2).max(200).describe("Sections from the hub to the tip, in order of radius"),
  })
  .meta({ id: "BladeGeometry" });
export type BladeGeometry = z.infer<typeof BladeGeometry>;

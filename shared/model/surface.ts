import { z } from "zod";
import { si } from "./fields.ts";

/** What the surface of a blade does to its sections. */
export const BladeSurface = z
  .strictObject({
    roughness: si(z.number().min(0).max(0.005), {
      symbol: "k_p",
      unit: "m",
      text: "Roughness height; 0 is hydraulically smooth",
    }),
    liftFactor: si(z.number().positive().max(2), {
      symbol: "k_L",
      unit: "1",
      text: "Lift over that of a clean section at the same angle of attack",
    }).default(1),
    dragFactor: si(z.number().positive().max(50), {
      symbol: "k_D",
      unit: "1",
      text: "Factor on the profile drag that the section model gives for this roughness",
    }).default(1),
  })
  .meta({ id: "BladeSurface" });
export type BladeSurface = z.infer<typeof BladeSurface>;

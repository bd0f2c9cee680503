import { z } from "zod";
import { si } from "./fields.ts";
import { BladeSurface } from "./surface.ts";

export const Grit = z
  .enum([
    "P80",
    "P100",
    "P120",
    "P150",
    "P180",
    "P220",
    "P240",
    "P280",
    "P320",
    "P360",
    "P400",
    "P500",
    "P600",
    "P800",
    "P1000",
    "P1200",
    "P1500",
    "P2000",
  ])
  .describe("Grit of the last abrasive, FEPA P grades (ISO 6344)");
export type Grit = z.infer<typeof Grit>;

/** How a blade was finished, in a builder's words and numbers. */
export const SurfaceState = z
  .discriminatedUnion("state", [
    z.strictObject({
      state: z.literal("printed"),
      layerHeight: si(z.number().positive().max(0.002), { symbol: "h", unit: "m", text: "Layer height" }),
      flow: z.enum(["acrossLayers", "alongLayers"]).describe("Whether the flow crosses the steps or runs along them"),
      slope: si(
        z
          .number()
          .min(0)
          .max(Math.PI / 2),
        {
          symbol: "alpha",
          unit: "rad",
          text: "Angle between the surface and the layers; for a propeller printed on its hub face the pitch angle",
        },
      ).default(0.35),
    }),
    z.strictObject({ state: z.literal("sanded"), grit: Grit }),
    z.strictObject({ state: z.literal("filledAndSanded"), grit: Grit }),
    z.strictObject({ state: z.literal("coated") }),
    z.strictObject({ state: z.literal("machined") }),
  ])
  .meta({ id: "SurfaceState" });
export type SurfaceState = z.infer<typeof SurfaceState>;

/** A surface state as numbers, with where each comes from. A person may overwrite any of them. */
export const NamedSurface = z
  .strictObject({
    name: z.string().describe("The state in words"),
    surface: BladeSurface,
    roughnessBasis: z.string().describe("Where the roughness comes from"),
    liftFactorBasis: z.string().describe("Where the lift factor comes from"),
  })
  .meta({ id: "NamedSurface" });
export type NamedSurface = z.infer<typeof NamedSurface>;

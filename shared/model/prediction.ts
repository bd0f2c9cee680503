import { z } from "zod";
import { nozzleAreaRatio, staticMerit } from "./disc.ts";
import { Name, si } from "./fields.ts";
import { SeriesPropeller } from "./seriesPropeller.ts";
import { BladeSurface } from "./surface.ts";

const diameter = si(z.number().positive().max(1), { symbol: "D", unit: "m", text: "Diameter over the blade tips" });

/** Momentum theory with a stated static merit: says what a power pushes, not how fast the shaft turns. */
const OfStaticMerit = z.strictObject({
  kind: z.literal("staticMerit"),
  diameter,
  staticMerit,
  nozzleAreaRatio,
});

/** A published series: what a smooth, well-made propeller of that family does. */
const OfSeries = z.strictObject({ kind: z.literal("series"), diameter, series: SeriesPropeller });

/** Blade elements of a propeller in the parts whose blade shape is known. */
const OfBlades = z.strictObject({
  kind: z.literal("blades"),
  propellerId: z.string().min(1).max(64).describe("Part that carries the blade shape"),
  surface: BladeSurface,
});

/** Something computed that is laid over what was measured. */
export const Prediction = z
  .strictObject({
    name: Name,
    source: z.discriminatedUnion("kind", [OfStaticMerit, OfSeries, OfBlades]),
  })
  .meta({ id: "Prediction" });
export type Prediction = z.infer<typeof Prediction>;
export type PredictionSource = Prediction["source"];

import { z } from "zod";
import { DrivePropeller } from "./drivePropeller.ts";
import { si } from "./fields.ts";
import { SeriesWithoutPitch } from "./seriesPropeller.ts";
import { PartsBox, ShortlistRequirement } from "./shortlist.ts";
import { DemandMargin, DutyPoint } from "./shortlistResult.ts";
import { ResultWarning } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** Diameter and pitch of a series propeller that suit each motor best. */
export const PropellerDesignRequest = z
  .strictObject({
    requirement: ShortlistRequirement,
    box: PartsBox.describe("Motors, controllers, supplies and gears; its propellers are not used"),
    series: z.array(SeriesWithoutPitch).min(1).max(20).describe("Series, blades and area ratios to design with"),
    aim: z
      .enum(["thrustPerPower", "greatestThrust"])
      .default("thrustPerPower")
      .describe("thrustPerPower: the demanded thrust with the least power; greatestThrust: most within all limits"),
    leastDiameter: si(z.number().positive().max(1), {
      symbol: "D",
      unit: "m",
      text: "Least diameter; a quarter of the greatest if absent",
    }).exactOptional(),
  })
  .meta({ id: "PropellerDesignRequest" });
export type PropellerDesignRequest = z.infer<typeof PropellerDesignRequest>;
export type PropellerDesignRequestInput = z.input<typeof PropellerDesignRequest>;

/** The best propeller of one series for one motor, controller, supply and gear. */
export const PropellerDesign = z
  .strictObject({
    motor: z.string(),
    controller: z.string().nullable(),
    supply: z.string(),
    gear: z.string().nullable(),
    series: SeriesWithoutPitch,
    state: z
      .enum(["meets", "nearest", "none"])
      .describe("It meets every demand; none does, and this one comes nearest; no propeller of the series runs at all"),
    diameter: number("D", "m", "Diameter").nullable(),
    pitchRatio: number("P/D", "1", "Pitch ratio").nullable(),
    diameterAtEdge: z.boolean().describe("The best diameter is the least or greatest allowed"),
    pitchAtEdge: z.boolean().describe("The best pitch ratio lies at an edge of the tests of the series"),
    reynolds: number("Re", "1", "Reynolds number of the section at 0.75 of the radius").nullable(),
    points: z.array(DutyPoint),
    demands: z.array(DemandMargin),
    propeller: DrivePropeller.nullable().describe("As a drive takes it, to look at it more closely"),
    converged: z.boolean().describe("The search ended within its tolerance"),
    sentence: z.string(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "PropellerDesign" });
export type PropellerDesign = z.infer<typeof PropellerDesign>;

export const PropellerDesigns = z
  .strictObject({
    answer: z.string(),
    designs: z.array(PropellerDesign).describe("Best first"),
    warnings: z.array(ResultWarning),
    cautions: z.array(z.string()).describe("Blades, packs and water"),
  })
  .meta({ id: "PropellerDesigns" });
export type PropellerDesigns = z.infer<typeof PropellerDesigns>;

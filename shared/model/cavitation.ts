import { z } from "zod";
import { si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { ResultWarning } from "./uncertain.ts";

const positive = (symbol: string, unit: string, text: string) => si(z.number().positive(), { symbol, unit, text });
const least0 = (symbol: string, unit: string, text: string) => si(z.number().min(0), { symbol, unit, text });
const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const orNull = (symbol: string, unit: string, text: string) => si(z.number().nullable(), { symbol, unit, text });

export const CavitationRequest = z
  .strictObject({
    thrust: positive("T", "N", "Thrust of the blades, without the part of a nozzle"),
    nozzleThrust: least0("T_N", "N", "Thrust of the nozzle").default(0),
    advanceSpeed: least0("V_A", "m/s", "Advance speed; 0 at bollard").default(0),
    rotationRate: positive("n", "rev/s", "Rotation rate"),
    diameter: si(z.number().positive().max(20), { symbol: "D", unit: "m", text: "Diameter over the blade tips" }),
    blades: z.int().min(2).max(12).describe("Number of blades"),
    areaRatio: si(z.number().positive().max(2), { symbol: "A_E/A_0", unit: "1", text: "Expanded area ratio" }),
    pitchRatio: si(z.number().positive().max(3), { symbol: "P/D", unit: "1", text: "Pitch ratio" }),
    shaftImmersion: least0("h", "m", "Depth of the shaft under the surface"),
    fluid: FluidState.describe("Fresh or sea water"),
    atmosphericPressure: positive("p_atm", "Pa", "Pressure on the surface").default(101325),
  })
  .meta({ id: "CavitationRequest" });
export type CavitationRequest = z.infer<typeof CavitationRequest>;

export const BurrillLineName = z.enum(["light", "merchant", "fast", "segmental", "breakdown"]);
export type BurrillLineName = z.infer<typeof BurrillLineName>;

/** One limit line of the loading against the cavitation number. */
export const BurrillVerdict = z
  .strictObject({
    line: BurrillLineName,
    meaning: z.string().describe("What lies above the line"),
    state: z
      .enum(["below", "near", "above", "unjudged"])
      .describe("Where the propeller stands; near is within the 10 % the line is known to; unjudged is off the chart"),
    limit: orNull("tau_c", "1", "Loading on the line at this cavitation number; null off the chart"),
    cavitationNumberNeeded: orNull(
      "sigma",
      "1",
      "Cavitation number at which this loading reaches the line; null off the chart",
    ),
    depthNeeded: orNull("h", "m", "Depth of the shaft from which the loading is under the line; null off the chart"),
  })
  .meta({ id: "BurrillVerdict" });
export type BurrillVerdict = z.infer<typeof BurrillVerdict>;

export const Ventilation = z
  .strictObject({
    verdict: z.enum(["unlikely", "possible", "likely"]).describe("Whether the propeller draws air"),
    immersionRatio: number("h/D", "1", "Depth of the shaft over the diameter"),
    drawdown: number("Δh", "m", "Height the mean flow to the disc can pull the surface down by"),
    depthAgainstDrawdown: number(
      "h",
      "m",
      "Depth of the shaft at which the upper tip lies under the drawn-down surface",
    ),
    depthOfOpenWater: number("h", "m", "Depth of the shaft from which open-water tests count the surface as far away"),
    depthAgainstVortices: number(
      "h",
      "m",
      "Depth that keeps air vortices from a pump intake of this size and velocity",
    ),
    thrustRatio: number("β", "1", "Part of the deep-water thrust that is left near the surface, without air drawn in"),
  })
  .meta({ id: "Ventilation" });
export type Ventilation = z.infer<typeof Ventilation>;

export const CavitationResult = z
  .strictObject({
    cavitationNumber: number("sigma_0.7", "1", "Cavitation number of the section at 0.7 of the radius"),
    loading: number("tau_c", "1", "Thrust over projected blade area and dynamic pressure at 0.7 of the radius"),
    sectionSpeed: number("V_R", "m/s", "Velocity of the section at 0.7 of the radius"),
    projectedArea: number("A_P", "m²", "Projected area of the blades"),
    lines: z.array(BurrillVerdict),
    leastAreas: z
      .array(
        z.strictObject({
          allowance: number("k", "1", "Allowance for uneven inflow"),
          meaning: z.string().describe("Vehicles it was stated for"),
          areaRatio: number("A_E/A_0", "1", "Least expanded area ratio"),
          isMet: z.boolean().describe("The propeller has at least this area"),
        }),
      )
      .describe("Least expanded area by Keller's rule"),
    ventilation: Ventilation,
    depthFreeOfCavitation: orNull(
      "h",
      "m",
      "Depth of the shaft from which less than about 5 % of the back cavitates; null off the chart",
    ),
    depthFreeOfVentilation: number(
      "h",
      "m",
      "Depth of the shaft from which the mean flow draws no air; vortices may from somewhat deeper",
    ),
    answer: z.string().describe("The answer in one sentence"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "CavitationResult" });
export type CavitationResult = z.infer<typeof CavitationResult>;

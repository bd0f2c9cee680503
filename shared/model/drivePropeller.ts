import { z } from "zod";
import { Name, si } from "./fields.ts";
import { Bought } from "./parts/bought.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** A number with its standard uncertainty, as it goes into a computation. */
export const Doubtful = z
  .strictObject({
    value: z.number().describe("Best estimate"),
    standardUncertainty: z.number().min(0).default(0).describe("Standard uncertainty, same unit"),
  })
  .meta({ id: "Doubtful" });
export type Doubtful = z.infer<typeof Doubtful>;

/** K_T and K_Q away from rest, as polynomials in the advance ratio that start from the values at rest. */
export const OpenWater = z
  .strictObject({
    thrust: z.array(z.number()).max(12).describe("Coefficients of J, J², ... in K_T(J) − K_T(0)"),
    torque: z.array(z.number()).max(12).describe("Coefficients of J, J², ... in K_Q(J) − K_Q(0)"),
    greatestAdvanceRatio: number("J", "1", "Advance ratio up to which the polynomials hold"),
  })
  .meta({ id: "OpenWater" });
export type OpenWater = z.infer<typeof OpenWater>;

/** A propeller turning one way. */
export const PropellerCurve = z
  .strictObject({
    thrustCoefficient: Doubtful.describe("K_T at rest"),
    torqueCoefficient: Doubtful.describe("K_Q at rest"),
    correlation: si(z.number().min(-1).max(1), {
      symbol: "r",
      unit: "1",
      text: "Correlation of the errors of K_T and K_Q",
    }).default(0),
    openWater: OpenWater.exactOptional().describe("How they change with the advance ratio; absent: known at rest only"),
  })
  .meta({ id: "PropellerCurve" });
export type PropellerCurve = z.infer<typeof PropellerCurve>;

/** Where the coefficients of a propeller come from, in order of trust. */
export const PropellerSource = z.enum(["measured", "scaled", "series", "bladeElements", "typed"]);
export type PropellerSource = z.infer<typeof PropellerSource>;

/** A propeller as a drive sees it, wherever its coefficients come from. */
export const DrivePropeller = z
  .strictObject({
    name: Name,
    source: PropellerSource.default("typed"),
    from: z.string().max(300).default("").describe("What the coefficients rest on, in words"),
    diameter: si(Doubtful, { symbol: "D", unit: "m", text: "Diameter over the blade tips" }),
    ahead: PropellerCurve.describe("Turning the way it was made for"),
    astern: PropellerCurve.exactOptional().describe("Turning the other way; coefficients as positive numbers"),
    bladeCount: z.int().min(1).max(12).exactOptional().describe("Number of blades"),
    areaRatio: si(z.number().positive(), {
      symbol: "A_E/A_0",
      unit: "1",
      text: "Expanded blade area ratio, for cavitation",
    }).exactOptional(),
    pitchRatio: si(z.number().positive(), { symbol: "P/D", unit: "1", text: "Pitch ratio" }).exactOptional(),
    nozzle: z.boolean().default(false).describe("It runs in a nozzle"),
    ...Bought,
  })
  .meta({ id: "DrivePropeller" });
export type DrivePropeller = z.infer<typeof DrivePropeller>;

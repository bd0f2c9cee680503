import { z } from "zod";
import { si } from "./fields.ts";
import { outsideRange, SeriesWithoutPitch } from "./seriesPropeller.ts";
import { ResultWarning } from "./uncertain.ts";

const positive = (symbol: string, unit: string, text: string) => si(z.number().positive(), { symbol, unit, text });
const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

const thrust = positive("T", "N", "Thrust, of propeller and nozzle together");
const shaftPower = positive("P", "W", "Shaft power");
const diameter = positive("D", "m", "Diameter over the blade tips");
const rotationRate = positive("n", "rev/s", "Rotation rate");

/** What a propeller is to do: make a thrust with the least power, or of a power the most thrust. */
export const PropellerDuty = z.discriminatedUnion("given", [
  z.strictObject({ given: z.literal("thrust"), thrust }),
  z.strictObject({ given: z.literal("shaftPower"), shaftPower }),
]);
export type PropellerDuty = z.infer<typeof PropellerDuty>;

export const BestPitchRequest = z
  .strictObject({
    series: SeriesWithoutPitch,
    duty: PropellerDuty,
    fixed: z
      .discriminatedUnion("given", [
        z.strictObject({ given: z.literal("diameter"), diameter }),
        z.strictObject({ given: z.literal("rotationRate"), rotationRate }),
        z.strictObject({ given: z.literal("both"), diameter, rotationRate }),
      ])
      .describe("What is settled already; with both, one pitch does the duty"),
    advanceSpeed: si(z.number().min(0), { symbol: "V_A", unit: "m/s", text: "Advance speed; 0 at bollard" }).default(0),
    density: positive("rho", "kg/m³", "Density of the fluid"),
    kinematicViscosity: positive("nu", "m²/s", "Kinematic viscosity, for the Reynolds number").exactOptional(),
    outsideRange,
  })
  .meta({ id: "BestPitchRequest" });
export type BestPitchRequest = z.infer<typeof BestPitchRequest>;

/** A propeller of the series that does the duty. */
export const PitchCandidate = z
  .strictObject({
    pitchRatio: number("P/D", "1", "Pitch ratio"),
    advanceRatio: number("J", "1", "Advance ratio"),
    diameter: number("D", "m", "Diameter"),
    rotationRate: number("n", "rev/s", "Rotation rate"),
    thrust: number("T", "N", "Thrust"),
    torque: number("Q", "N·m", "Shaft torque"),
    shaftPower: number("P", "W", "Shaft power"),
    efficiency: number("eta_O", "1", "Efficiency T V/P; 0 at bollard"),
    merit: number("P_i/P", "1", "Power of an ideal open disc for this thrust and speed over the shaft power"),
  })
  .meta({ id: "PitchCandidate" });
export type PitchCandidate = z.infer<typeof PitchCandidate>;

export const BestPitch = z
  .discriminatedUnion("state", [
    z.strictObject({
      state: z.literal("found"),
      kind: z
        .enum(["optimum", "edge", "only"])
        .describe("A true optimum; the best at an edge of the range; the one pitch that does the duty"),
      best: PitchCandidate,
      reynolds: si(z.number().nullable(), {
        symbol: "Re",
        unit: "1",
        text: "Reynolds number of the section at 0.75 of the radius; null where the viscosity is not given",
      }),
      candidates: z.array(PitchCandidate).describe("The duty over the pitch ratio, from the lowest up"),
      warnings: z.array(ResultWarning),
    }),
    z.strictObject({
      state: z.literal("failed"),
      reason: z.string().describe("Why no propeller of the series does the duty"),
      warnings: z.array(ResultWarning),
    }),
  ])
  .meta({ id: "BestPitch" });
export type BestPitch = z.infer<typeof BestPitch>;

import { z } from "zod";
import { BladeGeometry } from "./bladeGeometry.ts";
import { si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { BladeSurface } from "./surface.ts";
import { MeasuredCoefficient } from "./thrustAtSpeed.ts";
import { ResultWarning, uncertainSi } from "./uncertain.ts";

const positive = (symbol: string, unit: string, text: string) => si(z.number().positive(), { symbol, unit, text });
const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

const state = {
  fluid: FluidState,
  rotationRate: positive("n", "rev/s", "Rotation rate"),
  diameter: si(z.number().positive().max(20), { symbol: "D", unit: "m", text: "Diameter over the blade tips" }),
  nozzle: z.boolean().default(false).describe("The propeller runs in a nozzle"),
};

/** What is needed of the blade to tell the effect of the Reynolds number. */
export const BladeSection = z
  .strictObject({
    bladeCount: z.int().min(1).max(12).describe("Number of blades"),
    chordRatio: si(z.number().positive().max(1), { symbol: "c/D", unit: "1", text: "Chord near 0.75 of the radius" }),
    pitchRatio: si(z.number().positive().max(3), { symbol: "P/D", unit: "1", text: "Pitch ratio" }),
    thicknessRatio: si(z.number().min(0).max(0.5), {
      symbol: "t/c",
      unit: "1",
      text: "Thickness over chord there",
    }).default(0.1),
    roughness: si(z.number().min(0).max(0.01), { symbol: "k_p", unit: "m", text: "Roughness of the surface" }).default(
      0,
    ),
  })
  .meta({ id: "BladeSection" });
export type BladeSection = z.infer<typeof BladeSection>;

/** Blades of the propeller, for blade elements; scaled to the diameters of both sides. */
export const CarryOverShape = z
  .strictObject({
    geometry: BladeGeometry,
    surface: BladeSurface.default({ roughness: 0, liftFactor: 1, dragFactor: 1 }).describe("Smooth if absent"),
  })
  .meta({ id: "CarryOverShape" });
export type CarryOverShape = z.infer<typeof CarryOverShape>;

export const CarryOverRequest = z
  .strictObject({
    measured: z
      .strictObject({
        ...state,
        thrustCoefficient: MeasuredCoefficient,
        torqueCoefficient: MeasuredCoefficient,
        advanceRatio: si(z.number().min(0), {
          symbol: "J",
          unit: "1",
          text: "Advance ratio, the same in both",
        }).default(0),
        shaftImmersion: positive("h", "m", "Depth of the shaft on the stand").exactOptional(),
        tankWidth: positive("W_t", "m", "Width of the tank").exactOptional(),
        tankDepth: positive("H_t", "m", "Depth of the water in the tank").exactOptional(),
      })
      .describe("How the coefficients were measured"),
    target: z
      .strictObject(state)
      .describe("Where the propeller, or one of the same shape, is to work: open water, deep"),
    blade: BladeSection.exactOptional().describe(
      "Taken from the shape if absent; without both the effect of the Reynolds number is a range only",
    ),
    shape: CarryOverShape.exactOptional().describe(
      "Shape of the blades: blade elements are then one more way to tell the effect of the Reynolds number",
    ),
  })
  .meta({ id: "CarryOverRequest" });
export type CarryOverRequest = z.infer<typeof CarryOverRequest>;

export const CarryOverFactor = z
  .strictObject({
    cause: z.enum(["density", "rotationRate", "diameter", "reynolds", "returnFlow", "surface", "nozzle"]),
    actsOn: z
      .enum(["forces", "coefficients"])
      .describe("What it multiplies: thrust and torque alone, or K_T and K_Q too"),
    thrust: number("f_T", "1", "Factor on the thrust"),
    torque: number("f_Q", "1", "Factor on the torque"),
    thrustUncertainty: number("u(f_T)", "1", "Relative standard uncertainty of the factor on the thrust"),
    torqueUncertainty: number("u(f_Q)", "1", "Relative standard uncertainty of the factor on the torque"),
    reason: z.string().describe("What it is and where its size comes from"),
  })
  .meta({ id: "CarryOverFactor" });
export type CarryOverFactor = z.infer<typeof CarryOverFactor>;

const section = si(z.number().nullable(), { symbol: "Re", unit: "1", text: "Reynolds number at 0.75 of the radius" });

export const CarryOver = z
  .strictObject({
    factors: z.array(CarryOverFactor),
    thrustCoefficient: uncertainSi({ symbol: "K_T", unit: "1", text: "Thrust coefficient in the target" }),
    torqueCoefficient: uncertainSi({ symbol: "K_Q", unit: "1", text: "Torque coefficient in the target" }),
    reynolds: z.strictObject({ measured: section, target: section }),
    thrust: uncertainSi({ symbol: "T", unit: "N", text: "Thrust in the target" }),
    torque: uncertainSi({ symbol: "Q", unit: "N·m", text: "Torque in the target" }),
    shaftPower: uncertainSi({ symbol: "P", unit: "W", text: "Shaft power in the target" }),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "CarryOver" });
export type CarryOver = z.infer<typeof CarryOver>;

import { z } from "zod";
import { BladeGeometry } from "./bladeGeometry.ts";
import { Name, si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { BladeSurface } from "./surface.ts";
import { ResultWarning } from "./uncertain.ts";

const stress = (symbol: string, text: string) => si(z.number().positive().max(3e9), { symbol, unit: "Pa", text });
const modulus = (symbol: string, text: string) => si(z.number().positive().max(1e12), { symbol, unit: "Pa", text });
const factor = (symbol: string, text: string) => si(z.number().positive().max(1), { symbol, unit: "1", text });
const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** What a printed blade is made of, and how its layers lie. Starting values are common practice; a data sheet is better. */
export const PrintedMaterial = z
  .strictObject({
    name: Name,
    density: si(z.number().positive().max(25_000), { symbol: "rho_m", unit: "kg/m³", text: "Density of the print" }),
    strengthInLayer: stress("X_1", "Tensile strength in the plane of the layers"),
    strengthAcrossLayers: stress("X_2", "Tensile strength across the layers"),
    modulusInLayer: modulus("E_1", "Modulus of elasticity in the plane of the layers"),
    modulusAcrossLayers: modulus("E_2", "Modulus of elasticity across the layers"),
    layerAngle: si(
      z
        .number()
        .min(0)
        .max(Math.PI / 2),
      {
        symbol: "psi",
        unit: "rad",
        text: "Angle between blade and layers: 0 where the blade lies in the layers (printed flat on its hub face), π/2 where the layers are stacked along the blade",
      },
    ).default(0),
    temperatureFactor: factor("f_T", "Strength left at the working temperature").default(1),
    waterFactor: factor("f_w", "Strength left after long soaking in water").default(0.85),
    fatigueFactor: factor("f_N", "Strength left under load repeated at blade rate over the life of the blade").default(
      0.3,
    ),
    source: z.string().trim().max(200).describe("Where the values come from").default("typed"),
  })
  .meta({ id: "PrintedMaterial" });
export type PrintedMaterial = z.infer<typeof PrintedMaterial>;

export const SectionShapeName = z
  .enum(["parabolic", "ellipse", "plate"])
  .describe("Idealised section: lens of parabolic thickness, ellipse, or plate of even thickness");

/** How a blade is held against its load, besides shape and running. */
export const StrengthChoices = z.strictObject({
  material: PrintedMaterial,
  sectionShape: SectionShapeName.default("parabolic"),
  rakeAngle: si(z.number().min(-0.8).max(0.8), {
    symbol: "theta_r",
    unit: "rad",
    text: "Rake of the blade, positive aft",
  }).default(0),
  loadFactor: si(z.number().positive().max(20), {
    symbol: "k",
    unit: "1",
    text: "Factor on the predicted load: measured over predicted thrust, or what uneven inflow adds",
  }).default(1),
  wantedSafety: si(z.number().min(1).max(20), {
    symbol: "S",
    unit: "1",
    text: "Safety factor wanted (2 is common practice, no source)",
  }).default(2),
});
export type StrengthChoices = z.infer<typeof StrengthChoices>;

export const BladeStrengthRequest = StrengthChoices.extend({
  geometry: BladeGeometry,
  surface: BladeSurface,
  fluid: FluidState,
  rotationRate: si(z.number().min(-2000).max(2000), {
    symbol: "n",
    unit: "rev/s",
    text: "Rotation rate; negative turns astern",
  }),
  advanceSpeed: si(z.number().min(-50).max(50), { symbol: "V_A", unit: "m/s", text: "Advance speed" }).default(0),
}).meta({ id: "BladeStrengthRequest" });
export type BladeStrengthRequest = z.infer<typeof BladeStrengthRequest>;

export const StressedSection = z
  .strictObject({
    radius: number("r", "m", "Distance from the shaft axis"),
    area: number("A", "m²", "Area of the section"),
    axialForce: number("F_x", "N", "Force along the shaft from all beyond, forward"),
    tangentialForce: number("F_t", "N", "Force in the plane of rotation from all beyond, against the turning"),
    centrifugalForce: number("F_c", "N", "Pull along the blade"),
    flatwiseMoment: number("M_f", "N·m", "Bending moment about the chord, tip towards the back"),
    edgewiseMoment: number("M_e", "N·m", "Bending moment about the normal of the chord, tip towards the trailing edge"),
    centrifugalStress: number("sigma_c", "Pa", "Mean stress from the centrifugal pull"),
    greatestTension: number("sigma_t", "Pa", "Greatest tension along the blade"),
    greatestCompression: number("sigma_k", "Pa", "Greatest compression along the blade"),
    safetyFactor: si(z.number().nullable(), {
      symbol: "S",
      unit: "1",
      text: "Strength over greatest stress; null without load",
    }),
    fatigueSafetyFactor: si(z.number().nullable(), {
      symbol: "S_N",
      unit: "1",
      text: "Fatigue strength over greatest stress; null without load",
    }),
    axialDeflection: number("w_x", "m", "Deflection forward"),
    tangentialDeflection: number("w_t", "m", "Deflection against the turning"),
  })
  .meta({ id: "StressedSection" });
export type StressedSection = z.infer<typeof StressedSection>;

export const BladeStrength = z
  .strictObject({
    state: z.literal("solved"),
    sections: z.array(StressedSection).min(2).describe("From root to 0.95 of the radius"),
    critical: StressedSection.describe("The section that would break first"),
    strength: number("X", "Pa", "Strength along the blade after layers, temperature and water"),
    fatigueStrength: number("X_N", "Pa", "The same for load repeated at blade rate"),
    modulus: number("E", "Pa", "Modulus of elasticity along the blade, warm and soaked as stated"),
    tipDeflection: z
      .strictObject({
        axial: number("w_x", "m", "Forward"),
        tangential: number("w_t", "m", "Against the turning"),
        total: number("w", "m", "Both together"),
      })
      .describe("Deflection of the tip"),
    sentence: z.string().describe("The answer in words"),
    cautions: z.array(z.string()).describe("What to mind before a blade is spun"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "BladeStrength" });
export type BladeStrength = z.infer<typeof BladeStrength>;

export const BladeStrengthFailed = z
  .strictObject({
    state: z.literal("failed"),
    reason: z.string().describe("Why the load could not be predicted, in words"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "BladeStrengthFailed" });

export const BladeStrengthAnswer = z.discriminatedUnion("state", [BladeStrength, BladeStrengthFailed]);
export type BladeStrengthAnswer = z.infer<typeof BladeStrengthAnswer>;

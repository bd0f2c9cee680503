import { z } from "zod";
import { BladeGeometry } from "./bladeGeometry.ts";
import { si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { SectionPolar } from "./sectionPolar.ts";
import { BladeSurface } from "./surface.ts";
import { ResultWarning } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** One piece of the blade, from the hub to the tip; forces of ONE blade. */
export const BladeElement = z
  .strictObject({
    radius: number("r", "m", "Middle of the piece"),
    width: number("dr", "m", "Its length along the blade"),
    inflowAngle: number("φ", "rad", "Angle of the flow at the blade to the plane of rotation"),
    angleOfAttack: number("α", "rad", "Angle of attack"),
    liftCoefficient: number("C_L", "1", "Lift coefficient of the section"),
    dragCoefficient: number("C_D", "1", "Drag coefficient of the section"),
    reynolds: number("Re", "1", "Reynolds number of the section"),
    thrustPerLength: number("dT/dr", "N/m", "Thrust of one blade per length"),
    tangentialForcePerLength: number("dF/dr", "N/m", "Force of one blade against the turning per length"),
    axialInduced: number("u", "m/s", "Velocity induced along the shaft, positive backwards"),
    tangentialInduced: number("v", "m/s", "Velocity induced in the direction of turning"),
  })
  .meta({ id: "BladeElement" });
export type BladeElement = z.infer<typeof BladeElement>;

/** Where the shaft power goes, W: useful and ideal and the losses add up to it. */
export const BladePower = z
  .strictObject({
    shaft: number("P", "W", "Power taken from the shaft; negative where the flow drives it"),
    useful: number("T V", "W", "Thrust times advance speed"),
    ideal: number("T v", "W", "Least that any open disc of this size needs to make this thrust; 0 where it brakes"),
    induced: number("P_i", "W", "Stream along the shaft beyond that: load spread unevenly, hub"),
    swirl: number("P_s", "W", "Rotation left in the stream"),
    tip: number("P_t", "W", "Flow round the blade tips, because the blades are few"),
    hub: number("P_h", "W", "Flow round the inner ends of the blades"),
    profile: number("P_D", "W", "Drag of the sections"),
  })
  .meta({ id: "BladePower" });
export type BladePower = z.infer<typeof BladePower>;

const SMOOTH = { roughness: 0, liftFactor: 1, dragFactor: 1 };

export const BladeElementsRequest = z
  .strictObject({
    geometry: BladeGeometry,
    surface: BladeSurface.default(SMOOTH).describe("Smooth and clean if absent"),
    polars: SectionPolar.exactOptional().describe("Lift and drag of the sections, instead of the section model"),
    fluid: FluidState,
    points: z
      .array(
        z.strictObject({
          rotationRate: number("n", "1/s", "Rotation rate, rev/s; negative turns it against its design direction"),
          advanceSpeed: number("V_A", "m/s", "Speed through the water; negative is astern").default(0),
        }),
      )
      .min(1)
      .max(200)
      .describe("Flows to run the propeller in: one, or a sweep"),
  })
  .meta({ id: "BladeElementsRequest" });
export type BladeElementsRequest = z.infer<typeof BladeElementsRequest>;

/** A propeller in one flow. */
export const BladeElementsSolved = z
  .strictObject({
    state: z.literal("solved"),
    thrust: number("T", "N", "Thrust, positive forwards"),
    torque: number("Q", "N·m", "Torque, positive against the design direction of turning"),
    thrustCoefficient: number("K_T", "1", "Thrust coefficient, with the sign of the thrust"),
    torqueCoefficient: number("K_Q", "1", "Torque coefficient, with the sign of the torque"),
    advanceRatio: number("J", "1", "Advance ratio V/(n D), negative where advance and turning differ in sign"),
    efficiency: si(z.number().nullable(), {
      symbol: "eta_O",
      unit: "1",
      text: "Efficiency T V/P; null where the shaft gives no power",
    }),
    elements: z.array(BladeElement).describe("Pieces of the blade from hub to tip"),
    power: BladePower,
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "BladeElementsSolved" });
export type BladeElementsSolved = z.infer<typeof BladeElementsSolved>;

export const BladeElementsFailed = z
  .strictObject({
    state: z.literal("failed"),
    reason: z.string().describe("Why there is no solution"),
    radius: number("r", "m", "Ring of the disc that has none"),
  })
  .meta({ id: "BladeElementsFailed" });
export type BladeElementsFailed = z.infer<typeof BladeElementsFailed>;

export const BladeElementsResult = z.discriminatedUnion("state", [BladeElementsSolved, BladeElementsFailed]);
export type BladeElementsResult = z.infer<typeof BladeElementsResult>;

export const BladeElementsAnswer = z
  .strictObject({ points: z.array(BladeElementsResult).describe("In the order asked for") })
  .meta({ id: "BladeElementsAnswer" });
export type BladeElementsAnswer = z.infer<typeof BladeElementsAnswer>;

const Coefficients = z.strictObject({
  thrustCoefficient: number("K_T", "1", "Thrust coefficient"),
  torqueCoefficient: number("K_Q", "1", "Torque coefficient"),
});

/** One measured point of a research propeller beside what blade elements make of it. */
export const EvidencePoint = z
  .strictObject({
    diameter: number("D", "m", "Diameter"),
    rotationRate: number("n", "1/s", "Rotation rate"),
    reynolds: number("Re", "1", "Reynolds number of the blade at 0.75 of the radius"),
    advanceRatio: number("J", "1", "Advance ratio"),
    measured: Coefficients,
    computed: Coefficients,
  })
  .meta({ id: "EvidencePoint" });
export type EvidencePoint = z.infer<typeof EvidencePoint>;

export const ModelEvidence = z
  .strictObject({
    chosenOn: z.array(EvidencePoint).describe("The propeller the numbers of the section model were chosen on"),
    heldBack: z.array(EvidencePoint).describe("The propeller that was held back as a test"),
  })
  .meta({ id: "ModelEvidence" });
export type ModelEvidence = z.infer<typeof ModelEvidence>;

/** Where the shape of a blade comes from: a pasted table of its sections, or a plain outline of constant pitch. */
export const BladeGeometryRequest = z
  .discriminatedUnion("from", [
    z.strictObject({
      from: z.literal("table"),
      text: z.string().min(1).max(200_000).describe("Delimited text, one row a radius, units in the header"),
      bladeCount: BladeGeometry.shape.bladeCount,
      diameter: BladeGeometry.shape.diameter.exactOptional(),
      hubDiameter: BladeGeometry.shape.hubDiameter.exactOptional(),
    }),
    z.strictObject({
      from: z.literal("outline"),
      outline: z.enum(["elliptic", "constant"]).describe("How the chord runs along the blade"),
      bladeCount: BladeGeometry.shape.bladeCount,
      diameter: BladeGeometry.shape.diameter,
      hubDiameter: BladeGeometry.shape.hubDiameter,
      pitchRatio: si(z.number().positive().max(3), {
        symbol: "P/D",
        unit: "1",
        text: "Pitch ratio, the same all along",
      }),
      areaRatio: si(z.number().positive().max(1.5), {
        symbol: "A_E/A_0",
        unit: "1",
        text: "Area of the blades over that of the disc",
      }),
      thicknessRatio: si(z.number().positive().max(0.6), { symbol: "t/c", unit: "1", text: "Thickness over chord" }),
      camberRatio: si(z.number().min(-0.2).max(0.2), { symbol: "f/c", unit: "1", text: "Camber over chord" }),
    }),
  ])
  .meta({ id: "BladeGeometryRequest" });
export type BladeGeometryRequest = z.infer<typeof BladeGeometryRequest>;

export const BladeGeometryAnswer = z
  .strictObject({ geometry: BladeGeometry, warnings: z.array(ResultWarning) })
  .meta({ id: "BladeGeometryAnswer" });
export type BladeGeometryAnswer = z.infer<typeof BladeGeometryAnswer>;

import { z } from "zod";
import { Note, si } from "../fields.ts";
import { FluidState } from "../fluid.ts";
import { ResultWarning, UncertainNumber } from "../uncertain.ts";
import { DragFitData } from "./dragFit.ts";
import { ShapeItem, ShapeRow } from "./dragShapes.ts";

/**
 * Part by which a sum of shapes is off because they disturb each other and stand for the real thing, one standard
 * uncertainty; common practice, no source.
 */
const INTERFERENCE_DOUBT = 0.15;
/** The same of a spheroid that stands for a hull's added mass; common practice, no source. */
const SPHEROID_DOUBT = 0.2;

/** Where the C_D A of one direction comes from. */
export const DragSource = z
  .discriminatedUnion("from", [
    z.strictObject({
      from: z.literal("typed"),
      dragArea: si(z.number().positive().max(1000), { symbol: "C_D A", unit: "m²", text: "Drag area" }),
      standardUncertainty: si(z.number().min(0).max(1000), {
        symbol: "u",
        unit: "m²",
        text: "Standard uncertainty of the drag area",
      }).default(0),
      note: Note.exactOptional(),
    }),
    z.strictObject({
      from: z.literal("shapes"),
      items: z.array(ShapeItem).min(1).max(300),
      speed: si(z.number().positive().max(50), {
        symbol: "V",
        unit: "m/s",
        text: "Speed at which Reynolds numbers are looked at",
      }),
      interferenceUncertainty: z
        .number()
        .min(0)
        .max(1)
        .default(INTERFERENCE_DOUBT)
        .describe("Relative standard uncertainty of the sum: the parts disturb each other"),
    }),
    z.strictObject({ from: z.literal("fitted"), data: DragFitData }),
  ])
  .meta({ id: "DragSource" });
export type DragSource = z.infer<typeof DragSource>;

/** Added mass of one axis, typed or that of a prolate spheroid (equal sizes: a sphere). */
export const AddedMass = z
  .discriminatedUnion("from", [
    z.strictObject({
      from: z.literal("typed"),
      mass: si(z.number().min(0).max(1e6), { symbol: "m_a", unit: "kg", text: "Added mass" }),
      standardUncertainty: si(z.number().min(0), { symbol: "u", unit: "kg", text: "Standard uncertainty" }).default(0),
    }),
    z.strictObject({
      from: z.literal("spheroid"),
      length: si(z.number().positive().max(100), { symbol: "2a", unit: "m", text: "Length, along its axis" }),
      diameter: si(z.number().positive().max(100), { symbol: "2b", unit: "m", text: "Greatest diameter" }),
      motion: z.enum(["axial", "lateral"]).describe("Along its axis or across it"),
      relativeUncertainty: z
        .number()
        .min(0)
        .max(1)
        .default(SPHEROID_DOUBT)
        .describe("Relative standard uncertainty of it"),
    }),
  ])
  .meta({ id: "AddedMass" });
export type AddedMass = z.infer<typeof AddedMass>;

/** Drag in one direction of motion. */
export const DirectionDrag = z
  .strictObject({
    drag: DragSource,
    linear: z
      .strictObject({
        value: si(z.number().min(0), { symbol: "a", unit: "N·s/m", text: "Linear term: a V is added to the drag" }),
        standardUncertainty: z.number().min(0).default(0).describe("Standard uncertainty, N·s/m"),
      })
      .exactOptional()
      .describe("Absent: that of the fit, or none"),
  })
  .meta({ id: "DirectionDrag" });
export type DirectionDrag = z.infer<typeof DirectionDrag>;

const addedMass = AddedMass.exactOptional().describe("Absent: taken as 0, which a warning says");

/** Drag and added mass of a vehicle along its axes: x forward (surge), y to starboard (sway), z down (heave). */
export const VehicleDrag = z
  .strictObject({
    fluid: FluidState.exactOptional().describe(
      "Water, for Reynolds numbers and added mass; absent: that of the vehicle",
    ),
    surge: z
      .strictObject({
        forward: DirectionDrag,
        astern: DirectionDrag.exactOptional().describe("Absent: as forward"),
        addedMass,
      })
      .exactOptional(),
    sway: z.strictObject({ sideways: DirectionDrag, addedMass }).exactOptional(),
    heave: z
      .strictObject({ down: DirectionDrag, up: DirectionDrag.exactOptional().describe("Absent: as down"), addedMass })
      .exactOptional(),
  })
  .meta({ id: "VehicleDrag" });
export type VehicleDrag = z.infer<typeof VehicleDrag>;

/** Drag of one direction, ready to use. */
export const ResolvedDrag = z
  .strictObject({
    dragArea: si(UncertainNumber, { symbol: "C_D A", unit: "m²", text: "Drag area" }),
    linear: si(UncertainNumber, { symbol: "a", unit: "N·s/m", text: "Linear term" }),
    addedMass: si(UncertainNumber, { symbol: "m_a", unit: "kg", text: "Added mass" }),
    from: z.string().describe("Where it comes from, in words"),
    rows: z.array(ShapeRow).describe("The shapes, where it was built up from them; else none"),
  })
  .meta({ id: "ResolvedDrag" });
export type ResolvedDrag = z.infer<typeof ResolvedDrag>;

export const AxisDrag = z
  .strictObject({
    surge: z.strictObject({ forward: ResolvedDrag, astern: ResolvedDrag }).nullable().describe("Null: not given"),
    sway: ResolvedDrag.nullable(),
    heave: z.strictObject({ up: ResolvedDrag, down: ResolvedDrag }).nullable(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "AxisDrag" });
export type AxisDrag = z.infer<typeof AxisDrag>;

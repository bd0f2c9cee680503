import { z } from "zod";
import { Name, Note, si } from "../fields.ts";
import { ResultWarning, UncertainNumber } from "../uncertain.ts";

const length = (symbol: string, text: string) => si(z.number().positive().max(100), { symbol, unit: "m", text });
const diameter = length("d", "Diameter across the flow");

/** What every shape of the list has: how often it is there and how much of it the water meets. */
const common = {
  name: Name.describe("What it is on the vehicle"),
  count: z.int().min(1).max(1000).default(1).describe("How many of it"),
  exposedShare: si(z.number().min(0).max(1), {
    symbol: "s",
    unit: "1",
    text: "Part of it that undisturbed water meets; the rest hides behind other parts",
  }).default(1),
  interferenceFactor: si(z.number().positive().max(5), {
    symbol: "f",
    unit: "1",
    text: "Factor for what neighbours do to the flow round it; 1 for none",
  }).default(1),
  note: Note.exactOptional(),
};

/**
 * A part of a vehicle as a shape with a known drag coefficient, with the sizes that give its frontal area.
 * `stated` is for what the catalogue lacks: area and coefficient are given with their source.
 */
export const ShapeItem = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("sphere"), diameter, ...common }),
    z.strictObject({ kind: z.literal("hemisphere").describe("Round side forward, closed back"), diameter, ...common }),
    z.strictObject({
      kind: z.literal("cup").describe("Hollow half-sphere"),
      diameter,
      opening: z.enum(["upstream", "downstream"]).describe("Where its opening looks"),
      ...common,
    }),
    z.strictObject({ kind: z.literal("disc").describe("Square to the flow"), diameter, ...common }),
    z.strictObject({
      kind: z.literal("plate").describe("Flat, square to the flow"),
      width: length("b", "Width"),
      height: length("h", "Height"),
      ...common,
    }),
    z.strictObject({
      kind: z.literal("cube"),
      side: length("a", "Side"),
      facing: z.enum(["face", "edge"]).describe("What meets the flow"),
      ...common,
    }),
    z.strictObject({ kind: z.literal("cone").describe("60° in all, point forward"), diameter, ...common }),
    z.strictObject({
      kind: z.literal("axialCylinder").describe("Axis along the flow, flat ends"),
      diameter,
      length: length("L", "Length along the flow"),
      ...common,
    }),
    z.strictObject({
      kind: z.literal("roundedCylinder").describe("Axis along the flow, nose rounded with 0.2 d or more"),
      diameter,
      length: length("L", "Length along the flow"),
      ...common,
    }),
    z.strictObject({
      kind: z.literal("crossCylinder").describe("Axis across the flow"),
      diameter,
      length: length("L", "Length across the flow"),
      ends: z
        .enum(["free", "closed"])
        .default("free")
        .describe("free: water flows round the ends; closed: both ends meet walls"),
      ...common,
    }),
    z.strictObject({
      kind: z.literal("squareBar").describe("Long square bar across the flow"),
      side: length("a", "Side of the square"),
      length: length("L", "Length across the flow"),
      facing: z.enum(["face", "edge"]).describe("What meets the flow"),
      ...common,
    }),
    z.strictObject({
      kind: z.literal("ellipsoid").describe("Body of revolution, long axis along the flow"),
      diameter,
      length: length("L", "Length along the flow"),
      boundaryLayer: z.enum(["laminar", "turbulent"]),
      ...common,
    }),
    z.strictObject({
      kind: z.literal("streamlinedBody").describe("Body of revolution with a fine tail: friction with a form factor"),
      diameter,
      length: length("l", "Length along the flow"),
      wettedArea: si(z.number().positive().max(1000), {
        symbol: "S",
        unit: "m²",
        text: "Wetted area; 0.75 π l d if absent",
      }).exactOptional(),
      ...common,
    }),
    z.strictObject({
      kind: z.literal("stated").describe("Another shape whose coefficient was looked up or measured"),
      area: si(z.number().positive().max(1000), { symbol: "A", unit: "m²", text: "Area of the coefficient" }),
      dragCoefficient: si(z.number().positive().max(10), { symbol: "C_D", unit: "1", text: "Drag coefficient" }),
      relativeUncertainty: z.number().min(0).max(1).default(0.1).describe("Relative standard uncertainty of it"),
      source: z.string().trim().max(300).default("stated by hand").describe("Where the coefficient is from"),
      ...common,
    }),
  ])
  .meta({ id: "ShapeItem" });
export type ShapeItem = z.infer<typeof ShapeItem>;
export type ShapeKind = ShapeItem["kind"];

/** One shape of the list with its drag: a row of the table that shows what part of the drag is what. */
export const ShapeRow = z
  .strictObject({
    name: z.string(),
    kind: z.string(),
    described: z.string().describe("Shape and the sizes that count, in words"),
    count: z.int().describe("How many of it"),
    area: si(z.number(), { symbol: "A", unit: "m²", text: "Frontal area of one" }),
    dragCoefficient: si(z.number(), { symbol: "C_D", unit: "1", text: "Drag coefficient on the frontal area" }),
    dragArea: si(z.number(), { symbol: "C_D A", unit: "m²", text: "C_D A of all of them, shares and factors in" }),
    standardUncertainty: si(z.number(), { symbol: "u", unit: "m²", text: "Of C_D A, from the coefficient alone" }),
    share: si(z.number(), { symbol: "s", unit: "1", text: "Part of the whole" }),
    reynolds: si(z.number(), { symbol: "Re", unit: "1", text: "Reynolds number at the stated speed" }),
    reynoldsRange: z.tuple([z.number(), z.number()]).readonly().describe("Reynolds numbers the coefficient is for"),
    source: z.string().describe("Where the coefficient is from"),
  })
  .meta({ id: "ShapeRow" });
export type ShapeRow = z.infer<typeof ShapeRow>;

export const ShapeDrag = z
  .strictObject({
    rows: z.array(ShapeRow),
    dragArea: si(UncertainNumber, { symbol: "C_D A", unit: "m²", text: "Sum of all shapes" }),
    parts: z
      .strictObject({
        coefficients: z.number().min(0).describe("By the coefficients, m²"),
        interference: z.number().min(0).describe("By what parts do to each other, m²"),
      })
      .describe("Standard uncertainties of the sum, m²"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "ShapeDrag" });
export type ShapeDrag = z.infer<typeof ShapeDrag>;

import { z } from "zod";

/** What a column of a log of a tow, a coast-down or a climb can hold. */
export const DragQuantity = z.enum(["time", "speed", "force", "distance", "depth"]);
export type DragQuantity = z.infer<typeof DragQuantity>;

/** A column that a person names for a quantity. */
export const DragColumn = z
  .strictObject({
    quantity: DragQuantity,
    column: z.union([z.int().min(0), z.string().trim().min(1)]).describe("Index from 0, or the header"),
    unit: z.string().max(20).exactOptional().describe("Unit of its numbers; absent: from the header, else guessed"),
  })
  .meta({ id: "DragColumn" });
export type DragColumn = z.infer<typeof DragColumn>;

/** Which column a quantity was taken from, and why. */
export const DragColumnUse = z
  .strictObject({
    quantity: DragQuantity,
    column: z.int().min(0),
    unit: z.string(),
    reason: z.string(),
    sure: z.boolean().describe("False where the unit or the column is a guess"),
  })
  .meta({ id: "DragColumnUse" });
export type DragColumnUse = z.infer<typeof DragColumnUse>;

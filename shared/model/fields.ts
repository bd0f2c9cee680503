import { z } from "zod";

/** What a form, a table head or the API page says of a number. */
export interface Label {
  readonly symbol: string;
  readonly unit: string;
  readonly text: string;
}

/** A JSON number in SI; its unit and symbol reach the API page and the form labels from here. */
export const si = <S extends z.ZodType>(schema: S, { symbol, unit, text }: Label): S =>
  schema.meta({ description: unit === "1" ? text : `${text}, ${unit}`, symbol, unit });

/** A name a person gave to something. */
export const Name = z.string().trim().min(1).max(120);

/** A note a person wrote. */
export const Note = z.string().trim().max(4000);

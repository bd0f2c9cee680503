import { z } from "zod";
import { type Label, si } from "./fields.ts";

/** Any number with its doubt; see `shared/quantity/uncertain.ts`. */
export const UncertainNumber = z
  .strictObject({
    value: z.number().describe("Best estimate"),
    standardUncertainty: z.number().min(0).describe("Standard uncertainty, same unit as the value"),
    interval95: z.tuple([z.number(), z.number()]).readonly().describe("95 % interval, same unit as the value"),
  })
  .readonly()
  .meta({ id: "UncertainNumber" });

/** An uncertain quantity with a stated unit. */
export const uncertainSi = (label: Label) => si(UncertainNumber, label);

/** Something to know next to a result. */
export const ResultWarning = z
  .strictObject({
    code: z.string().describe("Stable code, room.kebab-case"),
    message: z.string().describe("The whole sentence, ready to show"),
    where: z.string().describe("File, row, column, plateau or field it is about"),
  })
  .readonly()
  .meta({ id: "Warning" });

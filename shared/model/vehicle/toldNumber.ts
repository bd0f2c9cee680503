import { z } from "zod";
import { UncertainNumber } from "../uncertain.ts";

/** A number whose doubt can not be told as an interval. */
export const NumberWithoutInterval = z
  .strictObject({
    value: z.number().describe("Best estimate"),
    standardUncertainty: z.null(),
    interval95: z.null(),
    why: z.string().describe('Why no interval can be stated, to stand behind "no interval can be stated: "'),
  })
  .readonly()
  .meta({ id: "NumberWithoutInterval" });

/** A number with its doubt, or with why that can not be stated; see `shared/quantity/told.ts`. */
export const ToldNumber = z.union([UncertainNumber, NumberWithoutInterval]);

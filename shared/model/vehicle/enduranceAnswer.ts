import { z } from "zod";

/** Mission, range and time that the charge lasts. */
export const EnduranceAnswer = z
  .strictObject({
    sentence: z.string(),
  })
  .meta({ id: "EnduranceAnswer" });
export type EnduranceAnswer = z.infer<typeof EnduranceAnswer>;

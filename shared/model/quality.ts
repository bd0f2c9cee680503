import { z } from "zod";

/** `unknown`: what is there does not allow a judgement; the sentence says what is missing. */
export const QualityVerdict = z.enum(["pass", "flag", "unknown"]);
export type QualityVerdict = z.infer<typeof QualityVerdict>;

/** One question put to a run: can this number be trusted in this respect? */
export const QualityCheck = z
  .strictObject({
    code: z.string().describe("Stable code, bench.kebab-case"),
    name: z.string().describe("What was looked at, in few words"),
    verdict: QualityVerdict,
    measured: z
      .strictObject({
        value: z.number().describe("The number that was judged, in `unit`"),
        unit: z.string().describe("Unit of the number; 1 for a ratio"),
        text: z.string().describe("The same ready to show, with what goes with it"),
      })
      .nullable()
      .describe("What this run has; null where nothing could be measured"),
    limit: z.string().describe("What it is judged against, in words with unit"),
    sentence: z.string().describe("The finding as a sentence"),
    mend: z.string().describe("What to do; empty where nothing is to be done"),
  })
  .meta({ id: "QualityCheck" });
export type QualityCheck = z.infer<typeof QualityCheck>;

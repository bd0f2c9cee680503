import { z } from "zod";
import { si } from "./fields.ts";
import { LogReading } from "./reading.ts";
import { ColumnRole, ColumnUse } from "./recipe.ts";
import { uncertainSi } from "./uncertain.ts";

/** A second log of the same run, recorded on a clock of its own. */
export const Companion = z
  .strictObject({
    file: z.strictObject({
      name: z.string().max(255).describe("Name of the file as it came"),
      sha256: z
        .string()
        .regex(/^[0-9a-f]{64}$/)
        .describe("SHA-256 of its bytes"),
      size: z.int().min(1).describe("Number of bytes"),
    }),
    columns: z.array(ColumnUse).describe("What each column of the second log stands for"),
    reading: LogReading.exactOptional(),
    lag: z
      .discriminatedUnion("mode", [
        z.strictObject({ mode: z.literal("automatic") }),
        z.strictObject({
          mode: z.literal("stated"),
          seconds: si(z.number(), { symbol: "τ", unit: "s", text: "Added to the clock of the second log" }),
        }),
      ])
      .default({ mode: "automatic" }),
  })
  .meta({ id: "Companion" });
export type Companion = z.infer<typeof Companion>;

const Signal = z.strictObject({ role: ColumnRole, header: z.string() });

/** How two logs of one run were laid over each other: time = second clock + lag + rate × (second clock - its middle). */
export const Alignment = z
  .strictObject({
    mode: z.enum(["automatic", "stated"]),
    lag: uncertainSi({ symbol: "τ", unit: "s", text: "Added to the clock of the second log, at its middle" }),
    clockRate: uncertainSi({
      symbol: "ε",
      unit: "1",
      text: "How much faster the first clock runs than the second",
    }).nullable(),
    clockRateApplied: z.boolean().describe("The difference of the clocks is significant and was allowed for"),
    isWholeRun: z.boolean().describe("Settled only because both logs are taken to show the whole run"),
    signals: z.strictObject({ first: Signal, second: Signal }).nullable().describe("The two that were compared"),
    correlation: z.number().nullable().describe("Correlation of the two at this lag"),
    runnerUp: z.number().nullable().describe("Best correlation at any other lag"),
    overlap: si(z.number(), { symbol: "t", unit: "s", text: "Time that both logs cover" }),
    sentence: z.string(),
  })
  .meta({ id: "Alignment" });
export type Alignment = z.infer<typeof Alignment>;

/** Both signals over the time of the first log, each scaled to run from 0 to 1. */
export const AlignmentPicture = z
  .strictObject({
    alignment: Alignment,
    times: z.array(z.number()).describe("Time of the first log, s"),
    first: z.array(z.number().nullable()),
    second: z.array(z.number().nullable()),
  })
  .meta({ id: "AlignmentPicture" });
export type AlignmentPicture = z.infer<typeof AlignmentPicture>;

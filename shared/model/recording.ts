import { z } from "zod";
import { LogInspection } from "./log.ts";
import { ColumnUse } from "./recipe.ts";
import { Reduction } from "./reduction.ts";
import { Run } from "./run.ts";
import { Stored } from "./stored.ts";
import { Trace } from "./trace.ts";
import { ResultWarning } from "./uncertain.ts";

/** A run whose log is still being written. It becomes a run, with this recipe, when it ends. */
export const Recording = Run.omit({ file: true, companion: true })
  .extend({ fileName: z.string().trim().min(1).max(255).describe("What to call the file of the run") })
  .describe("A run that is being recorded. While it names no column, columns are taken as they are guessed")
  .meta({ id: "Recording" });
export type Recording = z.infer<typeof Recording>;

/** What of a recording is safe on disk. */
export const Held = z
  .strictObject({
    bytes: z.int().min(0).describe("Bytes on disk; the offset at which the next post goes on"),
    lines: z.int().min(0).describe("Whole lines among them"),
    receivedAt: z.iso.datetime().nullable().describe("When the last of them came, UTC; null before the first"),
  })
  .meta({ id: "Held" });
export type Held = z.infer<typeof Held>;

export const StoredRecording = z
  .strictObject({ ...Stored, document: Recording, held: Held })
  .meta({ id: "StoredRecording" });
export type StoredRecording = z.infer<typeof StoredRecording>;

/** What a recording says so far, by its whole lines. */
export const LiveResult = z
  .strictObject({
    lines: z.int().min(0).describe("Whole lines it rests on"),
    sha256: z.string().length(64).describe("SHA-256 of these lines"),
    columns: z.array(ColumnUse).describe("What each column was taken for"),
    inspection: LogInspection.nullable().describe("The first look; null where the lines are not a table yet"),
    trace: Trace.nullable().describe("Null where there is none yet"),
    reduction: Reduction.nullable().describe("Null where there is too little for it yet"),
    problem: ResultWarning.nullable().describe("Why one of them is not there yet"),
  })
  .meta({ id: "LiveResult" });
export type LiveResult = z.infer<typeof LiveResult>;

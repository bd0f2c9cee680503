import { z } from "zod";

/** Marks that may stand between two cells, the likeliest first; a single space stands for any run of blanks. */
export const DELIMITERS = ["\t", ";", ",", "|", " "] as const;

/** Repairs that a person may refuse, because the text can be meant otherwise. */
export const REFUSABLE_REPAIRS = [
  "log.comment",
  "log.repeated-header",
  "log.short-row",
  "log.long-row",
  "log.text-cell",
  "log.other-decimals",
  "log.cut-line",
  "log.interleaved-rows",
  "log.clock-rollover",
] as const;
export type RefusableRepair = (typeof REFUSABLE_REPAIRS)[number];

/** What a person decided about the text of a log, over what the reader would settle by itself. Absent: settled by the reader. */
export const LogReading = z
  .strictObject({
    encoding: z.enum(["utf-8", "utf-16le", "utf-16be", "windows-1252"]).exactOptional(),
    delimiter: z
      .enum(DELIMITERS)
      .exactOptional()
      .describe("Between two cells; a single space stands for any run of blanks"),
    decimalMark: z.enum([".", ","]).exactOptional(),
    thousands: z
      .enum(["certain", "always", "never"])
      .exactOptional()
      .describe("Groups of three digits: read where nothing else can be meant, read always, or never"),
    headerLine: z.int().min(1).nullable().exactOptional().describe("Line of the header, from 1; null for no header"),
    firstDataLine: z.int().min(1).exactOptional().describe("Lines above this one are not read as rows, from 1"),
    refusedRepairs: z.array(z.enum(REFUSABLE_REPAIRS)).exactOptional().describe("Repairs that are not to be made"),
  })
  .meta({ id: "LogReading" });
export type LogReading = z.infer<typeof LogReading>;

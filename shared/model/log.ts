import { z } from "zod";
import { ReadingChoice } from "./readingChoice.ts";
import { ColumnRole } from "./recipe.ts";
import { ResultWarning } from "./uncertain.ts";

/** How the text of a log is laid out. */
export const LogShape = z
  .strictObject({
    encoding: z.enum(["utf-8", "utf-16le", "utf-16be", "windows-1252"]),
    delimiter: z.string().describe("Between two cells; a single space stands for any run of blanks"),
    decimalMark: z.enum([".", ","]),
    headerLine: z.int().min(1).nullable().describe("Line of the header, from 1; null where the file has none"),
    unitsLine: z.int().min(1).nullable().describe("Line that holds units alone, from 1"),
    firstDataLine: z.int().min(1).describe("First line of numbers, from 1"),
    commentMark: z.string().nullable().describe("What a comment line starts with"),
    columns: z.array(
      z.strictObject({
        header: z.string().describe("Header text as written; empty where there is none"),
        name: z.string().describe("Header without its unit"),
        unit: z.string().nullable().describe("Unit found in the header or the units row"),
      }),
    ),
  })
  .meta({ id: "LogShape" });
export type LogShape = z.infer<typeof LogShape>;

/** What the program thinks a column is, and why. */
export const RoleGuess = z
  .strictObject({
    column: z.int().min(0).describe("Index of the column in the file, from 0"),
    role: ColumnRole,
    unit: z.string(),
    reason: z.string().describe("Why, in a sentence"),
    sure: z.boolean().describe("False where another reading is plausible"),
    alternatives: z.array(
      z.strictObject({
        role: ColumnRole,
        unit: z.string(),
        implies: z.string().describe("What this reading would mean"),
      }),
    ),
  })
  .meta({ id: "RoleGuess" });
export type RoleGuess = z.infer<typeof RoleGuess>;

/** A change made while reading, listed and counted so that nothing is lost in silence. */
export const Repair = z
  .strictObject({
    code: z.string(),
    count: z.int().min(1).describe("How often it was done"),
    firstLine: z.int().min(1).describe("Line of the file where it was done first"),
    message: z.string(),
    refusable: z.boolean().exactOptional().describe("A person may refuse it; absent: no"),
    refused: z.boolean().exactOptional().describe("It was refused, and the message says what was done instead"),
  })
  .meta({ id: "Repair" });
export type Repair = z.infer<typeof Repair>;

/** First look at a log: shape, guesses, a few rows. */
export const LogInspection = z
  .strictObject({
    shape: LogShape,
    guesses: z.array(RoleGuess),
    preview: z.array(z.array(z.string())).describe("The first rows of numbers as text"),
    rows: z.int().min(0).describe("Rows of numbers"),
    repairs: z.array(Repair),
    warnings: z.array(ResultWarning),
    choices: z
      .array(ReadingChoice)
      .exactOptional()
      .describe("Columns with more than one plausible unit, and what each would mean for the propeller of the run"),
  })
  .meta({ id: "LogInspection" });
export type LogInspection = z.infer<typeof LogInspection>;

import { z } from "zod";

/** What a person decided about one column: which value of the part it holds, and in which unit. */
export const PartsTableColumnChoice = z
  .strictObject({
    column: z.int().min(0).describe("Column, from 0"),
    field: z.string().max(60).describe("Path of the value in the part, e.g. resistance or lead.length; empty: none"),
    unit: z.string().max(30).describe("Unit of numbers that stand without one; empty where there is none"),
  })
  .meta({ id: "PartsTableColumnChoice" });
export type PartsTableColumnChoice = z.infer<typeof PartsTableColumnChoice>;

export const PartsTableAct = z.enum(["add", "update", "skip"]);
export type PartsTableAct = z.infer<typeof PartsTableAct>;

export const PartsTableRowChoice = z
  .strictObject({
    row: z.int().min(1).describe("Line of the table, from 1"),
    act: PartsTableAct.exactOptional().describe("What to do where a part of this name is there"),
    speedConstant: z.number().positive().exactOptional().describe("Speed constant to take instead, rad/(V·s)"),
    keep: z.boolean().exactOptional().describe("The values are right although they look implausible"),
  })
  .meta({ id: "PartsTableRowChoice" });
export type PartsTableRowChoice = z.infer<typeof PartsTableRowChoice>;

/** All that a person decided about a table of parts; what is left away is guessed or asked. */
export const PartsTableChoices = z
  .strictObject({
    columns: z.array(PartsTableColumnChoice).max(200).default([]),
    others: z
      .enum(["leftOut", "note"])
      .default("leftOut")
      .describe("Columns that hold no value of the part: left out, or written into the note"),
    sameName: z
      .enum(["ask", "add", "update", "skip"])
      .default("ask")
      .describe("What to do with a row whose name a part has already"),
    problems: z.enum(["refuse", "leaveOut"]).default("refuse").describe("What to do with rows that can not be read"),
    rows: z.array(PartsTableRowChoice).max(5000).default([]),
  })
  .meta({ id: "PartsTableChoices" });
export type PartsTableChoices = z.infer<typeof PartsTableChoices>;

export const PartsTableRequest = z
  .strictObject({
    name: z.string().trim().max(200).default("the table").describe("What the table is called in messages"),
    text: z.string().min(1).max(2_000_000).describe("Delimited text: a head, then a row for each part"),
    choices: PartsTableChoices.prefault({}),
  })
  .meta({ id: "PartsTableRequest" });
export type PartsTableRequest = z.infer<typeof PartsTableRequest>;

const UnitReading = z.strictObject({
  unit: z.string(),
  implies: z.string().describe("What the numbers come to in this unit, a sentence"),
});

export const PartsTableColumn = z
  .strictObject({
    column: z.int().describe("Column, from 0"),
    header: z.string(),
    examples: z.array(z.string()).describe("The first cells that are not empty"),
    field: z.string().describe("Path of the value in the part; empty: none"),
    unit: z.string(),
    reason: z.string().describe("Why it is taken so, a sentence"),
    readings: z.array(UnitReading).describe("Units it can be in; more than one: it is a question until it is chosen"),
    open: z.boolean().describe("A person must choose the unit before anything is imported"),
  })
  .meta({ id: "PartsTableColumn" });
export type PartsTableColumn = z.infer<typeof PartsTableColumn>;

const Told = z.strictObject({ code: z.string(), where: z.string(), message: z.string() });

export const PartsTableRow = z
  .strictObject({
    row: z.int().describe("Line of the table, from 1"),
    name: z.string(),
    act: z.enum(["add", "update", "skip", "ask"]).describe("ask: a part of this name is there and nothing was chosen"),
    storedId: z.uuid().nullable().describe("The part of this name that is there"),
    document: z
      .record(z.string(), z.unknown())
      .nullable()
      .describe("The whole part as it would be stored; null while it can not be made"),
    changes: z.array(z.string()).describe("What an update would change"),
    problems: z.array(Told).describe("What keeps the row from being read, by cell"),
    doubts: z.array(Told).describe("What looks implausible"),
    readings: z
      .array(z.strictObject({ speedConstant: z.number().describe("rad/(V·s)"), says: z.string() }))
      .describe("What the speed constant may have been meant as, rad/(V·s)"),
    open: z.boolean().describe("A person must say whether the doubtful values are right"),
  })
  .meta({ id: "PartsTableRow" });
export type PartsTableRow = z.infer<typeof PartsTableRow>;

/** What would become of a table of parts. */
export const PartsTablePreview = z
  .strictObject({
    columns: z.array(PartsTableColumn),
    rows: z.array(PartsTableRow),
    leftOut: z.array(z.string()).describe("Headers of columns whose content is not kept"),
    told: z.array(z.string()).describe("What was settled without asking, sentences"),
    open: z.array(z.string()).describe("What must be decided before it can be imported, sentences; empty: it can be"),
  })
  .meta({ id: "PartsTablePreview" });
export type PartsTablePreview = z.infer<typeof PartsTablePreview>;

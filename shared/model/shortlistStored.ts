import { z } from "zod";
import { Name, Note } from "./fields.ts";
import { ShortlistRequest } from "./shortlist.ts";
import { Shortlist } from "./shortlistResult.ts";
import { storedSchema } from "./stored.ts";

/** A shortlist as it is kept: what was asked, what came out, of which program and when. */
export const KeptShortlist = z
  .strictObject({
    name: Name,
    note: Note.default(""),
    request: ShortlistRequest,
    result: Shortlist,
    program: z.string().max(100).describe("Program and version that made it"),
    madeAt: z.iso.datetime().describe("When it was made, UTC"),
    seconds: z.number().min(0).describe("How long the search took, s"),
  })
  .meta({ id: "KeptShortlist" });
export type KeptShortlist = z.infer<typeof KeptShortlist>;

export const StoredShortlist = storedSchema(KeptShortlist).meta({ id: "StoredShortlist" });
export type StoredShortlist = z.infer<typeof StoredShortlist>;

/** One line of the list of shortlists. */
export const ShortlistEntry = z
  .strictObject({
    id: z.uuid().describe("Identity, given by the store"),
    version: z.int().min(1).describe("Grows by one at each write; a write must name the version it changes"),
    name: Name,
    answer: z.string(),
    combinations: z.int().min(0).describe("Combinations searched"),
    meeting: z.int().min(0).describe("Combinations that meet the requirement"),
    program: z.string(),
    madeAt: z.iso.datetime().describe("When it was made, UTC"),
  })
  .meta({ id: "ShortlistEntry" });
export type ShortlistEntry = z.infer<typeof ShortlistEntry>;

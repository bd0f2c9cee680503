import { z } from "zod";

/** What the store adds to every document. `version` grows by one at each write; a write must name the one it read. */
export const Stored = {
  id: z.uuid().describe("Identity, given by the store"),
  version: z.int().min(1).describe("Grows by one at each write; a write must name the version it changes"),
  updatedAt: z.iso.datetime().describe("Time of the last write, UTC"),
};

export interface StoredDocument<T> {
  readonly id: string;
  readonly version: number;
  readonly updatedAt: string;
  readonly document: T;
}

/** The stored form of a document schema. */
export const storedSchema = <S extends z.ZodType>(document: S) => z.strictObject({ ...Stored, document });

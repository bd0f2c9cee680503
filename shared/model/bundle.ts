import { z } from "zod";
import { Project } from "./project.ts";
import { Stored, storedSchema } from "./stored.ts";
import { ResultWarning } from "./uncertain.ts";

/** Written into every bundle, so that another ZIP file is told from one. */
export const BUNDLE_FORMAT = "bollard-bench-project";

/** Raised by one whenever a bundle of the new program would be misread by the one before. */
export const BUNDLE_VERSION = 1;

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** One file inside a bundle. */
export const BundleEntry = z
  .strictObject({
    path: z.string().min(1).max(120).describe("Name inside the bundle"),
    sha256: sha256.describe("SHA-256 of its bytes"),
    size: z.int().min(0).describe("Number of bytes, unpacked"),
  })
  .meta({ id: "BundleEntry" });
export type BundleEntry = z.infer<typeof BundleEntry>;

/** manifest.json of a bundle: what else it holds, in the order in which the documents were made. */
export const BundleManifest = z
  .strictObject({
    format: z.literal(BUNDLE_FORMAT),
    formatVersion: z.int().min(1).max(BUNDLE_VERSION).describe("Version of this layout"),
    program: z.string().max(100).describe("Program and version that wrote it"),
    savedAt: z.iso.datetime().describe("When it was written, UTC"),
    project: z.string().max(120).describe("Name of the project"),
    notIncluded: z.array(z.string()).describe("Recordings that were still running, by name; they are not in it"),
    entries: z.array(BundleEntry),
  })
  .meta({ id: "BundleManifest" });
export type BundleManifest = z.infer<typeof BundleManifest>;

/** A document inside a bundle, with the identity that other documents of the bundle name it by. */
export const bundledSchema = <S extends z.ZodType>(document: S) => z.strictObject({ id: Stored.id, document });

/** What became of a bundle: a project of its own. */
export const OpenedBundle = z
  .strictObject({
    project: storedSchema(Project),
    counts: z.strictObject({
      parts: z.int().min(0).describe("How many came in"),
      runs: z.int().min(0).describe("How many came in"),
      shortlists: z.int().min(0).describe("How many came in"),
      files: z.int().min(0).describe("How many came in"),
    }),
    notIncluded: BundleManifest.shape.notIncluded,
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "OpenedBundle" });
export type OpenedBundle = z.infer<typeof OpenedBundle>;

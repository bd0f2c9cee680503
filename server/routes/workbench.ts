import { z } from "zod";
import type { LiveResults } from "../recording/liveResults.ts";
import type { Recorder } from "../recording/recorder.ts";
import type { Store } from "../store/store.ts";
import type { Reductions } from "../work/reductions.ts";
import type { WorkPool } from "../work/workPool.ts";

/** What the routes work with. */
export interface Workbench {
  readonly store: Store;
  readonly pool: WorkPool;
  readonly reductions: Reductions;
  readonly recorder: Recorder;
  readonly live: LiveResults;
}

const id = (text: string) => z.uuid().describe(text);

export const InProject = z.strictObject({ projectId: id("Project") });
export const OneRun = z.strictObject({ projectId: id("Project"), id: id("Run") });
export const OneRecording = z.strictObject({ projectId: id("Project"), id: id("Recording") });
export const OneShortlist = z.strictObject({ projectId: id("Project"), id: id("Shortlist") });
export const OnePart = z.strictObject({ projectId: id("Project"), id: id("Part") });

/** The run at that place. Throws NothingThere. */
export const runOf = (store: Store, { projectId, id: run }: z.infer<typeof OneRun>) => store.runs(projectId).find(run);

/** The version a deletion was decided on; a later one is not deleted. */
export const AtVersion = z.strictObject({
  version: z.coerce.number().int().min(1).describe("Version that was read; a later one is not deleted"),
});

/** A document and the version it takes the place of. */
export const change = <S extends z.ZodType>(document: S) =>
  z.strictObject({ version: z.int().min(1).describe("Version that was read and changed"), document });

/** Nothing in the body. */
export const Gone = z.null().describe("Deleted; restore takes it back");

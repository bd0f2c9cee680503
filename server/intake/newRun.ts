import type { LogInspection } from "../../shared/model/log.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { ReceivedFile } from "../store/fileVault.ts";
import type { Store } from "../store/store.ts";
import type { WorkOptions, WorkPool } from "../work/workPool.ts";
import { firstRun } from "./firstRun.ts";
import { shortened } from "./shortened.ts";

export interface Intake {
  readonly store: Store;
  readonly pool: WorkPool;
}

/** A log on its way in. */
export interface IncomingLog {
  /** Name of the file as it came. */
  readonly fileName: string;
  /** What to call the run; the file's name without its ending where absent. */
  readonly runName?: string;
  readonly bytes: AsyncIterable<Uint8Array>;
}

export interface NewRun {
  readonly run: StoredDocument<Run>;
  readonly inspection: LogInspection;
}

/**
 * Makes a run of the bytes of a log: they are received whole, looked at, and only then kept and entered together.
 * A log that can not be read, or that nobody waits for any more, leaves nothing behind. Throws InputProblem told from
 * the file, or WorkCancelled.
 */
export async function newRun(
  { store, pool }: Intake,
  projectId: string,
  { fileName, runName = withoutEnding(fileName), bytes }: IncomingLog,
  options: Pick<WorkOptions, "signal"> = {},
): Promise<NewRun> {
  const received = await store.files.receive(bytes);
  try {
    const { path, sha256, size } = received;
    if (size === 0) throw emptyFile(fileName);
    const inspection = await pool.run({ kind: "inspect", file: { path, sha256, name: fileName, size } }, options);
    await store.files.keep(received);
    const { document, taken } = firstRun(store, projectId, fileName, inspection.guesses);
    const file = { name: fileName, sha256, size };
    const run = enterRun(store, projectId, { file: received, run: { ...document, name: runName, file } });
    return { run, inspection: { ...inspection, warnings: [...inspection.warnings, ...taken] } };
  } finally {
    // Kept files have moved on; this is for the others.
    await store.files.discard(received);
  }
}

/** Enters a kept file and the run that rests on it, both or none; under `id` where the run is to have a certain one. */
export function enterRun(
  store: Store,
  projectId: string,
  { file, run, id }: { readonly file: ReceivedFile; readonly run: Run; readonly id?: string },
): StoredDocument<Run> {
  return store.transaction(() => {
    store.noteFile(file);
    return store.runs(projectId).add(run, id);
  });
}

/** The name of the file without its ending, for a person to change. */
function withoutEnding(fileName: string): string {
  const name = fileName.replace(/\.[^.]{1,5}$/, "").trim();
  return shortened(name === "" ? fileName : name, 120);
}

export function emptyFile(name: string): InputProblem {
  return new InputProblem({
    code: "intake.empty-file",
    where: name,
    found: "The file is empty (0 bytes)",
    needed: "a log with a row for each reading",
    mend: "Look whether the logger had finished writing, and copy it again",
  });
}

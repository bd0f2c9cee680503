import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import type { LogInspection } from "../../shared/model/log.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { warning } from "../../shared/quantity/warning.ts";
import type { ReceivedFile } from "../store/fileVault.ts";
import type { Store } from "../store/store.ts";
import type { WorkPool } from "../work/workPool.ts";

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

/** Until a person says otherwise, a stand is taken to stand in fresh water of a room. */
const BENCH_WATER: FluidState = { kind: "fresh", temperature: 291.15 };

/**
 * Makes a run of the bytes of a log: they are received whole, looked at, and only then kept and entered together.
 * A log that can not be read leaves nothing behind. Throws InputProblem told from the file.
 */
export async function newRun(
  { store, pool }: Intake,
  projectId: string,
  { fileName, runName = withoutEnding(fileName), bytes }: IncomingLog,
): Promise<NewRun> {
  const received = await store.files.receive(bytes);
  try {
    const inspection = await inspect(pool, received, fileName);
    const { sha256, size } = received;
    const file = { name: fileName, sha256, size };
    const document = { ...firstDocument(store, projectId, inspection), name: runName, file };
    await store.files.keep(received);
    return { run: enterRun(store, projectId, received, document), inspection };
  } finally {
    // Kept files have moved on; this is for the others.
    await store.files.discard(received);
  }
}

/** Enters a kept file and the run that rests on it, both or none. */
export function enterRun(store: Store, projectId: string, file: ReceivedFile, run: Run): StoredDocument<Run> {
  return store.transaction(() => {
    store.noteFile(file);
    return store.runs(projectId).add(run);
  });
}

async function inspect(pool: WorkPool, { path, sha256, size }: ReceivedFile, name: string): Promise<LogInspection> {
  if (size === 0) throw emptyFile(name);
  const inspection = await pool.run({ kind: "inspect", file: { path, sha256, name } });
  return { ...inspection, warnings: [...inspection.warnings, assumedWater(name)] };
}

function firstDocument(store: Store, projectId: string, { guesses }: LogInspection): Omit<Run, "name" | "file"> {
  const propellers = store.parts(projectId, "propellers").list();
  const only = propellers.length === 1 ? propellers[0] : undefined;
  return {
    ...(only !== undefined && { propellerId: only.id }),
    variant: only?.document.finish ?? "",
    mounting: "",
    recipe: recipeFromGuesses({ guesses, fluid: BENCH_WATER }),
    confirmed: false,
    note: "",
  };
}

/** The name of the file without its ending, for a person to change. */
function withoutEnding(fileName: string): string {
  const name = fileName.replace(/\.[^.]{1,5}$/, "").trim();
  return (name === "" ? fileName : name).slice(0, 120);
}

function emptyFile(name: string): InputProblem {
  return new InputProblem({
    code: "intake.empty-file",
    where: name,
    found: "The file is empty (0 bytes)",
    needed: "a log with a row for each reading",
    mend: "Look whether the logger had finished writing, and copy it again",
  });
}

function assumedWater(name: string) {
  return warning({
    code: "intake.assumed-water",
    where: name,
    found: "The log does not say what the propeller turned in; fresh water of 18 °C was taken",
    needed: "",
    mend: "Set the fluid and its temperature of the day of the test",
  });
}

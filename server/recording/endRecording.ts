import { createReadStream } from "node:fs";
import type { Recording } from "../../shared/model/recording.ts";
import type { Run } from "../../shared/model/run.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { columnsSettled } from "../intake/columnsSettled.ts";
import { enterRun, type Intake, type NewRun } from "../intake/newRun.ts";
import type { Recorder } from "./recorder.ts";

/**
 * Makes a recording an ordinary run: its bytes are kept under their hash, the run is entered and the recording put away,
 * both or none. The run has the id of the recording, so that whoever watched it finds the run at the same address.
 * A log that can not be read as a table stays a recording. Throws NothingThere, InputProblem told from the log, or
 * `recording.nothing-came`.
 */
export async function endRecording(
  { store, pool, recorder }: Intake & { readonly recorder: Recorder },
  projectId: string,
  id: string,
): Promise<NewRun> {
  const log = await recorder.log(id);
  await log.seal();
  try {
    const { version, document } = store.recordings(projectId).find(id);
    if (log.held.bytes === 0) throw nothingCame(document);
    const received = await store.files.receive(createReadStream(recorder.path(id)));
    try {
      const { path, sha256, size } = received;
      const file = { name: document.fileName, sha256, size };
      const { reading } = document.recipe;
      const inspection = await pool.run({ kind: "inspect", file: { ...file, path, ...(reading && { reading }) } });
      await store.files.keep(received);
      const recipe = columnsSettled(document.recipe, inspection.guesses);
      const run = store.transaction(() => {
        store.recordings(projectId).remove(id, version);
        return enterRun(store, projectId, { file: received, run: runOf(document, { file, recipe }), id });
      });
      await recorder.remove(id);
      return { run, inspection };
    } finally {
      // Kept files have moved on; this is for the others.
      await store.files.discard(received);
    }
  } catch (reason) {
    log.unseal();
    throw reason;
  }
}

function runOf({ fileName: _fileName, ...document }: Recording, rest: Pick<Run, "file" | "recipe">): Run {
  return { ...document, ...rest };
}

function nothingCame({ name }: Recording): InputProblem {
  return new InputProblem({
    code: "recording.nothing-came",
    where: name,
    found: "No line has come yet",
    needed: "a log with a row for each reading",
    mend: "Wait for the first lines, or discard the recording",
  });
}

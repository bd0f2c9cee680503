import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import type { Companion } from "../../shared/model/alignment.ts";
import type { LogInspection } from "../../shared/model/log.ts";
import type { Run } from "../../shared/model/run.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { emptyFile, type IncomingLog, type Intake } from "./newRun.ts";

export interface NewCompanion {
  readonly companion: Companion;
  readonly inspection: LogInspection;
}

/**
 * Receives the electrical log of a run: the bytes are kept, the columns guessed, and the lag left to be found. The run
 * is not changed. Throws InputProblem told from the file, or `intake.empty-file`, `run.same-file`.
 */
export async function newCompanion(
  { store, pool }: Intake,
  run: Run,
  { fileName, bytes }: Pick<IncomingLog, "fileName" | "bytes">,
): Promise<NewCompanion> {
  const received = await store.files.receive(bytes);
  try {
    const { path, sha256, size } = received;
    if (size === 0) throw emptyFile(fileName);
    if (sha256 === run.file.sha256) throw sameFile(fileName, run);
    const inspection = await pool.run({ kind: "inspect", file: { path, sha256, name: fileName, size } });
    await store.files.keep(received);
    store.noteFile(received);
    const { columns } = recipeFromGuesses({ guesses: inspection.guesses, fluid: run.recipe.fluid });
    return { companion: { file: { name: fileName, sha256, size }, columns, lag: { mode: "automatic" } }, inspection };
  } finally {
    await store.files.discard(received);
  }
}

function sameFile(where: string, run: Run): InputProblem {
  return new InputProblem({
    code: "run.same-file",
    where,
    found: `This is the file that ${run.name} was made from`,
    needed: "the other log of the run",
    mend: "Choose the log of the electrical side",
  });
}

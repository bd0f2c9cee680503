import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { traceOf } from "../../shared/bench/trace.ts";
import { inspectLog } from "../../shared/log/inspectLog.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import { readLogFile } from "../intake/readLogFile.ts";
import type { Job, LogFile, OutcomeOf, Outcomes } from "./jobs.ts";
import type { TableCache } from "./tableCache.ts";

/** Reading a log takes about this share of the time of a first reduction. */
const READING_SHARE = 0.8;

export interface Progress {
  readonly onProgress: (fraction: number) => void;
  readonly signal: AbortSignal;
}

/** Does one job to its end. Throws InputProblem or OutOfDomain, or the reason of `signal`. */
export async function runJob<J extends Job>(job: J, cache: TableCache, progress: Progress): Promise<OutcomeOf<J>> {
  const table = await tableOf(job.file, cache, progress);
  // Lets a cancellation in that came while the last chunk was read.
  await new Promise((resolve) => setImmediate(resolve));
  progress.signal.throwIfAborted();
  return outcomeOf(job, table) as OutcomeOf<J>;
}

async function tableOf({ path, sha256, name }: LogFile, cache: TableCache, progress: Progress): Promise<LogTable> {
  const known = cache.get(sha256);
  if (known !== undefined) return { ...known, fileName: name };
  const onProgress = (fraction: number) => progress.onProgress(READING_SHARE * fraction);
  const table = await readLogFile(path, name, { onProgress, signal: progress.signal });
  cache.put(sha256, table);
  return table;
}

function outcomeOf(job: Job, table: LogTable): Outcomes[keyof Outcomes] {
  switch (job.kind) {
    case "inspect":
      return inspectLog(table);
    case "trace":
      return traceOf({ ...job, table });
    case "reduce":
      return reduceRun({ ...job, table, source: { sha256: job.file.sha256, program: job.program } });
  }
}

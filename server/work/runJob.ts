import { electricalPlateaus } from "../../shared/bench/electricalPlateaus.ts";
import { alignmentPicture, mergedLog } from "../../shared/bench/mergedLog.ts";
import { monteCarloOfRun } from "../../shared/bench/monteCarloOfRun.ts";
import { readingChoices } from "../../shared/bench/readingChoices.ts";
import { reduceInSteps, runFactsOf } from "../../shared/bench/reduceRun.ts";
import { traceOf } from "../../shared/bench/trace.ts";
import { inspectLog } from "../../shared/log/inspectLog.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import type { LogInspection } from "../../shared/model/log.ts";
import type { Recipe } from "../../shared/model/recipe.ts";
import { InputProblem, OutOfDomain } from "../../shared/quantity/problem.ts";
import type { Warning } from "../../shared/quantity/warning.ts";
import { collectBeyond } from "./collected.ts";
import type {
  CompanionLog,
  InspectJob,
  Job,
  LiveJob,
  LogJob,
  MonteCarloJob,
  OutcomeOf,
  Outcomes,
  ReduceJob,
  WholeVehicleJob,
} from "./jobs.ts";
import { liveResult } from "./liveResult.ts";
import { shortlistWork } from "./shortlistWork.ts";
import { arrayBytes, tableBytes } from "./tableCache.ts";
import type { Progress, Tables } from "./tables.ts";
import { vehicleWork } from "./vehicleWork.ts";

/** Reading a log takes about this share of the time of a first reduction. */
const READING_SHARE = 0.8;

/** Does one job to its end. Throws InputProblem or OutOfDomain, or the reason of `signal`. */
export async function runJob<J extends Job>(job: J, tables: Tables, progress: Progress): Promise<OutcomeOf<J>> {
  if (isOfVehicle(job)) return vehicleWork(job) as OutcomeOf<J>;
  if (!("file" in job)) return (await stepByStep(shortlistWork(job), progress)) as OutcomeOf<J>;
  if (job.kind === "live") return (await liveResult(job, progress)) as OutcomeOf<J>;
  let read = 0;
  const onProgress = (part: number) => {
    read = READING_SHARE * part;
    progress.onProgress(read);
  };
  const reading = { ...progress, onProgress };
  const table = await tables.tableOf(job.file, reading);
  // Lets a cancellation in that came while the last chunk was read.
  await new Promise((resolve) => setImmediate(resolve));
  progress.signal.throwIfAborted();
  const { companion } = job;
  const second = companion && { ...companion, table: await tables.tableOf(companion.file, reading) };
  if (job.kind === "monteCarlo") return (await monteCarlo(job, table, second, progress)) as OutcomeOf<J>;
  if (job.kind === "reduce") return (await reduced(job, table, second, after(read, progress))) as OutcomeOf<J>;
  return outcomeOf(job, table, second) as OutcomeOf<J>;
}

function isOfVehicle(job: Job): job is WholeVehicleJob {
  return job.kind === "vehicle" || job.kind === "vehicleLayout" || job.kind === "vehicleDrag" || job.kind === "tether";
}

/** The second log with its table. */
type Second = CompanionLog & { readonly table: LogTable };

async function monteCarlo(job: MonteCarloJob, table: LogTable, second: Second | undefined, progress: Progress) {
  const { table: both, recipe } = together(table, job.recipe, second);
  const source = { sha256: job.file.sha256, program: job.program };
  return stepByStep(monteCarloOfRun(runFactsOf({ ...job, table: both, recipe, source }), job), progress);
}

async function reduced(job: ReduceJob, table: LogTable, second: Second | undefined, progress: Progress) {
  const { warnings, ...both } = together(table, job.recipe, second);
  const source = { sha256: job.file.sha256, program: job.program };
  const isLong = tableBytes(both.table) > LONG_TABLE;
  const tidied = isLong ? { ...progress, onProgress: collectingAfter(both.table, progress) } : progress;
  const reduction = await stepByStep(reduceInSteps({ ...job, ...both, source }), tidied);
  return { ...reduction, warnings: [...warnings, ...reduction.warnings] };
}

/** A table of which no second one would fit into memory. */
const LONG_TABLE = 200e6;

/** Readings of its plateaus are taken anew for each step of a long table, and must not pile up. */
function collectingAfter(table: LogTable, { onProgress }: Progress): Progress["onProgress"] {
  return (part) => {
    collectBeyond(arrayBytes(table));
    onProgress(part);
  };
}

/** What is left to tell of when `done` has been told: nothing was read where the table was at hand. */
function after(done: number, { onProgress, signal }: Progress): Progress {
  return { signal, onProgress: (part) => onProgress(done + (1 - done) * part) };
}

/** Between two steps progress is told and a cancellation is heard. */
async function stepByStep<T>(work: Generator<number, T>, { onProgress, signal }: Progress): Promise<T> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    onProgress(step.value);
    await new Promise((resolve) => setImmediate(resolve));
    signal.throwIfAborted();
  }
}

function outcomeOf(
  job: Exclude<LogJob, ReduceJob | MonteCarloJob | LiveJob>,
  table: LogTable,
  second: Second | undefined,
): Outcomes[keyof Outcomes] {
  switch (job.kind) {
    case "inspect":
      return inspected(job, table, second);
    case "align":
      return alignmentPicture({ ...job, table, companionTable: second!.table, companion: second! }, job.points);
    case "electrical":
      return electricalPlateaus({ ...job, ...together(table, job.recipe, second) });
    case "trace":
      return traceOf({ ...job, ...together(table, job.recipe, second) });
  }
}

interface Together {
  readonly table: LogTable;
  readonly recipe: Recipe;
  readonly warnings: readonly Warning[];
}

/** Both logs as one, where there are two. */
function together(table: LogTable, recipe: Recipe, second: Second | undefined): Together {
  if (second === undefined) return { table, recipe, warnings: [] };
  const merged = mergedLog({ table, recipe, companionTable: second.table, companion: second });
  return { table: merged.table, recipe: merged.recipe, warnings: merged.warnings };
}

/** A first look, with what each open reading would mean where it is known what was on the stand. */
function inspected({ run }: InspectJob, table: LogTable, second: Second | undefined): LogInspection {
  const inspection = inspectLog(table);
  if (run === undefined) return inspection;
  const decided = run.confirmed ? { decided: new Set(run.recipe.columns.map(({ role }) => role)) } : {};
  try {
    const choices = readingChoices({ ...run, ...together(table, run.recipe, second), ...decided });
    return { ...inspection, choices };
  } catch (error) {
    // A recipe that does not fit the table is told of by the reduction; the columns must still be shown to mend it.
    if (error instanceof InputProblem || error instanceof OutOfDomain) return inspection;
    throw error;
  }
}

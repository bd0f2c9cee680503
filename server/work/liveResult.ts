import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { traceOf } from "../../shared/bench/trace.ts";
import { inspectLog } from "../../shared/log/inspectLog.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import type { Recipe } from "../../shared/model/recipe.ts";
import type { LiveResult } from "../../shared/model/recording.ts";
import { InputProblem, OutOfDomain, sentence } from "../../shared/quantity/problem.ts";
import { columnsSettled } from "../intake/columnsSettled.ts";
import { readLogFile } from "../intake/readLogFile.ts";
import type { LiveJob } from "./jobs.ts";
import type { Progress } from "./tables.ts";

/**
 * What the lines of a recording say so far. Too little for a table, a trace or a reduction is no failure: it is told as
 * the `problem` of the result. The table is not kept: the next lines make another.
 */
export async function liveResult(job: LiveJob, { signal }: Pick<Progress, "signal">): Promise<LiveResult> {
  const { file, lines } = job;
  const nothing = { lines, sha256: file.sha256, columns: [], inspection: null, trace: null, reduction: null };
  const reading = { signal, upTo: file.size, ...(file.reading && { reading: file.reading }) };
  const { value: table, problem } = await orProblem(() => readLogFile(file.path, file.name, reading));
  signal.throwIfAborted();
  return { ...nothing, ...(table === null ? { problem } : await saidBy(table, job)) };
}

/** The same of a table. */
async function saidBy(table: LogTable, job: LiveJob) {
  const inspection = inspectLog(table);
  const recipe = columnsSettled(job.recipe, inspection.guesses);
  const trace = await orProblem(() => traceOf({ ...job, table, recipe }));
  const reduction = await orProblem(() => reductionOf(table, recipe, job));
  return {
    inspection,
    columns: recipe.columns,
    trace: trace.value,
    reduction: reduction.value,
    problem: reduction.problem ?? trace.problem,
  };
}

function reductionOf(table: LogTable, recipe: Recipe, { propeller, ...job }: LiveJob) {
  const source = { sha256: job.file.sha256, program: job.program };
  return propeller === undefined ? null : reduceRun({ ...job, table, recipe, propeller, source });
}

interface Outcome<T> {
  readonly value: T | null;
  readonly problem: LiveResult["problem"];
}

/** The outcome of `work`, or in words why the lines do not give it. */
async function orProblem<T>(work: () => T | Promise<T>): Promise<Outcome<T>> {
  try {
    return { value: await work(), problem: null };
  } catch (reason) {
    if (reason instanceof InputProblem || reason instanceof OutOfDomain) {
      const { code, where } = reason.problem;
      return { value: null, problem: { code, where, message: sentence(reason.problem) } };
    }
    throw reason;
  }
}

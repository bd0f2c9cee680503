// Entry of a worker thread: takes one job at a time, reports progress and the outcome.
import { parentPort, workerData } from "node:worker_threads";
import { InputProblem, OutOfDomain } from "../../shared/quantity/problem.ts";
import { stayBehindRequests } from "./behindRequests.ts";
import { collectBeyond } from "./collected.ts";
import type { Job, Order, Report } from "./jobs.ts";
import { runJob } from "./runJob.ts";
import { TableCache } from "./tableCache.ts";
import { TableFolder } from "./tableFolder.ts";
import { Tables } from "./tables.ts";
import type { ThreadData } from "./workThread.ts";

stayBehindRequests();
const { cacheBytes, tableFolder } = workerData as ThreadData;
const folder = tableFolder === undefined ? undefined : new TableFolder(tableFolder);
const tables = new Tables(new TableCache(cacheBytes), folder);
/** Time without work after which what nobody holds is given back: the other thread may need the memory. ms */
const IDLE = 300;
let tidying: NodeJS.Timeout | undefined;
let running: { readonly id: number; readonly abort: AbortController } | undefined;

const report = (message: Report) => parentPort?.postMessage(message);

parentPort?.on("message", (order: Order) => {
  if ("job" in order) void work(order.id, order.job);
  else if (running?.id === order.id) running.abort.abort();
});

async function work(id: number, job: Job): Promise<void> {
  const abort = new AbortController();
  running = { id, abort };
  clearTimeout(tidying);
  try {
    const onProgress = (fraction: number) => report({ id, fraction });
    report({ id, outcome: await runJob(job, tables, { onProgress, signal: abort.signal }) });
  } catch (reason) {
    report({ id, ...failure(reason, abort.signal) });
  }
  tidying = setTimeout(() => collectBeyond(0), IDLE);
}

function failure(reason: unknown, signal: AbortSignal) {
  if (signal.aborted) return { cancelled: true } as const;
  if (reason instanceof InputProblem) return { refusal: "input", problem: reason.problem } as const;
  if (reason instanceof OutOfDomain) return { refusal: "domain", problem: reason.problem } as const;
  return { fault: reason instanceof Error ? (reason.stack ?? reason.message) : String(reason) };
}

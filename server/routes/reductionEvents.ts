import { PassThrough, type Readable } from "node:stream";
import { detailsOf } from "../problems/answerProblem.ts";
import type { ReduceJob } from "../work/jobs.ts";
import type { Reductions } from "../work/reductions.ts";

/** Progress is told in steps of this share: a page can not show more. */
const STEP = 0.01;

/**
 * A reduction as server-sent events: `progress`, then `reduction` or `problem`, then the end.
 * When the reader goes away the work is stopped.
 */
export function reductionEvents(reductions: Reductions, job: () => ReduceJob): Readable {
  const events = new PassThrough();
  const abort = new AbortController();
  events.on("close", () => abort.abort());
  const tell = (name: string, data: unknown) => {
    if (!events.destroyed) events.write(`event: ${name}\ndata: ${JSON.stringify(data)}\n\n`);
  };
  void follow(reductions, job, abort.signal, tell).finally(() => events.end());
  return events;
}

async function follow(
  reductions: Reductions,
  job: () => ReduceJob,
  signal: AbortSignal,
  tell: (name: string, data: unknown) => void,
): Promise<void> {
  let told = 0;
  tell("progress", { fraction: 0 });
  const onProgress = (fraction: number) => {
    if (fraction < told + STEP) return;
    told = fraction;
    tell("progress", { fraction });
  };
  try {
    tell("reduction", await reductions.reduce(job(), { signal, onProgress }));
  } catch (reason) {
    const details = detailsOf(reason);
    if (details.status >= 500) console.error(reason);
    tell("problem", details);
  }
}

import { PassThrough, type Readable } from "node:stream";
import { detailsOf } from "../problems/answerProblem.ts";
import type { WorkOptions } from "../work/workPool.ts";

/** Progress is told in steps of this share: a page can not show more. */
const STEP = 0.01;

/**
 * Work as server-sent events: `progress`, then its outcome under `name` or `problem`, then the end.
 * When the reader goes away the work is stopped.
 */
export function workEvents(name: string, work: (options: Required<WorkOptions>) => Promise<unknown>): Readable {
  const events = new PassThrough();
  const abort = new AbortController();
  events.on("close", () => abort.abort());
  const tell = (event: string, data: unknown) => {
    if (!events.destroyed) events.write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
  };
  void follow(name, work, abort.signal, tell).finally(() => events.end());
  return events;
}

async function follow(
  name: string,
  work: (options: Required<WorkOptions>) => Promise<unknown>,
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
    tell(name, await work({ signal, onProgress }));
  } catch (reason) {
    const details = detailsOf(reason);
    if (details.status >= 500) console.error(reason);
    tell("problem", details);
  }
}

import { PassThrough, type Readable } from "node:stream";
import { detailsOf } from "../problems/answerProblem.ts";
import type { Watching } from "./liveResults.ts";

/**
 * A watched recording as server-sent events: `held` and `result` as they change, and at its end `problem`.
 * When the reader goes away the watching stops.
 */
export function liveEvents(watch: (watching: Watching) => Promise<void>): Readable {
  const events = new PassThrough();
  const abort = new AbortController();
  events.on("close", () => abort.abort());
  const tell = (name: string, data: unknown) => {
    if (!events.destroyed) events.write(`event: ${name}\ndata: ${JSON.stringify(data)}\n\n`);
  };
  const watching: Watching = {
    held: (held) => tell("held", held),
    result: (result) => tell("result", result),
    signal: abort.signal,
  };
  void watch(watching)
    .catch((reason: unknown) => {
      const details = detailsOf(reason);
      if (details.status >= 500) console.error(reason);
      tell("problem", details);
    })
    .finally(() => events.end());
  return events;
}

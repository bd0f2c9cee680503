import { once } from "node:events";
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
  /** Resolves when the reader has room for more: what it does not read must not pile up here. */
  const tell = async (name: string, data: unknown) => {
    if (events.destroyed || events.write(`event: ${name}\ndata: ${JSON.stringify(data)}\n\n`)) return;
    await once(events, "drain", { signal: abort.signal }).catch(() => {});
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
      void tell("problem", details);
    })
    .finally(() => events.end());
  return events;
}

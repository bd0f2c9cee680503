import { Worker } from "node:worker_threads";
import type { Order, Report } from "./jobs.ts";

export interface ThreadEvents {
  readonly onReport: (report: Report) => void;
  /** The thread is gone; `reason` says why, in words for the log of the server. */
  readonly onEnd: (reason: string) => void;
}

/** One worker thread with the reducing program in it. */
export interface WorkThread {
  order(order: Order): void;
  stop(): Promise<void>;
}

/** What a thread is started with. */
export interface ThreadData {
  /** Bytes of tables that it may hold. */
  readonly cacheBytes: number;
  /** Where tables are kept between its lives; nowhere where absent. */
  readonly tableFolder?: string;
}

/** Starts a thread of `entry`. It does not keep the process alive by itself. */
export function startThread(data: ThreadData, { onReport, onEnd }: ThreadEvents, entry = program()): WorkThread {
  const worker = new Worker(entry, { workerData: data });
  let reason = "";
  worker.unref();
  worker.on("message", onReport);
  worker.on("error", (error) => {
    reason = error instanceof Error ? (error.stack ?? error.message) : String(error);
  });
  worker.on("exit", (code) => onEnd(reason || `exit code ${code}`));
  return {
    order: (order) => worker.postMessage(order),
    stop: async () => {
      await worker.terminate();
    },
  };
}

/** Built: the bundle beside this one. From sources: by way of the loader that can read them. */
function program(): URL {
  const fromSources = import.meta.url.endsWith(".ts");
  return new URL(fromSources ? "./reduceWorkerFromSources.mjs" : "./reduceWorker.js", import.meta.url);
}

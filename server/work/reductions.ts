import { createHash } from "node:crypto";
import type { Reduction } from "../../shared/model/reduction.ts";
import type { ReduceJob } from "./jobs.ts";
import { WorkCancelled, type WorkOptions, type WorkPool } from "./workPool.ts";

/** Reductions kept in memory; each is some tens of kilobytes. */
const KEPT = 200;

/** A reduction that runs now and everyone who waits for it. */
interface Shared {
  readonly outcome: Promise<Reduction>;
  readonly abort: AbortController;
  readonly listeners: Set<(fraction: number) => void>;
}

/**
 * Reductions by everything they depend on: bytes, recipe, parts and program. The same question asked twice at once is
 * worked on once, and is stopped only when nobody waits for it any more.
 */
export class Reductions {
  private readonly done = new Map<string, Reduction>();
  private readonly running = new Map<string, Shared>();

  constructor(private readonly pool: Pick<WorkPool, "run">) {}

  async reduce(job: ReduceJob, { signal, onProgress = () => {} }: WorkOptions = {}): Promise<Reduction> {
    const key = keyOf(job);
    const known = this.done.get(key);
    if (known !== undefined) return known;
    if (signal?.aborted) throw new WorkCancelled();
    const shared = this.running.get(key) ?? this.begin(key, job);
    // A function of its own, so that two who wait with the same callback count as two.
    const listener = (fraction: number) => onProgress(fraction);
    shared.listeners.add(listener);
    return this.waitFor(shared, listener, signal);
  }

  private begin(key: string, job: ReduceJob): Shared {
    const abort = new AbortController();
    const listeners = new Set<(fraction: number) => void>();
    const onProgress = (fraction: number) => {
      for (const tell of listeners) tell(fraction);
    };
    const outcome = this.pool
      .run(job, { signal: abort.signal, onProgress })
      .then((reduction) => this.keep(key, reduction))
      .finally(() => this.running.get(key) === shared && this.running.delete(key));
    const shared = { outcome, abort, listeners };
    this.running.set(key, shared);
    return shared;
  }

  private async waitFor(
    { outcome, abort, listeners }: Shared,
    listener: (fraction: number) => void,
    signal?: AbortSignal,
  ) {
    let leave = () => {};
    const left = new Promise<never>((_, reject) => {
      leave = () => reject(new WorkCancelled());
    });
    signal?.addEventListener("abort", leave);
    try {
      return await Promise.race([outcome, left]);
    } finally {
      signal?.removeEventListener("abort", leave);
      listeners.delete(listener);
      // Harmless after the end; before it, the last one to leave turns off the light.
      if (listeners.size === 0) abort.abort();
    }
  }

  private keep(key: string, reduction: Reduction): Reduction {
    this.done.set(key, reduction);
    for (const oldest of this.done.keys()) {
      if (this.done.size <= KEPT) break;
      this.done.delete(oldest);
    }
    return reduction;
  }
}

function keyOf({ file, recipe, companion, propeller, motor, controller, instruments, program }: ReduceJob): string {
  const dependsOn = [
    file.sha256,
    file.name,
    recipe,
    companion ?? null,
    propeller,
    motor ?? null,
    controller ?? null,
    instruments ?? null,
    program,
  ];
  return createHash("sha256").update(JSON.stringify(dependsOn)).digest("base64");
}

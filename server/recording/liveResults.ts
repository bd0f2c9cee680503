import { setTimeout } from "node:timers/promises";
import type { Held, LiveResult } from "../../shared/model/recording.ts";
import type { Store } from "../store/store.ts";
import type { LiveJob } from "../work/jobs.ts";
import type { WorkPool } from "../work/workPool.ts";
import { liveJob } from "./liveJob.ts";
import type { Recorder } from "./recorder.ts";

/** How often it is looked whether lines came or something was edited, ms. */
const LOOK_MS = 200;
/** Rest between two passes: so many times as long as the last one took, within bounds, ms. */
const REST = { share: 3, least: 600, most: 10_000 } as const;

export interface Watching {
  /** Both resolve when more can be told. */
  readonly held: (held: Held) => Promise<void>;
  readonly result: (result: LiveResult) => Promise<void>;
  /** Stops the watching. */
  readonly signal: AbortSignal;
}

/**
 * Results of recordings, made while somebody looks. A recording has one pass at a time, of all its lines; the next begins
 * when something has changed and the last is over and paid for by a rest, so that work never piles up, however fast lines
 * come.
 */
export class LiveResults {
  private readonly passes = new Map<string, { readonly key: string; readonly outcome: Promise<LiveResult> }>();

  constructor(
    private readonly workbench: { readonly store: Store; readonly pool: WorkPool; readonly recorder: Recorder },
  ) {}

  /** The result of all lines there are now. Throws NothingThere, or as the pool does. */
  async result(projectId: string, id: string): Promise<LiveResult> {
    return this.pass(id, await this.job(projectId, id));
  }

  /** Tells what is held, and the result, each time it changes. Throws NothingThere once the recording is over. */
  async watch(projectId: string, id: string, watching: Watching): Promise<void> {
    await Promise.all([this.watchHeld(projectId, id, watching), this.watchResult(projectId, id, watching)]);
  }

  private async watchHeld(projectId: string, id: string, { held, signal }: Watching): Promise<void> {
    const { store, recorder } = this.workbench;
    for (let told = ""; !signal.aborted; await pause(LOOK_MS, signal)) {
      store.recordings(projectId).find(id);
      const now = (await recorder.log(id)).held;
      const text = JSON.stringify(now);
      if (text !== told) await held(now);
      told = text;
    }
  }

  private async watchResult(projectId: string, id: string, { result, signal }: Watching): Promise<void> {
    let rest = LOOK_MS;
    for (let told = ""; !signal.aborted; await pause(rest, signal)) {
      rest = LOOK_MS;
      const job = await this.job(projectId, id);
      const key = JSON.stringify(job);
      if (key === told || job.lines === 0) continue;
      const begun = performance.now();
      const made = await this.pass(id, job);
      rest = restAfter(performance.now() - begun);
      await result(made);
      told = key;
    }
  }

  /** Two who ask the same at once share one pass. */
  private pass(id: string, job: LiveJob): Promise<LiveResult> {
    const key = JSON.stringify(job);
    const known = this.passes.get(id);
    if (known?.key === key) return known.outcome;
    const outcome = this.workbench.pool.run(job);
    this.passes.set(id, { key, outcome });
    const forget = () => void (this.passes.get(id)?.outcome === outcome && this.passes.delete(id));
    outcome.then(forget, forget);
    return outcome;
  }

  private async job(projectId: string, id: string): Promise<LiveJob> {
    const { store, recorder } = this.workbench;
    const { document } = store.recordings(projectId).find(id);
    return liveJob(store, projectId, document, (await recorder.log(id)).whole);
  }
}

const restAfter = (pass: number) => Math.min(REST.most, Math.max(REST.least, REST.share * pass));

/** Also over when `signal` comes. */
function pause(milliseconds: number, signal: AbortSignal): Promise<unknown> {
  return setTimeout(milliseconds, undefined, { signal }).catch(() => {});
}

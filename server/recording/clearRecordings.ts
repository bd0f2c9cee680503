import type { Store } from "../store/store.ts";
import type { Recorder } from "./recorder.ts";

/** How long the lines of a discarded recording are kept, in case it was discarded by mistake. */
export const KEPT_DAYS = 30;

/** Throws away the logs that nobody can have back; those of recordings that are open or were discarded lately stay. */
export async function clearRecordings({
  store,
  recorder,
}: {
  readonly store: Store;
  readonly recorder: Recorder;
}): Promise<void> {
  const left = store.recordingsOver(KEPT_DAYS).filter((id) => recorder.has(id));
  await Promise.all(left.map((id) => recorder.remove(id)));
}

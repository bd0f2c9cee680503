import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";

/** Bytes of arrays nobody holds any more from which on it is worth some milliseconds to give them back. */
const WORTH = 24e6;

let collect: (() => void) | undefined;

/**
 * Gives back the memory of arrays that nobody holds any more, where this thread has more than `held` bytes in arrays. The
 * engine sees to its own heap, and lets hundreds of megabytes outside of it lie until it next looks there; a long table
 * does not fit beside them.
 */
export function collectBeyond(held: number): void {
  if (process.memoryUsage().arrayBuffers < held + WORTH) return;
  collect ??= collector();
  collect();
}

function collector(): () => void {
  setFlagsFromString("--expose-gc");
  return runInNewContext("gc") as () => void;
}

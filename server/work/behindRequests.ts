import { setPriority } from "node:os";

/** Of the niceness of POSIX, 0 to 19: the thread that answers gets about three times the share of this one. */
const NICENESS = 5;

/**
 * Lets the thread that calls it step back behind the one that answers requests where both want the same core. Only Linux
 * sets the priority of one thread; elsewhere this would slow the whole process, and nothing is done.
 */
export function stayBehindRequests(): void {
  if (process.platform !== "linux") return;
  try {
    // 0 is the calling thread there: sched(7), "the nice value"; setpriority(2), "C library/kernel differences".
    setPriority(0, NICENESS);
  } catch {
    // A sandbox may forbid it; work is then done at the usual priority.
  }
}

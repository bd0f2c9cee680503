// A search of a million combinations in a process of its own, so that its memory can be told: prints JSON.
import { readFileSync } from "node:fs";
import { shortlistOnPool } from "../../server/work/shortlists.ts";
import { WorkPool } from "../../server/work/workPool.ts";
import { millionRequest } from "./shortlistMillion.ts";

const request = millionRequest();

/** Seconds of a second search on so many threads: the first starts them and lets the engine warm up. */
async function searched(threads: number) {
  const pool = new WorkPool({ threads });
  try {
    await shortlistOnPool(pool, request);
    const start = performance.now();
    const { counts } = await shortlistOnPool(pool, request);
    return { seconds: (performance.now() - start) / 1000, counts };
  } finally {
    await pool.close();
  }
}

const two = await searched(2);
const peak = /VmHWM:\s+(\d+) kB/.exec(readFileSync("/proc/self/status", "utf8"))?.[1];
const one = await searched(1);
console.log(
  JSON.stringify({
    one: one.seconds,
    two: two.seconds,
    counts: two.counts,
    peakMegabytes: peak === undefined ? null : Number(peak) / 1024,
  }),
);

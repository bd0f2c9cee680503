import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, test } from "vitest";
import { WorkPool } from "../../server/work/workPool.ts";

/** Niceness of each thread of this process by its number, as Linux tells it in field 19 of proc(5) stat. */
function nicenesses(): Map<number, number> {
  const threads = readdirSync("/proc/self/task").map((id) => {
    const stat = readFileSync(`/proc/self/task/${id}/stat`, "utf8");
    // The name in field 2 may hold blanks; it ends with the last bracket.
    const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    return [Number(id), Number(fields[16])] as const;
  });
  return new Map(threads);
}

test.skipIf(process.platform !== "linux")("threads that work stay behind the one that answers", async () => {
  const pool = new WorkPool({ threads: 1 });
  const path = resolve(import.meta.dirname, "../../samples/logs/finish-as-printed-1.csv");
  try {
    const before = nicenesses().get(process.pid)!;
    await pool.run({ kind: "inspect", file: { path, sha256: "0", name: "a.csv" } });
    const after = nicenesses();
    expect(after.get(process.pid)).toBe(before);
    expect(Math.max(...after.values())).toBe(5);
  } finally {
    await pool.close();
  }
});

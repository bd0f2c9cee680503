import { expect, test, vi } from "vitest";
import type { InspectJob, Order, Report } from "../../server/work/jobs.ts";
import { WorkCancelled, WorkFailed, WorkPool } from "../../server/work/workPool.ts";
import type { ThreadEvents } from "../../server/work/workThread.ts";

/** A thread that does nothing by itself: the test says what it reports. */
class Puppet {
  readonly orders: Order[] = [];
  stopped = false;

  constructor(readonly events: ThreadEvents) {}

  order(order: Order): void {
    this.orders.push(order);
  }

  async stop(): Promise<void> {
    this.stopped = true;
  }

  get current(): number {
    return this.orders.findLast((order) => "job" in order)?.id ?? 0;
  }

  report(report: object): void {
    this.events.onReport({ id: this.current, ...report } as Report);
  }
}

function poolOf(threads: number, patience = 250) {
  const puppets: Puppet[] = [];
  const start = (_: unknown, events: ThreadEvents) => {
    const puppet = new Puppet(events);
    puppets.push(puppet);
    return puppet;
  };
  return { pool: new WorkPool({ threads, patience, start }), puppets };
}

const inspect = (sha256: string): InspectJob => ({
  kind: "inspect",
  file: { path: "", sha256, name: `${sha256}.csv` },
});
const outcome = (name: string) => ({ outcome: { name } });

test("threads start with the first work, not before", () => {
  const { pool, puppets } = poolOf(2);
  expect(puppets).toHaveLength(0);
  void pool.run(inspect("a"));
  expect(puppets).toHaveLength(1);
});

test("a thread has one job at a time; the next waits its turn", async () => {
  const { pool, puppets } = poolOf(1);
  const [first, second] = [pool.run(inspect("a")), pool.run(inspect("b"))];
  expect(puppets[0]?.orders).toHaveLength(1);
  puppets[0]?.report(outcome("first"));
  puppets[0]?.report(outcome("second"));
  expect(await Promise.all([first, second])).toEqual([{ name: "first" }, { name: "second" }]);
});

test("work on a log goes to the thread that has read it, while another takes the rest", async () => {
  const { pool, puppets } = poolOf(2);
  const jobs = [pool.run(inspect("a")), pool.run(inspect("a")), pool.run(inspect("b"))];
  expect(puppets.map(({ orders }) => orders.length)).toEqual([1, 1]);
  puppets[1]?.report(outcome("b"));
  puppets[0]?.report(outcome("a1"));
  puppets[0]?.report(outcome("a2"));
  expect(await Promise.all(jobs)).toEqual([{ name: "a1" }, { name: "a2" }, { name: "b" }]);
});

test("a log that a busy thread once read does not wait for it when another is free", async () => {
  const { pool, puppets } = poolOf(2);
  const first = pool.run(inspect("a"));
  puppets[0]?.report(outcome("a"));
  await first;
  const jobs = [pool.run(inspect("b")), pool.run(inspect("c")), pool.run(inspect("a"))];
  expect(puppets.map(({ orders }) => orders.length)).toEqual([2, 1]);
  puppets[1]?.report(outcome("c"));
  puppets[1]?.report(outcome("a"));
  puppets[0]?.report(outcome("b"));
  expect(await Promise.all(jobs)).toEqual([{ name: "b" }, { name: "c" }, { name: "a" }]);
});

test("progress is told as it comes", () => {
  const { pool, puppets } = poolOf(1);
  const told: number[] = [];
  void pool.run(inspect("a"), { onProgress: (fraction) => told.push(fraction) });
  puppets[0]?.report({ fraction: 0.25 });
  puppets[0]?.report({ fraction: 0.5 });
  expect(told).toEqual([0.25, 0.5]);
});

test("a refusal of the input arrives as the problem it was", async () => {
  const { pool, puppets } = poolOf(1);
  const asked = pool.run(inspect("a"));
  const problem = { code: "log.empty", where: "a.csv", found: "nothing", needed: "", mend: "" };
  puppets[0]?.report({ refusal: "input", problem });
  await expect(asked).rejects.toMatchObject({ name: "InputProblem", problem });
});

test("a thread that dies fails the job it had, and another does the next", async () => {
  const { pool, puppets } = poolOf(1);
  const [first, second] = [pool.run(inspect("a")), pool.run(inspect("b"))];
  puppets[0]?.events.onEnd("out of memory");
  await expect(first).rejects.toBeInstanceOf(WorkFailed);
  expect(puppets).toHaveLength(2);
  puppets[1]?.report(outcome("b"));
  expect(await second).toEqual({ name: "b" });
});

test("cancelling a waiting job takes it out; cancelling a running one tells its thread", async () => {
  const { pool, puppets } = poolOf(1);
  const [one, two] = [new AbortController(), new AbortController()];
  const first = pool.run(inspect("a"), { signal: one.signal });
  const second = pool.run(inspect("b"), { signal: two.signal });
  two.abort();
  one.abort();
  await expect(first).rejects.toBeInstanceOf(WorkCancelled);
  await expect(second).rejects.toBeInstanceOf(WorkCancelled);
  expect(puppets[0]?.orders.map((order) => "cancel" in order)).toEqual([false, true]);
});

test("what a cancelled job still reports is not taken for the answer of the next", async () => {
  const { pool, puppets } = poolOf(1);
  const abort = new AbortController();
  const first = pool.run(inspect("a"), { signal: abort.signal });
  const second = pool.run(inspect("b"));
  abort.abort();
  await expect(first).rejects.toBeInstanceOf(WorkCancelled);
  const [before] = puppets[0]?.orders ?? [];
  puppets[0]?.events.onReport({ id: before?.id ?? 0, cancelled: true });
  puppets[0]?.events.onReport({ id: before?.id ?? 0, outcome: { name: "late" } } as never);
  puppets[0]?.report(outcome("b"));
  expect(await second).toEqual({ name: "b" });
});

test("closing stops the threads and fails what waits", async () => {
  const { pool, puppets } = poolOf(1);
  void pool.run(inspect("a")).catch(() => {});
  const waiting = pool.run(inspect("b"));
  await Promise.all([pool.close(), expect(waiting).rejects.toBeInstanceOf(WorkCancelled)]);
  expect(puppets[0]?.stopped).toBe(true);
});

test("a cancelled job that does not stop by itself has its thread ended, and the next work starts another", async () => {
  const { pool, puppets } = poolOf(1, 1);
  const abort = new AbortController();
  const given = pool.run(inspect("a"), { signal: abort.signal });
  const next = pool.run(inspect("b"));
  abort.abort();
  await expect(given).rejects.toThrow(WorkCancelled);
  await vi.waitFor(() => expect(puppets[0]?.stopped).toBe(true));
  puppets[0]?.events.onEnd("exit code 1");
  puppets[1]?.report(outcome("b"));
  expect(await next).toEqual({ name: "b" });
});

test("a cancelled job that stops in time keeps its thread", async () => {
  const { pool, puppets } = poolOf(1, 5);
  const abort = new AbortController();
  const given = pool.run(inspect("a"), { signal: abort.signal });
  abort.abort();
  await expect(given).rejects.toThrow(WorkCancelled);
  puppets[0]?.report({ cancelled: true });
  await new Promise((done) => setTimeout(done, 20));
  expect(puppets[0]?.stopped).toBe(false);
});

test("long logs share one thread, so that another is free for short work", async () => {
  const { pool, puppets } = poolOf(2);
  const long = (sha256: string): InspectJob => ({ kind: "inspect", file: { ...inspect(sha256).file, size: 500e6 } });
  const [first, second, short] = [pool.run(long("a")), pool.run(long("b")), pool.run(inspect("c"))];
  puppets[1]?.report(outcome("c"));
  expect(await short).toEqual({ name: "c" });
  puppets[0]?.report(outcome("a"));
  puppets[0]?.report(outcome("b"));
  expect(await Promise.all([first, second])).toEqual([{ name: "a" }, { name: "b" }]);
});

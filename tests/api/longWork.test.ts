import { readdirSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import type { Order } from "../../server/work/jobs.ts";
import { WorkPool } from "../../server/work/workPool.ts";
import type { ThreadEvents } from "../../server/work/workThread.ts";
import { bytesOf, PROPELLER, runOf } from "./exampleDocuments.ts";
import { listeningApp, quietConsole } from "./startedApp.ts";

/** Threads that never finish, and what they were told. */
async function endlessWork() {
  const orders: Order[] = [];
  const threads: ThreadEvents[] = [];
  const start = (_: unknown, events: ThreadEvents) => {
    threads.push(events);
    return { order: (order: Order) => void orders.push(order), stop: async () => {} };
  };
  const started = await listeningApp({ pool: new WorkPool({ threads: 1, start }) });
  const { store, projectId, runs } = started;
  const file = await store.files.receive(bytesOf("time,thrust\n"));
  await store.files.keep(file);
  store.noteFile(file);
  const propeller = store.parts(projectId, "propellers").add(PROPELLER);
  const run = store.runs(projectId).add({ ...runOf(file.sha256, file.size), propellerId: propeller.id });
  return { ...started, orders, threads, reduction: `${runs}/${run.id}/reduction` };
}

const wasCancelled = (orders: Order[]) => orders.some((order) => "cancel" in order);

test.each(["", "/progress"])("closing the connection of reduction%s stops the work", async (suffix) => {
  const { reduction, orders } = await endlessWork();
  const abort = new AbortController();
  const asked = fetch(reduction + suffix, { signal: abort.signal }).then((answer) => answer.text());
  await vi.waitFor(() => expect(orders).toHaveLength(1));
  abort.abort();
  await expect(asked).rejects.toThrow();
  await vi.waitFor(() => expect(wasCancelled(orders)).toBe(true));
});

test("while a log is worked on, everything else is answered", async () => {
  const { address, reduction, orders } = await endlessWork();
  const abort = new AbortController();
  const asked = fetch(reduction, { signal: abort.signal });
  await vi.waitFor(() => expect(orders).toHaveLength(1));
  expect((await fetch(`${address}/api/projects`)).status).toBe(200);
  abort.abort();
  await expect(asked).rejects.toThrow();
});

test("a thread that dies is a 500 problem that says the log is not at fault, and the next reduction is worked on again", async () => {
  quietConsole();
  const { reduction, orders, threads } = await endlessWork();
  const asked = fetch(reduction);
  await vi.waitFor(() => expect(orders).toHaveLength(1));
  threads[0]?.onEnd("heap out of memory at 0xdeadbeef");
  const answer = await asked;
  const body = await answer.text();
  expect(answer.status).toBe(500);
  expect(JSON.parse(body)).toMatchObject({ code: "work.failed" });
  expect(body).not.toContain("0xdeadbeef");
  const abort = new AbortController();
  const again = fetch(reduction, { signal: abort.signal });
  await vi.waitFor(() => expect(threads).toHaveLength(2));
  abort.abort();
  await expect(again).rejects.toThrow();
});

test("an upload that breaks off leaves nothing behind", async () => {
  const { runs, folder } = await endlessWork();
  const headers = { "content-type": "multipart/form-data; boundary=cut", "content-length": "1000000" };
  const sending = request(runs, { method: "POST", headers });
  sending.on("error", () => {});
  sending.write('--cut\r\nContent-Disposition: form-data; name="file"; filename="cut.csv"\r\n\r\ntime,thrust\r\n');
  await vi.waitFor(() => expect(readdirSync(join(folder, "incoming"))).toHaveLength(1));
  sending.destroy();
  await vi.waitFor(() => expect(readdirSync(join(folder, "incoming"))).toEqual([]));
  expect(readdirSync(join(folder, "files"))).toHaveLength(1);
});

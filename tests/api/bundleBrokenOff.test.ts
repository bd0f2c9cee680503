import { randomBytes } from "node:crypto";
import { readdirSync, readlinkSync } from "node:fs";
import { expect, test } from "vitest";
import { runOf } from "./exampleDocuments.ts";
import { listeningApp } from "./startedApp.ts";

test("a connection that closes half way stops the reading, and the workbench goes on", async () => {
  const { store, projectId, address, ask } = await listeningApp();
  // Bytes that do not pack, and more of them than the connection holds.
  const received = await store.files.receive(noise(48));
  await store.files.keep(received);
  store.noteFile(received);
  store.runs(projectId).add(runOf(received.sha256, received.size));
  const stop = new AbortController();
  const response = await fetch(`${address}/api/projects/${projectId}/bundle`, { signal: stop.signal });
  const reader = response.body!.getReader();
  for (let taken = 0; taken < 1024 ** 2; ) taken += (await reader.read()).value!.byteLength;
  const held = () => readdirSync("/proc/self/fd").filter((fd) => linkOf(fd).endsWith(received.sha256));
  expect(held()).toHaveLength(1);
  stop.abort();
  await expect.poll(held).toEqual([]);
  expect((await ask("GET", "/api/health")).status).toBe(200);
});

async function* noise(megabytes: number) {
  for (let i = 0; i < megabytes; i++) yield randomBytes(1024 ** 2);
}

/** What an open file of this process is; empty for one that was closed meanwhile. */
function linkOf(fd: string): string {
  try {
    return readlinkSync(`/proc/self/fd/${fd}`);
  } catch {
    return "";
  }
}

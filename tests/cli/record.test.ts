import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";
import { buildApp } from "../../server/app.ts";
import { listeningApp } from "../api/startedApp.ts";
import { temporaryFolder } from "../api/temporaryFolder.ts";
import { runCli } from "./runCli.ts";

const ROOT = resolve(import.meta.dirname, "../..");
const LOG = readFileSync(resolve(ROOT, "samples/logs/finish-sanded-1.csv"));

/** The verb with a pipe in front of it, as a logger writes into it. */
function recording(...words: readonly string[]) {
  return recordingIn(ROOT, ...words);
}

/** The same, started in a folder of its own. */
function recordingIn(cwd: string, ...words: readonly string[]) {
  const child = spawn(process.execPath, [resolve(ROOT, "server/launch.mjs"), "cli", "record", ...words], { cwd });
  let stdout = "";
  let stderr = "";
  child.stdout.on("data", (text) => {
    stdout += text;
  });
  child.stderr.on("data", (text) => {
    stderr += text;
  });
  const ended = new Promise<{ code: number | null; stdout: string; stderr: string }>((done) =>
    child.on("close", (code) => done({ code, stdout, stderr })),
  );
  return { child, ended, said: () => stderr };
}

const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

test("what is piped in becomes a run with the same bytes", async () => {
  const { address, store, projectId } = await listeningApp();
  const { child, ended } = recording("--workbench", address, "--name", "Sanded, live", "--json");
  for (let at = 0; at < LOG.length; at += 4099) child.stdin.write(LOG.subarray(at, at + 4099));
  child.stdin.end();
  const { code, stdout } = await ended;
  expect(code).toBe(0);
  const run = JSON.parse(stdout);
  expect(run.document).toMatchObject({ name: "Sanded, live", file: { sha256: sha256(LOG), size: LOG.length } });
  expect(store.runs(projectId).has(run.id)).toBe(true);
});

test("a recording that was left open is gone on with", async () => {
  const { address, store, projectId } = await listeningApp();
  const first = recording("--workbench", address, "--leave-open", "--json");
  first.child.stdin.end(LOG.subarray(0, 10_001));
  const open = JSON.parse((await first.ended).stdout);
  expect(open.held.bytes).toBe(10_001);
  const second = recording("--workbench", `${address}/`, "--recording", open.id);
  second.child.stdin.end(LOG.subarray(10_001));
  expect((await second.ended).stdout).toContain(sha256(LOG).slice(0, 12));
  expect(store.recordings(projectId).list()).toEqual([]);
});

test("Ctrl+C ends the input and keeps what came", async () => {
  const { address, store, projectId } = await listeningApp();
  const { child, ended } = recording("--workbench", address);
  child.stdin.write(LOG.subarray(0, 20_000));
  const held = async () => {
    const { recordings } = await (await fetch(`${address}/api/projects/${projectId}/recordings`)).json();
    return recordings[0]?.held.bytes;
  };
  await expect.poll(held, { timeout: 20_000 }).toBe(20_000);
  child.kill("SIGINT");
  expect((await ended).code).toBe(0);
  expect(store.runs(projectId).list()[0]?.document).toMatchObject({ name: "Recorded", file: { size: 20_000 } });
});

test("lines that the recording takes no more are written to a file, none left out", async () => {
  const { address, store, projectId } = await listeningApp();
  const folder = temporaryFolder();
  const { child, ended, said } = recordingIn(folder, "--workbench", address, "--name", "Discarded meanwhile");
  child.stdin.write(LOG.subarray(0, 20_000));
  const open = () => store.recordings(projectId).list()[0];
  const held = async () => {
    const one = open();
    if (one === undefined) return 0;
    return (await (await fetch(`${address}/api/projects/${projectId}/recordings/${one.id}`)).json()).held.bytes;
  };
  await expect.poll(held, { timeout: 20_000 }).toBe(20_000);
  const { id, version } = open()!;
  store.recordings(projectId).remove(id, version);
  child.stdin.write(LOG.subarray(20_000, 30_000));
  await expect.poll(said, { timeout: 20_000 }).toContain("No more lines can be sent.");
  child.stdin.end(LOG.subarray(30_000));
  expect((await ended).code).toBe(2);
  const path = join(folder, `recording-${id}-not-sent.csv`);
  expect(said()).toContain(path);
  expect(readFileSync(path).equals(LOG.subarray(20_000))).toBe(true);
});

test("lines wait while the workbench does not answer, and go on when it does", async () => {
  const { app, address, store, projectId } = await listeningApp();
  const { child, ended, said } = recording("--workbench", address);
  child.stdin.write(LOG.subarray(0, 5000));
  await expect.poll(said, { timeout: 20_000 }).toContain("Ctrl+C ends it");
  await app.close();
  child.stdin.end(LOG.subarray(5000));
  await expect.poll(said, { timeout: 20_000 }).toContain("Lines wait here.");
  const again = await buildApp({ store });
  await again.listen({ host: "127.0.0.1", port: Number(new URL(address).port) });
  const { code, stderr } = await ended;
  await again.close();
  expect(stderr).toContain("They are on their way again.");
  expect(code).toBe(0);
  expect(store.runs(projectId).list()[0]?.document.file.sha256).toBe(sha256(LOG));
});

test.each([
  { words: ["--workbench", "http://127.0.0.1:9"], says: "No workbench answers there", why: "nothing listens there" },
  { words: ["--workbench", "bench"], says: '"bench" is not an address', why: "no address" },
])("it says what is missing: $why", async ({ words, says }) => {
  const { code, stderr } = await runCli("record", ...words);
  expect(code).toBe(2);
  expect(stderr).toContain(says);
});

test("where there are several projects it asks for one by name", async () => {
  const { address, store } = await listeningApp();
  store.projects.add({ ...store.projects.list()[0]!.document, name: "Grebe" });
  const { code, stderr } = await runCli("record", "--workbench", address);
  expect(code).toBe(2);
  expect(stderr).toContain("2 projects are there: Dabchick, Grebe");
});

test("the stand that is not there writes a log line by line, byte for byte", async () => {
  const child = spawn(
    process.execPath,
    ["--import", "tsx", "samples/stand.ts", "samples/logs/kitchen-scale.txt", "5000"],
    { cwd: ROOT },
  );
  const chunks: Buffer[] = [];
  child.stdout.on("data", (chunk) => chunks.push(chunk));
  await new Promise((done) => child.on("close", done));
  expect(Buffer.concat(chunks).equals(readFileSync(resolve(ROOT, "samples/logs/kitchen-scale.txt")))).toBe(true);
});

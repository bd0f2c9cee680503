import { chmodSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { connect } from "../../server/store/connection.ts";
import { openStore } from "../../server/store/openStore.ts";
import { startedProcess } from "./startedProcess.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

/** Refused at the start: exit code 2 and one sentence, no stack. */
async function refusal(args: readonly string[], options: { uid?: number } = {}): Promise<string> {
  const { code, stdout, stderr } = await startedProcess(args, options).ended;
  expect(code).toBe(2);
  expect(stdout).toBe("");
  expect(stderr.trim().split("\n")).toHaveLength(1);
  expect(stderr).not.toMatch(/\bat \S+:\d+|SQLITE|E[A-Z]{4,}/);
  return stderr;
}

const quiet = (folder: string) => ["--port", "0", "--data", folder, "--no-demo"];

test("it prints program, address and data folder, answers there, and ends well when told to stop", async () => {
  const folder = temporaryFolder();
  const { child, spoke, ended, address } = startedProcess(quiet(folder));
  await spoke;
  expect((await fetch(`${address()}api/health`)).status).toBe(200);
  child.kill("SIGTERM");
  const { code, stdout, stderr } = await ended;
  expect(code).toBe(0);
  expect(stderr).toBe("");
  expect(stdout).toMatch(/^Bollard Bench \S+\nAddress {6}http:\/\/127\.0\.0\.1:\d+\/\nData folder {2}\//);
  expect(stdout).toContain(folder);
});

test("a second workbench on the same folder is refused by the name of the first, which goes on", async () => {
  const folder = temporaryFolder();
  const first = startedProcess(quiet(folder));
  await first.spoke;
  const said = await refusal(quiet(folder));
  expect(said).toContain(folder);
  expect(said).toContain(`(process ${first.child.pid})`);
  expect((await fetch(`${first.address()}api/projects`)).status).toBe(200);
});

test("the folder of a workbench that was killed can be used at once", async () => {
  const folder = temporaryFolder();
  const first = startedProcess(quiet(folder));
  await first.spoke;
  first.child.kill("SIGKILL");
  await first.ended;
  const second = startedProcess(quiet(folder));
  await second.spoke;
  expect((await fetch(`${second.address()}api/health`)).status).toBe(200);
});

test("a folder that a newer program wrote is refused and left as it was", async () => {
  const folder = temporaryFolder();
  (await openStore(folder)).close();
  const path = join(folder, "bollard.sqlite");
  const connection = connect(path);
  connection.rows("PRAGMA user_version = 999");
  connection.close();
  const before = readFileSync(path);
  expect(await refusal(quiet(folder))).toMatch(/newer Bollard Bench \(data version 999\)/);
  expect(readFileSync(path).equals(before)).toBe(true);
});

test("a database of another program is refused and left as it was", async () => {
  const folder = temporaryFolder();
  const path = join(folder, "bollard.sqlite");
  const connection = connect(path);
  connection.run("CREATE TABLE theirs (a)");
  connection.close();
  const before = readFileSync(path);
  expect(await refusal(quiet(folder))).toMatch(/another program/);
  expect(readFileSync(path).equals(before)).toBe(true);
});

test("a file that is no database is refused and left as it was", async () => {
  const folder = temporaryFolder();
  const path = join(folder, "bollard.sqlite");
  writeFileSync(path, "not a database at all, but long enough to be looked at ".repeat(40));
  const before = readFileSync(path);
  expect(await refusal(quiet(folder))).toMatch(/damaged or is no database/);
  expect(readFileSync(path).equals(before)).toBe(true);
});

test("a folder that may not be written to is refused", async () => {
  const folder = temporaryFolder();
  chmodSync(folder, 0o555);
  onTestFinished(() => chmodSync(folder, 0o755));
  // The superuser may write anywhere, so the workbench is then started as somebody who may not.
  const somebody = process.getuid?.() === 0 ? { uid: 65_534 } : {};
  expect(await refusal(quiet(folder), somebody)).toMatch(/can not be written to/);
  expect(readdirSync(folder)).toEqual([]);
});

test("a data folder that is a file is refused", async () => {
  const path = join(temporaryFolder(), "file");
  writeFileSync(path, "");
  expect(await refusal(quiet(path))).toMatch(/can not be used as a folder/);
});

test("a port that another program has is refused with one that may be free", async () => {
  const other = createServer();
  await new Promise<void>((resolve) => other.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => void other.close());
  const { port } = other.address() as AddressInfo;
  const said = await refusal(["--port", String(port), "--data", temporaryFolder(), "--no-demo"]);
  expect(said).toContain(`port ${port}: Another program listens there`);
  expect(said).toContain("--port 0");
});

test.each([
  { args: ["--port", "eighty"], says: '--port: "eighty" is not a port' },
  { args: ["--port", "70000"], says: '--port: "70000" is not a port' },
  { args: ["--folder", "x"], says: "--data FOLDER" },
])("$args is refused", async ({ args, says }) => {
  expect(await refusal(args)).toContain(says);
});

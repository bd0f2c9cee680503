import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { connect } from "../../server/store/connection.ts";
import { openStore } from "../../server/store/openStore.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

interface Said {
  readonly project: string;
  readonly version?: number;
  readonly run?: string;
}

const linesIn = (text: string) => text.split("\n").length - 1;

/** Lets a writer work until it has said some lines, and some milliseconds more, then kills it without warning. */
async function killedAfter(
  folder: string,
  { lines, milliseconds }: { lines: number; milliseconds: number },
): Promise<Said[]> {
  const writer = fileURLToPath(new URL("killedWriter.ts", import.meta.url));
  const child = spawn(process.execPath, ["--import", "tsx", writer, folder], { stdio: ["ignore", "pipe", "pipe"] });
  let text = "";
  let failure = "";
  child.stderr.on("data", (chunk) => {
    failure += chunk;
  });
  child.stdout.on("data", (chunk) => {
    const before = linesIn(text);
    text += chunk;
    if (before < lines && linesIn(text) >= lines) setTimeout(() => child.kill("SIGKILL"), milliseconds);
  });
  await new Promise((resolve) => child.once("close", resolve));
  expect(failure).toBe("");
  // The last line may be cut by the kill; it was then never read by anyone.
  const whole = text.slice(0, text.lastIndexOf("\n"));
  return whole.split("\n").map((line) => JSON.parse(line) as Said);
}

test("whenever the process is killed, every acknowledged write is there afterwards and every file is whole", async () => {
  const folder = temporaryFolder();
  const said: Said[] = [];
  // In each of the writer's steps, however fast the machine is.
  const ends = [1, 2, 5, 8, 15, 22].map((lines, at) => ({ lines, milliseconds: [0, 1, 7, 3, 11, 5][at]! }));
  for (const end of ends) {
    said.push(...(await killedAfter(folder, end)));
    const store = await openStore(folder);
    for (const { project, version, run } of said) {
      if (version !== undefined) expect(store.projects.find(project).version).toBeGreaterThanOrEqual(version);
      if (run !== undefined) expect(store.runs(project).has(run)).toBe(true);
    }
    const [{ project } = { project: "" }] = said;
    for (const { document } of store.runs(project).list()) {
      const bytes = readFileSync(store.files.path(document.file.sha256));
      expect(createHash("sha256").update(bytes).digest("hex")).toBe(document.file.sha256);
    }
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
    store.close();
    const connection = connect(join(folder, "bollard.sqlite"));
    expect(connection.rows("PRAGMA integrity_check")).toEqual([{ integrity_check: "ok" }]);
    connection.close();
  }
  expect(said.filter(({ run }) => run !== undefined).length).toBeGreaterThan(10);
});

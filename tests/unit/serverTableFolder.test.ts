import { readdirSync, readFileSync, truncateSync, writeFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { TableFolder } from "../../server/work/tableFolder.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import { readLog } from "../../shared/log/readLog.ts";

let path: string;
beforeEach(async () => {
  path = await mkdtemp(join(tmpdir(), "bollard-tables-"));
});
afterEach(() => rm(path, { recursive: true, force: true }));

/** Long enough to be worth keeping, with a missing cell and a restart of the clock. */
function longTable(): LogTable {
  const lines = Array.from({ length: 80_000 }, (_, i) => `${(i % 50_000) / 100},${i === 7 ? "" : i / 3},${-i}`);
  const table = readLog(
    new TextEncoder().encode(`time (s),thrust (gf),speed (rpm)\n${lines.join("\n")}\n`),
    "long.csv",
  );
  return { ...table, restarts: [50_000] };
}

async function kept(): Promise<{ folder: TableFolder; table: LogTable; file: string }> {
  const folder = new TableFolder(join(path, "cache"));
  const table = longTable();
  await folder.write("key", table);
  const [file] = readdirSync(join(path, "cache"));
  return { folder, table, file: join(path, "cache", file!) };
}

test("a table comes back as it was, missing cells, restarts, repairs and preview included", async () => {
  const { folder, table } = await kept();
  expect(await folder.read("key")).toEqual(table);
});

test("another key finds nothing", async () => {
  const { folder } = await kept();
  expect(await folder.read("another")).toBeUndefined();
});

test.each<[string, (file: string) => void]>([
  ["cut short", (file) => truncateSync(file, 1_000_000)],
  ["empty", (file) => writeFileSync(file, "")],
  ["full of something else", (file) => writeFileSync(file, Buffer.alloc(3_000_000, 0x7b))],
  ["damaged in one bit", (file) => damage(file)],
])("a file that is %s counts as not there, and is written again", async (_, spoil) => {
  const { folder, table, file } = await kept();
  spoil(file);
  expect(await folder.read("key")).toBeUndefined();
  await folder.write("key", table);
  expect(await folder.read("key")).toEqual(table);
});

function damage(file: string): void {
  const bytes = readFileSync(file);
  bytes[1_500_000]! ^= 1;
  writeFileSync(file, bytes);
}

test("a short table is not kept: its text is read as fast", async () => {
  const folder = new TableFolder(path);
  const short = readLog(new TextEncoder().encode("time (s),thrust (gf)\n0,1\n1,2\n"), "short.csv");
  await folder.write("key", short);
  expect(readdirSync(path)).toEqual([]);
});

test("a folder that can not be made costs nothing but time later", async () => {
  writeFileSync(join(path, "cache"), "a file stands in its place");
  const folder = new TableFolder(join(path, "cache"));
  await folder.write("key", longTable());
  expect(await folder.read("key")).toBeUndefined();
});

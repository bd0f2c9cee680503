import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { connect } from "../../server/store/connection.ts";
import { openStore } from "../../server/store/openStore.ts";
import { prepareSchema } from "../../server/store/schema.ts";
import { bytesOf, PROJECT, PROPELLER, runOf } from "./exampleDocuments.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

const NOBODY = "00000000-0000-4000-8000-000000000000";

async function opened(folder = temporaryFolder()) {
  const store = await openStore(folder, () => new Date("2026-01-31T12:00:00Z"));
  onTestFinished(() => store.close());
  return { store, folder };
}

test("a write is forced to the disk before it is acknowledged, and links between documents are checked", () => {
  const connection = connect(join(temporaryFolder(), "bollard.sqlite"));
  prepareSchema(connection);
  expect(connection.rows("PRAGMA journal_mode")).toEqual([{ journal_mode: "wal" }]);
  // 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
  expect(connection.rows("PRAGMA synchronous")).toEqual([{ synchronous: 2 }]);
  expect(connection.rows("PRAGMA foreign_keys")).toEqual([{ foreign_keys: 1 }]);
  connection.close();
});

test("a document comes back as it was put in, with its id, its version and the time of the write", async () => {
  const { store } = await opened();
  const added = store.projects.add(PROJECT);
  expect(store.projects.find(added.id)).toEqual({
    id: added.id,
    version: 1,
    updatedAt: "2026-01-31T12:00:00.000Z",
    document: PROJECT,
  });
});

test("documents outlive the store that wrote them", async () => {
  const folder = temporaryFolder();
  const first = await openStore(folder);
  const { id } = first.projects.add(PROJECT);
  const part = first.parts(id, "propellers").add(PROPELLER);
  first.close();
  const { store } = await opened(folder);
  expect(store.parts(id, "propellers").list()).toEqual([part]);
});

test("a write from the version that is stored takes its place and counts up", async () => {
  const { store } = await opened();
  const { id } = store.projects.add(PROJECT);
  const written = store.projects.write(id, 1, { ...PROJECT, name: "Renamed" });
  expect(written).toMatchObject({ version: 2, document: { name: "Renamed" } });
});

test("a write from an older version is refused, says which is stored, and changes nothing", async () => {
  const { store } = await opened();
  const { id } = store.projects.add(PROJECT);
  store.projects.write(id, 1, { ...PROJECT, name: "Second" });
  expect(() => store.projects.write(id, 1, { ...PROJECT, name: "Late" })).toThrow(
    expect.objectContaining({ currentVersion: 2 }),
  );
  expect(store.projects.find(id).document.name).toBe("Second");
});

test("a deletion is from a version too", async () => {
  const { store } = await opened();
  const { id } = store.projects.add(PROJECT);
  store.projects.write(id, 1, { ...PROJECT, name: "Second" });
  expect(() => store.projects.remove(id, 1)).toThrow(expect.objectContaining({ currentVersion: 2 }));
});

test("a deleted document is out of sight until it is restored, and then as it was", async () => {
  const { store } = await opened();
  const { id } = store.projects.add(PROJECT);
  store.projects.remove(id, 1);
  expect(store.projects.list()).toEqual([]);
  expect(() => store.projects.find(id)).toThrow(/deleted/);
  expect(store.projects.restore(id)).toMatchObject({ version: 3, document: PROJECT });
});

test("parts of one project and one kind are out of sight in another", async () => {
  const { store } = await opened();
  const [a, b] = [store.projects.add(PROJECT).id, store.projects.add(PROJECT).id];
  const { id } = store.parts(a, "propellers").add(PROPELLER);
  expect(store.parts(b, "propellers").has(id)).toBe(false);
  expect(store.parts(a, "motors").has(id)).toBe(false);
  expect(store.parts(a, "propellers").has(id)).toBe(true);
});

test("a part of a project that is not there is refused by the database", async () => {
  const { store } = await opened();
  expect(() => store.parts(NOBODY, "propellers").add(PROPELLER)).toThrow(/FOREIGN KEY/);
});

test("a run on a file that was not noted is refused by the database", async () => {
  const { store } = await opened();
  const { id } = store.projects.add(PROJECT);
  expect(() => store.runs(id).add(runOf("0".repeat(64), 1))).toThrow(/FOREIGN KEY/);
});

test("a transaction that throws leaves nothing behind", async () => {
  const { store } = await opened();
  const half = () => {
    store.projects.add(PROJECT);
    throw new Error("half way");
  };
  expect(() => store.transaction(half)).toThrow("half way");
  expect(store.projects.neverUsed()).toBe(true);
});

test("a file is kept under the SHA-256 of its bytes, and the same bytes twice are one file", async () => {
  const { store, folder } = await opened();
  // NIST FIPS 180-4 example "abc": the digest is printed in the standard's examples (SHA256.pdf, 2001).
  const DIGEST = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
  for (const _ of [1, 2]) await store.files.keep(await store.files.receive(bytesOf("abc")));
  expect(readdirSync(join(folder, "files"))).toEqual([DIGEST]);
  expect(readFileSync(store.files.path(DIGEST), "utf8")).toBe("abc");
  expect(readdirSync(join(folder, "incoming"))).toEqual([]);
});

test("a stream that breaks off leaves nothing behind", async () => {
  const { store, folder } = await opened();
  async function* broken() {
    yield new TextEncoder().encode("time,thrust\n");
    throw new Error("gone");
  }
  await expect(store.files.receive(broken())).rejects.toThrow("gone");
  expect(readdirSync(join(folder, "incoming"))).toEqual([]);
});

test("what never arrived whole is swept away at the next start, what was kept is not", async () => {
  const folder = temporaryFolder();
  const first = await openStore(folder);
  const kept = await first.files.receive(bytesOf("whole"));
  await first.files.keep(kept);
  first.close();
  writeFileSync(join(folder, "incoming", "half"), "time,thr");
  const { store } = await opened(folder);
  expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  const hash = createHash("sha256")
    .update(readFileSync(store.files.path(kept.sha256)))
    .digest("hex");
  expect(hash).toBe(kept.sha256);
});

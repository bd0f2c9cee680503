import * as disk from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type Connection, connect } from "../../server/store/connection.ts";
import { type Disk, FileVault } from "../../server/store/fileVault.ts";
import { prepareSchema } from "../../server/store/schema.ts";
import { Store } from "../../server/store/store.ts";
import { bytesOf, PROJECT, PROPELLER, runOf } from "./exampleDocuments.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

/** Counts steps and, once armed, fails the `fatal`-th as a full disk does. */
class Fault {
  steps = 0;
  private fatal = 0;

  arm(fatal: number): void {
    this.steps = 0;
    this.fatal = fatal;
  }

  step(): void {
    this.steps += 1;
    if (this.steps === this.fatal) throw Object.assign(new Error("no space left"), { code: "ENOSPC" });
  }
}

function failingConnection(real: Connection, fault: Fault): Connection {
  const run: Connection["run"] = (sql, ...values) => {
    fault.step();
    return real.run(sql, ...values);
  };
  return { ...real, run };
}

function failingDisk(fault: Fault): Disk {
  const open: Disk["open"] = async (...args) => {
    fault.step();
    const file = await disk.open(...args);
    const { writeFile, sync } = file;
    file.writeFile = async (data, options) => {
      fault.step();
      return writeFile.call(file, data, options);
    };
    file.sync = async () => {
      fault.step();
      return sync.call(file);
    };
    return file;
  };
  const rename: Disk["rename"] = async (from, to) => {
    fault.step();
    return disk.rename(from, to);
  };
  return { ...disk, open, rename };
}

/** All that a person's first hour writes: a project, a part, a log with its run, an edit. */
async function work(store: Store): Promise<void> {
  const received = await store.files.receive(bytesOf("time,thrust\n0,1\n"));
  await store.files.keep(received);
  store.transaction(() => {
    const { id } = store.projects.add(PROJECT);
    store.parts(id, "propellers").add(PROPELLER);
    store.noteFile(received);
    const run = store.runs(id).add(runOf(received.sha256, received.size));
    store.runs(id).write(run.id, 1, { ...run.document, note: "edited" });
  });
}

async function withFault(fatal: number) {
  const folder = temporaryFolder();
  const connection = connect(join(folder, "bollard.sqlite"));
  prepareSchema(connection);
  const fault = new Fault();
  const vault = await FileVault.open(folder, failingDisk(fault));
  fault.arm(fatal);
  const store = new Store(failingConnection(connection, fault), vault);
  const done = await work(store).then(
    () => true,
    (reason: NodeJS.ErrnoException) => reason.code !== "ENOSPC" && reason,
  );
  return { store, connection, folder, fault, done };
}

test("whichever write fails, what was there stays whole, nothing is half there, and the same work succeeds afterwards", async () => {
  for (let fatal = 1; ; fatal += 1) {
    const { store, connection, folder, fault, done } = await withFault(fatal);
    const incoming = await disk.readdir(join(folder, "incoming"));
    if (done === true) {
      expect(fault.steps).toBeGreaterThan(8);
      connection.close();
      return;
    }
    expect(done).toBe(false);
    expect(incoming.length).toBeLessThanOrEqual(1);
    expect(connection.rows("PRAGMA integrity_check")).toEqual([{ integrity_check: "ok" }]);
    expect(store.projects.neverUsed()).toBe(true);
    expect(connection.rows("SELECT * FROM files")).toEqual([]);
    await work(store);
    expect(store.projects.list()).toHaveLength(1);
    connection.close();
  }
});

test("a database that may not grow any more refuses the write, and takes it when there is room again", () => {
  const connection = connect(join(temporaryFolder(), "bollard.sqlite"));
  prepareSchema(connection);
  const store = new Store(connection, undefined as unknown as FileVault);
  const { id } = store.projects.add(PROJECT);
  const pages = Number(connection.rows("PRAGMA page_count")[0]?.["page_count"]);
  connection.rows(`PRAGMA max_page_count = ${pages}`);
  const note = "x".repeat(4000);
  const fill = () =>
    store.transaction(() => {
      for (let i = 0; i < 50; i += 1) store.parts(id, "propellers").add({ ...PROPELLER, note });
    });
  expect(fill).toThrow(expect.objectContaining({ code: "SQLITE_FULL" }));
  expect(store.parts(id, "propellers").list()).toEqual([]);
  connection.rows("PRAGMA max_page_count = 100000");
  fill();
  expect(store.parts(id, "propellers").list()).toHaveLength(50);
  expect(connection.rows("PRAGMA integrity_check")).toEqual([{ integrity_check: "ok" }]);
  connection.close();
});

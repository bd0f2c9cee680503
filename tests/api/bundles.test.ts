import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { loadDemo } from "../../server/demo/loadDemo.ts";
import { PROJECT_FOLDER } from "../../server/projectFolder.ts";
import type { Store } from "../../server/store/store.ts";
import { PartKind } from "../../shared/model/parts/partKinds.ts";
import { KeptShortlist } from "../../shared/model/shortlistStored.ts";
import { BOX, listed, REQUIREMENT } from "../unit/shortlistBox.ts";
import { forged, listedAgain, manifestIn, packed, sha256, type Unpacked, unpacked } from "./bundleFiles.ts";
import { bytesOf, PROJECT, runOf } from "./exampleDocuments.ts";
import { listeningApp, quietConsole, startedApp, upload } from "./startedApp.ts";

const LOGS = pathToFileURL(`${PROJECT_FOLDER}/samples/logs/`);

/** The demonstration with a shortlist, in a server of its own, saved as one file. */
async function savedDemo() {
  const started = await startedApp();
  await loadDemo(started.store, DEMO, LOGS);
  const { id } = started.store.projects.list()[0]!;
  const shortlist = KeptShortlist.parse({
    ...{ name: "Vertical pair", note: "", program: "Bollard Bench 0", madeAt: "2026-01-31T12:00:00.000Z", seconds: 2 },
    request: { requirement: REQUIREMENT, box: BOX, rows: 25, misses: 12 },
    result: listed({}),
  });
  started.store.shortlists(id).add(shortlist);
  const address = await started.app.listen({ host: "127.0.0.1", port: 0 });
  const response = await fetch(`${address}/api/projects/${id}/bundle`);
  return { ...started, id, response, bytes: Buffer.from(await response.arrayBuffer()) };
}

/** A small project with one run, saved as one file. */
async function savedSmall() {
  const started = await startedApp();
  const { id } = started.store.projects.add(PROJECT);
  const received = await started.store.files.receive(bytesOf("time,thrust\n0,1\n1,2\n"));
  await started.store.files.keep(received);
  started.store.noteFile(received);
  started.store.runs(id).add(runOf(received.sha256, received.size));
  const address = await started.app.listen({ host: "127.0.0.1", port: 0 });
  const response = await fetch(`${address}/api/projects/${id}/bundle`);
  return { ...started, id, bytes: Buffer.from(await response.arrayBuffer()) };
}

/** Documents of a project with every identity told by its place in its list, so that two projects can be compared. */
function contents(store: Store, id: string) {
  const shelves = [
    ["project", [store.projects.find(id)]],
    ...PartKind.options.map((kind) => [kind, store.parts(id, kind).list()] as const),
    ["runs", store.runs(id).list()],
    ["shortlists", store.shortlists(id).list()],
  ] as const;
  const places = shelves.flatMap(([name, list]) => list.map((stored, i) => [stored.id, `${name} ${i}`] as const));
  const text = JSON.stringify(shelves.map(([name, list]) => [name, list.map(({ document }) => document)]));
  return JSON.parse(places.reduce((told, [identity, place]) => told.replaceAll(identity, place), text));
}

test("a project that is saved, opened elsewhere and saved again holds the same documents and files", async () => {
  const first = await savedDemo();
  expect(first.response.headers.get("content-type")).toBe("application/zip");
  expect(first.response.headers.get("content-disposition")).toContain("Dabchick.zip");

  const second = await listeningApp();
  const opened = await upload(`${second.address}/api/bundles`, "Dabchick.zip", first.bytes);
  expect(opened.status).toBe(201);
  expect(opened.body.warnings).toEqual([]);
  expect(opened.body.counts).toMatchObject({ runs: DEMO.runs.length, shortlists: 1 });
  const { id } = opened.body.project;
  const before = contents(first.store, first.id);
  const after = contents(second.store, id);
  // Another project of this name stands there already.
  expect(after[0][1][0].name).toBe("Dabchick (2)");
  after[0][1][0].name = "Dabchick";
  expect(after).toEqual(before);

  const again = Buffer.from(await (await fetch(`${second.address}/api/projects/${id}/bundle`)).arrayBuffer());
  const [one, two] = [await unpacked(first.bytes), await unpacked(again)];
  const files = (entries: Unpacked) => [...entries].filter(([name]) => name.startsWith("files/")).sort();
  expect(files(two)).toEqual(files(one));
  expect(two.size).toBe(one.size);
  for (const [name, bytes] of files(one)) expect(name).toBe(`files/${sha256(bytes)}`);
});

test("a run of an opened project is reduced to the same numbers", async () => {
  const first = await savedDemo();
  const second = await listeningApp();
  const { id } = (await upload(`${second.address}/api/bundles`, "p.zip", first.bytes)).body.project;
  const reduced = async ({ ask, store }: Pick<typeof first, "ask" | "store">, projectId: string) => {
    const run = store
      .runs(projectId)
      .list()
      .find(({ document }) => document.purpose === "propeller")!;
    return (await ask("GET", `/api/projects/${projectId}/runs/${run.id}/reduction`)).body;
  };
  const [before, after] = [await reduced(first, first.id), await reduced(second, id)];
  expect(before.thrustCoefficient.value).toBeGreaterThan(0);
  expect(after.thrustCoefficient).toEqual(before.thrustCoefficient);
});

test("what was deleted is not saved, and a recording that still runs is named", async () => {
  const { store, id, ask, app } = await savedSmall();
  const [run] = store.runs(id).list();
  store.runs(id).remove(run!.id, 1);
  expect((await ask("POST", `/api/projects/${id}/recordings`, { name: "Live" })).status).toBe(201);
  const address = app.server.address() as { port: number };
  const response = await fetch(`http://127.0.0.1:${address.port}/api/projects/${id}/bundle`);
  const entries = await unpacked(new Uint8Array(await response.arrayBuffer()));
  expect([...entries.keys()]).toEqual(["manifest.json", "project.json"]);
  expect(manifestIn(entries).notIncluded).toEqual(["Live"]);
});

test("a run that names a deleted part is opened, with a word about it", async () => {
  const { store, id, app, folder } = await savedSmall();
  const [run] = store.runs(id).list();
  const gone = "123e4567-e89b-42d3-a456-426614174000";
  store.runs(id).write(run!.id, 1, { ...run!.document, propellerId: gone });
  const { port } = app.server.address() as { port: number };
  const address = `http://127.0.0.1:${port}/api`;
  const bundle = await (await fetch(`${address}/projects/${id}/bundle`)).arrayBuffer();
  const { body } = await upload(`${address}/bundles`, "p.zip", bundle);
  expect(body.warnings).toMatchObject([{ code: "bundle.deleted-part", where: "First mounting" }]);
  expect(store.runs(body.project.id).list()[0]?.document.propellerId).toBe(gone);
  expect(readdirSync(join(folder, "incoming"))).toEqual([]);
});

const runName = (entries: Unpacked) => [...entries.keys()].find((name) => name.startsWith("runs/"))!;
const fileName = (entries: Unpacked) => [...entries.keys()].find((name) => name.startsWith("files/"))!;
const with_ = (entries: Unpacked, name: string, bytes: Buffer) => new Map([...entries, [name, bytes] as const]);
const without = (entries: Unpacked, name: string) => new Map([...entries].filter(([other]) => other !== name));
const json = (value: unknown) => Buffer.from(JSON.stringify(value));

type Broken = (bytes: Buffer<ArrayBuffer>, entries: Unpacked) => BlobPart | Promise<BlobPart>;

const FAULTS: readonly (readonly [string, Broken, string])[] = [
  ["is empty", () => Buffer.alloc(0), "bundle.not-a-project"],
  ["is no ZIP file", () => Buffer.from("time,thrust\n0,1\n"), "bundle.not-a-project"],
  ["is a ZIP file of something else", () => packed([["readme.txt", json(1)]]), "bundle.unsafe-name"],
  ["is an empty ZIP file", () => packed([]), "bundle.not-a-project"],
  ["is cut short", (bytes) => bytes.subarray(0, bytes.length - 40), "bundle.not-a-project"],
  ["lacks its middle", (bytes) => Buffer.concat([bytes.subarray(0, 300), bytes.subarray(500)]), "bundle.damaged"],
  [
    "comes of a newer program",
    (_, entries) => packed(listedAgain(entries, (manifest) => ({ ...manifest, formatVersion: 99, more: true }))),
    "bundle.newer",
  ],
  [
    "has a manifest of another format",
    (_, entries) => packed(listedAgain(entries, (manifest) => ({ ...manifest, format: "other" }))),
    "bundle.not-a-project",
  ],
  [
    "has a manifest without a list",
    (_, entries) => packed(listedAgain(entries, ({ entries: _gone, ...rest }) => rest)),
    "bundle.unfit-document",
  ],
  [
    "climbs out of its folder",
    async (_, entries) => forged(await packed(with_(entries, "abcdefghij", json(1))), "abcdefghij", "../../evil"),
    "bundle.unsafe-name",
  ],
  [
    "names an absolute path",
    async (_, entries) => forged(await packed(with_(entries, "abcdefghij", json(1))), "abcdefghij", "/etc/evils"),
    "bundle.unsafe-name",
  ],
  ["lists a path that climbs", (_, entries) => packed(listedAgain(entries, climbing)), "bundle.unsafe-name"],
  ["holds a name twice", (_, entries) => packed([...entries, ["project.json", json(1)]]), "bundle.name-twice"],
  ["lists a name twice", (_, entries) => packed(listedAgain(entries, listingTwice)), "bundle.name-twice"],
  [
    "holds what is not listed",
    (_, entries) => packed(with_(entries, `files/${"0".repeat(64)}`, json(1))),
    "bundle.not-listed",
  ],
  ["lacks the log of a run", (_, entries) => packed(without(entries, fileName(entries))), "bundle.missing-entry"],
  [
    "lacks the log of a run and does not list it",
    (_, entries) => packed(listedAgain(without(entries, fileName(entries)))),
    "bundle.missing-entry",
  ],
  ["lacks the project", (_, entries) => packed(listedAgain(without(entries, "project.json"))), "bundle.missing-entry"],
  [
    "holds another log of the same size",
    (_, entries) => packed(with_(entries, fileName(entries), Buffer.from("time,thrust\n0,1\n1,9\n"))),
    "bundle.other-bytes",
  ],
  [
    "holds another log and lists it so",
    (_, entries) => packed(listedAgain(with_(entries, fileName(entries), Buffer.from("time,thrust\n0,1\n1,9\n")))),
    "bundle.other-bytes",
  ],
  [
    "holds a document that was changed",
    (_, entries) => packed(with_(entries, "project.json", json({ ...PROJECT, name: "Other" }))),
    "bundle.other-bytes",
  ],
  [
    "holds a document that does not fit",
    (_, entries) => packed(listedAgain(with_(entries, runName(entries), json({ id: "x", document: { name: 3 } })))),
    "bundle.unfit-document",
  ],
  [
    "holds a document that is no JSON",
    (_, entries) => packed(listedAgain(with_(entries, "project.json", Buffer.from("{")))),
    "bundle.damaged",
  ],
  [
    "holds a document under the name of another",
    (_, entries) => packed(listedAgain(renamed(entries))),
    "bundle.damaged",
  ],
  [
    "unpacks to a document without end",
    (_, entries) => packed(with_(entries, "project.json", Buffer.alloc(65 * 1024 ** 2))),
    "bundle.too-large",
  ],
  [
    "unpacks to a thousand times its size",
    (_, entries) => packed(with_(entries, `files/${"0".repeat(64)}`, Buffer.alloc(80 * 1024 ** 2))),
    "bundle.too-large",
  ],
];

function climbing(manifest: { readonly entries: readonly object[] }) {
  return { ...manifest, entries: [...manifest.entries, { path: "../evil", sha256: "0".repeat(64), size: 1 }] };
}

function listingTwice(manifest: { readonly entries: readonly object[] }) {
  return { ...manifest, entries: [...manifest.entries, manifest.entries[0]] };
}

function renamed(entries: Unpacked): Unpacked {
  const run = runName(entries);
  return with_(without(entries, run), "runs/123e4567-e89b-42d3-a456-426614174000.json", entries.get(run)!);
}

test("a file that can not be trusted is refused with the reason, and nothing of it is kept", async () => {
  const { bytes } = await savedSmall();
  const entries = await unpacked(bytes);
  const { address, store, folder } = await listeningApp();
  for (const [fault, broken, code] of FAULTS) {
    const { status, body } = await upload(`${address}/api/bundles`, "p.zip", await broken(bytes, entries));
    expect({ fault, status, code: body.code }).toEqual({ fault, status: 422, code });
    expect(body.detail, fault).toContain("Nothing of it was kept");
    expect(store.projects.list(), fault).toHaveLength(1);
    expect([...readdirSync(join(folder, "files")), ...readdirSync(join(folder, "incoming"))], fault).toEqual([]);
  }
});

test("a bundle whose entry unpacks to more than it states is refused", async () => {
  const { bytes } = await savedSmall();
  const entries = await unpacked(bytes);
  const { address } = await listeningApp();
  const zip = await packed(entries);
  // The uncompressed size in the list at the end of the file: 24 bytes after its mark (APPNOTE.TXT 6.3.10, 4.3.12).
  const mark = zip.lastIndexOf(Buffer.from("PK\u0001\u0002", "latin1"));
  zip.writeUInt32LE(zip.readUInt32LE(mark + 24) - 1, mark + 24);
  const { status, body } = await upload(`${address}/api/bundles`, "p.zip", zip);
  expect([status, body.code]).toEqual([422, "bundle.other-bytes"]);
});

test("a project whose log is gone from the disk is not saved as if it were whole", async () => {
  quietConsole();
  const { store, id, ask } = await savedSmall();
  const [run] = store.runs(id).list();
  rmSync(store.files.path(run!.document.file.sha256));
  const { status, body } = await ask("GET", `/api/projects/${id}/bundle`);
  expect([status, body.code]).toEqual([503, "store.file-missing"]);
});

import { createHash } from "node:crypto";
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { builtPool } from "./builtPool.ts";
import { PROPELLER } from "./exampleDocuments.ts";
import { standLog } from "./standLog.ts";
import { listeningApp, quietConsole, upload } from "./startedApp.ts";

const NOBODY = "00000000-0000-4000-8000-000000000000";
const LOG = standLog();

/** Threads take half a second to start from sources; all tests of this file share two. */
const pool = builtPool();
afterAll(() => pool.close());

async function withPropeller() {
  const started = await listeningApp({ pool });
  const propeller = started.store.parts(started.projectId, "propellers").add(PROPELLER);
  const path = started.runs.slice(started.address.length);
  return { ...started, propeller, path };
}

test("a log becomes a run: named for its file, on the only propeller, with a recipe and a first look", async () => {
  const { runs, propeller } = await withPropeller();
  const { status, body } = await upload(runs, "sanded 1.csv", LOG);
  expect(status).toBe(201);
  expect(body.run.document).toMatchObject({
    name: "sanded 1",
    propellerId: propeller.id,
    variant: "sanded",
    confirmed: false,
    file: { name: "sanded 1.csv", size: LOG.length, sha256: createHash("sha256").update(LOG).digest("hex") },
  });
  const roles = body.run.document.recipe.columns.map(({ role }: { role: string }) => role);
  expect(roles).toEqual(["time", "command", "thrust", "rotationRate", "voltage", "current"]);
  expect(body.inspection.rows).toBe(700);
  const taken = body.inspection.warnings.map(({ code }: { code: string }) => code);
  expect(taken).toEqual(expect.arrayContaining(["intake.taken-water", "intake.taken-parts"]));
});

test("with one motor in the project the run is on it, and its shaft power is known from there", async () => {
  const { runs, store, projectId } = await withPropeller();
  const constants = { speedConstant: 47.6, resistance: 0.12, noLoadCurrent: 0.4, noLoadCurrentSlope: 0 };
  const motor = store.parts(projectId, "motors").add({ name: "Motor A", ...constants, polePairs: 7, note: "" });
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  expect(run.document.recipe).toMatchObject({ motorId: motor.id, polePairs: 7 });
  const reduction = await (await fetch(`${runs}/${run.id}/reduction`)).json();
  expect(reduction.powerSource).toBe("motorConstants");
});

test("with two propellers the run is on none until a person says which", async () => {
  const { runs, store, projectId } = await withPropeller();
  store.parts(projectId, "propellers").add({ ...PROPELLER, name: "Second" });
  const { body } = await upload(runs, "log.csv", LOG);
  expect(body.run.document).not.toHaveProperty("propellerId");
  const reduced = await fetch(`${runs}/${body.run.id}/reduction`);
  expect(reduced.status).toBe(422);
  expect(await reduced.json()).toMatchObject({ code: "run.no-propeller" });
});

test("the bytes come back as they were sent", async () => {
  const { runs } = await withPropeller();
  const { body } = await upload(runs, "stand müde (1).csv", LOG);
  const file = await fetch(`${runs}/${body.run.id}/file`);
  expect(await file.text()).toBe(LOG);
  expect(file.headers.get("content-disposition")).toBe("attachment; filename*=UTF-8''stand%20m%C3%BCde%20%281%29.csv");
});

test("a kept file that someone took away is a 503 that says so", async () => {
  quietConsole();
  const { runs, path, store, ask } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  rmSync(store.files.path(run.document.file.sha256));
  expect(await ask("GET", `${path}/${run.id}/file`)).toMatchObject({
    status: 503,
    body: { code: "store.file-missing" },
  });
});

test.each([
  { sent: "../../etc/stand.csv", name: "stand.csv", why: "folders are taken off" },
  { sent: "C:\\logs\\stand.csv", name: "stand.csv", why: "those of another system too" },
  { sent: `${"🛶".repeat(200)}.csv`, name: "🛶".repeat(127), why: "a long one is cut between characters" },
])("the name $sent is kept as $name ($why)", async ({ sent, name }) => {
  const { runs } = await withPropeller();
  const { body } = await upload(runs, sent, LOG);
  expect(body.run.document.file.name).toBe(name);
  expect((await fetch(`${runs}/${body.run.id}/file`)).status).toBe(200);
});

test("a run is reduced to the thrust coefficient that the log was made with", async () => {
  const { runs } = await withPropeller();
  const { body } = await upload(runs, "log.csv", LOG);
  const reduction = await (await fetch(`${runs}/${body.run.id}/reduction`)).json();
  const [low, high] = reduction.thrustCoefficient.interval95;
  expect(low).toBeLessThan(0.2);
  expect(high).toBeGreaterThan(0.2);
  expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 2);
  expect(reduction.source).toMatchObject({
    fileName: "log.csv",
    rows: 700,
    program: expect.stringMatching(/^Bollard Bench /),
  });
});

test("the reduction follows an edit of the recipe and of the propeller", async () => {
  const { runs, path, ask, store, projectId, propeller } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  const coefficient = async () => (await ask("GET", `${path}/${run.id}/reduction`)).body.thrustCoefficient.value;
  const told = async () => (await ask("GET", `${path}/${run.id}/reduction`)).body.warnings;
  const assumed = expect.objectContaining({ code: "bench.fluid-assumed" });
  const before = await coefficient();
  expect(await told()).toContainEqual(assumed);
  const corrections = { thrust: { factor: 2, offset: 0, relativeUncertainty: 0 } };
  const { fluidAssumed, ...recipeBefore } = run.document.recipe;
  expect(fluidAssumed).toBe(true);
  const recipe = { ...recipeBefore, corrections };
  await ask("PUT", `${path}/${run.id}`, { version: 1, document: { ...run.document, recipe } });
  expect((await coefficient()) / before).toBeCloseTo(2, 6);
  expect(await told()).not.toContainEqual(assumed);
  store.parts(projectId, "propellers").write(propeller.id, 1, { ...PROPELLER, diameter: 0.152 });
  expect((await coefficient()) / before).toBeCloseTo(2 / 16, 6);
});

test("the reduction with progress is told as events and ends with the result", async () => {
  const { runs } = await withPropeller();
  const { body } = await upload(runs, "log.csv", LOG);
  const response = await fetch(`${runs}/${body.run.id}/reduction/progress`);
  expect(response.headers.get("content-type")).toContain("text/event-stream");
  const events = (await response.text()).trim().split("\n\n");
  const names = events.map((event) => /^event: (\w+)/.exec(event)?.[1]);
  expect(new Set(names.slice(0, -1))).toEqual(new Set(["progress"]));
  expect(names.at(-1)).toBe("reduction");
  const sent = JSON.parse(events.at(-1)?.split("\ndata: ")[1] ?? "");
  expect(sent).toEqual(await (await fetch(`${runs}/${body.run.id}/reduction`)).json());
});

test("the Monte Carlo check is told as events, and the same seed gives the same intervals", async () => {
  const { runs } = await withPropeller();
  const { body } = await upload(runs, "log.csv", LOG);
  const address = `${runs}/${body.run.id}/monte-carlo`;
  const events = (await (await fetch(`${address}/progress?draws=5000&seed=3`)).text()).trim().split("\n\n");
  expect(events.filter((event) => event.startsWith("event: progress")).length).toBeGreaterThan(2);
  const sent = JSON.parse(/^event: monteCarlo\ndata: (.*)$/.exec(events.at(-1) ?? "")?.[1] ?? "");
  expect(sent).toMatchObject({ draws: 5000, seed: 3, results: [{ quantity: "thrustCoefficient", agrees: true }] });
  expect(sent).toEqual(await (await fetch(`${address}?draws=5000&seed=3`)).json());
});

test.each(["draws=10", "draws=1e9", "seed=-1", "turns=5"])("a Monte Carlo check with %s is refused", async (query) => {
  const { runs } = await withPropeller();
  const { body } = await upload(runs, "log.csv", LOG);
  const response = await fetch(`${runs}/${body.run.id}/monte-carlo?${query}`);
  expect(response.status).toBe(400);
  expect((await response.json()).detail).toMatch(/draws|seed|turns/);
});

test("a run that can not be reduced ends its events with the problem", async () => {
  const { runs, path, ask } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  const { propellerId: _, ...document } = run.document;
  await ask("PUT", `${path}/${run.id}`, { version: 1, document });
  const text = await (await fetch(`${runs}/${run.id}/reduction/progress`)).text();
  const problem = JSON.parse(text.trim().split("\n\n").at(-1)?.split("\ndata: ")[1] ?? "");
  expect(problem).toMatchObject({ status: 422, code: "run.no-propeller" });
});

test("a typed table becomes a run of the name it was given", async () => {
  const { path, ask } = await withPropeller();
  const text = "thrust (N)  speed (rpm)\n0.0 0\n1.2 1000\n4.9 2000\n10.9 3000\n";
  const { status, body } = await ask("POST", `${path}/table`, { name: "Kitchen scale", text });
  expect(status).toBe(201);
  expect(body.run).toMatchObject({ version: 1, document: { name: "Kitchen scale", file: { name: "table.txt" } } });
});

test("a chart gets the log in as many steps as it asks", async () => {
  const { runs, path, ask } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  const { body } = await ask("GET", `${path}/${run.id}/trace?from=10&to=20&points=50`);
  expect(body.times).toHaveLength(50);
  expect(body.start).toBeGreaterThanOrEqual(10);
  expect(body.channels.map(({ role }: { role: string }) => role)).toContain("thrust");
});

test("the first look can be had again", async () => {
  const { runs, path, ask } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  expect((await ask("GET", `${path}/${run.id}/inspection`)).body).toMatchObject({ rows: 700 });
});

test("runs of two variants are compared, a run that can not be reduced is told by its name", async () => {
  const { runs, path, ask } = await withPropeller();
  const a = (await upload(runs, "as printed.csv", LOG)).body.run;
  const b = (await upload(runs, "sanded.csv", standLog({ rowsPerStep: 110 }))).body.run;
  const request = {
    groups: [
      { name: "as printed", runs: [a.id] },
      { name: "sanded", runs: [b.id] },
    ],
    baseline: "as printed",
  };
  const at = path.replace(/\/runs$/, "/comparison");
  const compared = await ask("POST", at, request);
  expect(compared.status).toBe(200);
  expect(compared.body.comparisons[0].thrustCoefficientRatio.value).toBeCloseTo(1, 2);
  const { propellerId: _, ...document } = b.document;
  await ask("PUT", `${path}/${b.id}`, { version: 1, document });
  const refused = await ask("POST", at, request);
  expect(refused).toMatchObject({ status: 422, body: { code: "run.no-propeller" } });
  expect(refused.body.where).toBe("Run sanded");
});

test("a run may not name a part that its project does not have, nor another file", async () => {
  const { runs, path, ask } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  const at = `${path}/${run.id}`;
  const stranger = await ask("PUT", at, { version: 1, document: { ...run.document, propellerId: NOBODY } });
  expect(stranger).toMatchObject({ status: 422, body: { code: "run.no-such-part", where: "document.propellerId" } });
  const file = { ...run.document.file, sha256: "0".repeat(64) };
  const swapped = await ask("PUT", at, { version: 1, document: { ...run.document, file } });
  expect(swapped).toMatchObject({ status: 422, body: { code: "run.other-file" } });
});

test("a run whose propeller was deleted is not reduced until it is restored", async () => {
  const { runs, path, ask, propeller } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  const part = `${path.replace(/runs$/, "parts/propellers")}/${propeller.id}`;
  await ask("DELETE", `${part}?version=1`);
  const refused = await ask("GET", `${path}/${run.id}/reduction`);
  expect(refused).toMatchObject({ status: 422, body: { code: "run.no-such-part" } });
  await ask("POST", `${part}/restore`);
  expect((await ask("GET", `${path}/${run.id}/reduction`)).status).toBe(200);
});

test("a deleted run is out of the list until it is restored, and its log is kept all the while", async () => {
  const { runs, path, ask, folder } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  await ask("DELETE", `${path}/${run.id}?version=1`);
  expect((await ask("GET", path)).body.runs).toEqual([]);
  expect(readdirSync(join(folder, "files"))).toHaveLength(1);
  await ask("POST", `${path}/${run.id}/restore`);
  expect((await ask("GET", path)).body.runs).toHaveLength(1);
});

test.each([
  { name: "empty.csv", bytes: "", code: /empty/, says: /empty\.csv/ },
  {
    name: "photo.csv",
    bytes: Uint8Array.from({ length: 5000 }, (_, i) => (i * 7919) % 256),
    code: /./,
    says: /photo\.csv/,
  },
  { name: "thrust.csv", bytes: "hello\nworld\n", code: /./, says: /thrust\.csv/ },
])(
  "$name can not be read: the refusal names the file and nothing of it is kept",
  async ({ name, bytes, code, says }) => {
    const { runs, path, ask, folder } = await withPropeller();
    const answer = await upload(runs, name, bytes);
    expect(answer).toMatchObject({ status: 422, type: "application/problem+json" });
    expect(answer.body.code).toMatch(code);
    expect(answer.body.detail).toMatch(says);
    expect((await ask("GET", path)).body.runs).toEqual([]);
    expect(readdirSync(join(folder, "files"))).toEqual([]);
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  },
);

test.each([
  { what: "no rest at zero throttle", log: standLog({ rest: false }), says: /^tare: .*no rest at zero throttle/m },
  { what: "too few plateaus", log: standLog({ steps: [], rowsPerStep: 30 }), says: /odd\.csv: .*plateau/i },
  { what: "one column", log: "thrust (N)\n1\n2\n3\n4\n", says: /odd\.csv.*column/i },
])("a log with $what is refused or warned of, never reduced in silence", async ({ log, says }) => {
  const { runs } = await withPropeller();
  const made = await upload(runs, "odd.csv", log);
  const answer = made.status === 201 ? await (await fetch(`${runs}/${made.body.run.id}/reduction`)).json() : made.body;
  const warnings = (answer.warnings ?? []).map(({ message }: { message: string }) => message);
  expect([answer.detail ?? "", ...warnings].join("\n")).toMatch(says);
});

test("a unit that does not fit its role is refused by column", async () => {
  const { runs, path, ask } = await withPropeller();
  const { run } = (await upload(runs, "log.csv", LOG)).body;
  const columns = run.document.recipe.columns.map((use: { role: string }) =>
    use.role === "thrust" ? { ...use, unit: "V" } : use,
  );
  await ask("PUT", `${path}/${run.id}`, {
    version: 1,
    document: { ...run.document, recipe: { ...run.document.recipe, columns } },
  });
  const answer = await ask("GET", `${path}/${run.id}/reduction`);
  expect(answer.status).toBe(422);
  expect(answer.body.detail).toMatch(/column/i);
  expect(answer.body.detail).toMatch(/V/);
});

test("a form without a file, and one with the file in another field, are refused", async () => {
  const { runs } = await withPropeller();
  const empty = new FormData();
  empty.append("note", "x");
  const elsewhere = new FormData();
  elsewhere.append("log", new File([LOG], "log.csv"));
  for (const body of [empty, elsewhere]) {
    const response = await fetch(runs, { method: "POST", body });
    expect(response.status).toBe(400);
    expect(await response.json()).toMatchObject({ code: "server.not-one-file" });
  }
});

test("a log over the limit is refused and nothing of it is kept", async () => {
  const { runs, folder } = await listeningApp({ fileLimit: 10_000 });
  const answer = await upload(runs, "long.csv", "1,2\n".repeat(5000));
  expect(answer).toMatchObject({ status: 413, body: { code: "server.file-too-large" } });
  expect(readdirSync(join(folder, "files"))).toEqual([]);
  expect(readdirSync(join(folder, "incoming"))).toEqual([]);
});

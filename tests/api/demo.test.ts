import { pathToFileURL } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { loadDemo } from "../../server/demo/loadDemo.ts";
import { PROJECT_FOLDER } from "../../server/projectFolder.ts";
import { openStore } from "../../server/store/openStore.ts";
import type { PartKind } from "../../shared/model/parts/partKinds.ts";
import { startedApp } from "./startedApp.ts";
import { startedProcess } from "./startedProcess.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

const LOGS = pathToFileURL(`${PROJECT_FOLDER}/samples/logs/`);

test("an empty store gets the demonstration, marked as invented, with each run on its propeller, motor and controller", async () => {
  const { store } = await startedApp();
  await loadDemo(store, DEMO, LOGS);
  const [project] = store.projects.list();
  expect(project?.document).toMatchObject({ name: "Dabchick", invented: true });
  const id = project?.id ?? "";
  const runs = store.runs(id).list();
  expect(runs.map(({ document }) => document.name)).toEqual(DEMO.runs.map(({ name }) => name));
  for (const { document } of runs) {
    expect(store.parts(id, "propellers").has(document.propellerId ?? "")).toBe(document.purpose === "propeller");
    expect(store.parts(id, "motors").has(document.recipe.motorId ?? "")).toBe(true);
    expect(store.parts(id, "controllers").has(document.recipe.controllerId ?? "")).toBe(true);
  }
});

test("the vehicles of the demonstration are made of its parts, by their identities", async () => {
  const { store } = await startedApp();
  await loadDemo(store, DEMO, LOGS);
  const [project] = store.projects.list();
  const has = (kind: PartKind, id: string | undefined) => store.parts(project!.id, kind).has(id ?? "");
  const vehicles = project?.document.vehicles ?? [];
  expect(vehicles.map(({ name }) => name)).toEqual(DEMO.vehicles.map(({ name }) => name));
  for (const { drives, supply, tether } of vehicles) {
    expect(
      drives.every(({ motorId, controllerId }) => has("motors", motorId) && has("controllers", controllerId)),
    ).toBe(true);
    expect([has("packs", supply.packId), has("tethers", tether?.tetherId)]).toEqual([true, true]);
  }
  expect(has("gears", vehicles[1]?.drives[0]?.gearId)).toBe(true);
});

test("every run of the demonstration is reduced, and its finishes are compared", async () => {
  const { store, ask } = await startedApp();
  await loadDemo(store, DEMO, LOGS);
  const at = `/api/projects/${store.projects.list()[0]?.id}`;
  const runs = store.runs(store.projects.list()[0]?.id ?? "").list();
  for (const { id, document } of runs) {
    const wanted = document.purpose === "propeller" ? "reduction" : "electrical";
    expect((await ask("GET", `${at}/runs/${id}/${wanted}`)).status).toBe(200);
  }
  const group = (name: string) => ({
    name,
    runs: runs.filter(({ document }) => document.variant === name).map(({ id }) => id),
  });
  const request = { groups: [group("as printed"), group("sanded")], baseline: "as printed" };
  const { status, body } = await ask("POST", `${at}/comparison`, request);
  expect(status).toBe(200);
  expect(body.comparisons).toHaveLength(1);
});

test("a store that has ever held a project is left alone, also when it was deleted", async () => {
  const { store } = await startedApp();
  await loadDemo(store, DEMO, LOGS);
  const [project] = store.projects.list();
  store.projects.remove(project?.id ?? "", 1);
  await loadDemo(store, DEMO, LOGS);
  expect(store.projects.list()).toEqual([]);
});

test("a log of the demonstration that is missing leaves the store empty", async () => {
  const { store } = await startedApp();
  await expect(loadDemo(store, DEMO, new URL("nowhere/", LOGS))).rejects.toThrow();
  expect(store.projects.neverUsed()).toBe(true);
});

test("a write of the demonstration that fails half way leaves the store empty, and the next start loads it whole", async () => {
  const { store } = await startedApp();
  const { noteFile } = store;
  let noted = 0;
  store.noteFile = (file) => {
    noted += 1;
    if (noted === 5) throw new Error("the fifth");
    noteFile.call(store, file);
  };
  await expect(loadDemo(store, DEMO, LOGS)).rejects.toThrow("the fifth");
  expect(store.projects.neverUsed()).toBe(true);
  await loadDemo(store, DEMO, LOGS);
  expect(store.runs(store.projects.list()[0]?.id ?? "").list()).toHaveLength(DEMO.runs.length);
});

test("whenever the first start is killed, the next one has the whole demonstration, once", async () => {
  const folder = temporaryFolder();
  for (const milliseconds of [500, 650, 800]) {
    const { child, ended } = startedProcess(["--port", "0", "--data", folder]);
    setTimeout(() => child.kill("SIGKILL"), milliseconds);
    await ended;
  }
  const last = startedProcess(["--port", "0", "--data", folder]);
  await last.spoke;
  last.child.kill("SIGTERM");
  await last.ended;
  const store = await openStore(folder);
  onTestFinished(() => store.close());
  expect(store.projects.list()).toHaveLength(1);
  expect(store.runs(store.projects.list()[0]?.id ?? "").list()).toHaveLength(DEMO.runs.length);
});

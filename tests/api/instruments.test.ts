import { expect, test } from "vitest";
import { bytesOf, PROJECT, PROPELLER, runOf } from "./exampleDocuments.ts";
import { standLog } from "./standLog.ts";
import { startedApp } from "./startedApp.ts";

const instrument = (gain: number, role = "thrust") => ({
  name: "Cell",
  role,
  calibration: {
    kind: role === "thrust" ? "deadWeights" : "comparison",
    appliedUnit: role === "thrust" ? "N" : "A",
    readingUnit: role === "thrust" ? "N" : "A",
    appliedTolerance: 0.003,
    points: [0, 10, 20, 30, 20, 10, 0].map((applied) => ({ applied, reading: gain * applied })),
  },
});

const COLUMNS = [
  { column: 0, role: "time" as const, unit: "s" },
  { column: 2, role: "thrust" as const, unit: "N" },
  { column: 3, role: "rotationRate" as const, unit: "rpm" },
];

/** A project with two runs of one log, both measured with one load cell. */
async function withCell() {
  const { store, ask } = await startedApp();
  const projectId = store.projects.add(PROJECT).id;
  const at = `/api/projects/${projectId}`;
  const propellerId = store.parts(projectId, "propellers").add(PROPELLER).id;
  const cell = (await ask("POST", `${at}/parts/instruments`, instrument(1))).body;
  const received = await store.files.receive(bytesOf(standLog()));
  await store.files.keep(received);
  store.noteFile(received);
  const document = runOf(received.sha256, received.size);
  const recipe = {
    ...document.recipe,
    columns: COLUMNS,
    tare: { mode: "zeroThrottle" as const },
    instrumentIds: { thrust: cell.id },
  };
  const runs = [1, 2].map(() => store.runs(projectId).add({ ...document, propellerId, recipe }));
  const coefficient = async (id: string) =>
    (await ask("GET", `${at}/runs/${id}/reduction`)).body.thrustCoefficient.value;
  return { ask, at, cell, runs, coefficient };
}

test("a new calibration reduces every run that names the instrument again", async () => {
  const { ask, at, cell, runs, coefficient } = await withCell();
  const before = await Promise.all(runs.map(({ id }) => coefficient(id)));
  expect(before[0]).toBeCloseTo(0.2, 2);
  const changed = await ask("PUT", `${at}/parts/instruments/${cell.id}`, { version: 1, document: instrument(2) });
  expect(changed.status).toBe(200);
  const after = await Promise.all(runs.map(({ id }) => coefficient(id)));
  for (const [i, value] of after.entries()) expect(value / before[i]).toBeCloseTo(0.5, 6);
});

test("the trace of a run is told in what its instrument makes of the readings", async () => {
  const { ask, at, cell, runs } = await withCell();
  const top = async () => {
    const { channels } = (await ask("GET", `${at}/runs/${runs[0]?.id}/trace?points=50`)).body;
    return Math.max(...channels.find(({ role }: { role: string }) => role === "thrust").high);
  };
  const before = await top();
  await ask("PUT", `${at}/parts/instruments/${cell.id}`, { version: 1, document: instrument(2) });
  expect((await top()) / before).toBeCloseTo(0.5, 3);
});

test("the table of an instrument is kept as typed, and its factor is not stored", async () => {
  const { ask, at, cell } = await withCell();
  const { instruments } = (await ask("GET", `${at}/parts`)).body;
  expect(instruments).toEqual([cell]);
  expect(cell.document.calibration.points).toEqual(instrument(1).calibration.points);
  expect(cell.document).not.toHaveProperty("factor");
});

test.each([
  { what: "an instrument of another channel", code: "run.other-role" },
  { what: "an instrument that is not there", code: "run.no-such-part" },
])("a run is refused $what", async ({ code }) => {
  const { ask, at, runs } = await withCell();
  const sensor = (await ask("POST", `${at}/parts/instruments`, instrument(1, "current"))).body;
  const id = code === "run.other-role" ? sensor.id : "123e4567-e89b-42d3-a456-426614174000";
  const { document, version } = runs[0]!;
  const recipe = { ...document.recipe, instrumentIds: { thrust: id } };
  const { status, body } = await ask("PUT", `${at}/runs/${runs[0]?.id}`, {
    version,
    document: { ...document, recipe },
  });
  expect(status).toBe(422);
  expect(body.code).toBe(code);
});

test("an instrument whose method does not belong to its channel is refused, naming the field", async () => {
  const { ask, at } = await withCell();
  const wrong = { name: "x", role: "thrust", calibration: { kind: "markers", pulsesPerTurn: 3 } };
  const { status, body } = await ask("POST", `${at}/parts/instruments`, wrong);
  expect(status).toBeGreaterThanOrEqual(400);
  expect(JSON.stringify(body)).toContain("calibration.kind");
});

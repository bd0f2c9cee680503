import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { loadDemo } from "../../server/demo/loadDemo.ts";
import { PROJECT_FOLDER } from "../../server/projectFolder.ts";
import { MotorIdentification } from "../../shared/model/motorIdentification.ts";
import { startedApp } from "./startedApp.ts";

const LOGS = pathToFileURL(`${PROJECT_FOLDER}/samples/logs/`);

test("a run without propeller answers with its electrical plateaus, and says why it has no coefficients", async () => {
  const { store, ask } = await startedApp();
  await loadDemo(store, DEMO, LOGS);
  const projectId = store.projects.list()[0]?.id ?? "";
  const run = store
    .runs(projectId)
    .list()
    .find(({ document }) => document.purpose === "noLoadDry");
  const at = `/api/projects/${projectId}/runs/${run?.id}`;
  const electrical = await ask("GET", `${at}/electrical`);
  expect(electrical.status).toBe(200);
  expect(electrical.body).toMatchObject({ commandUnit: "µs", fileName: "no-load-dry.csv" });
  expect(electrical.body.idleCommand).toBeCloseTo(1500, 6);
  expect(electrical.body.plateaus).toHaveLength(11);
  expect(electrical.body.calibration).toEqual({ voltage: 0.003, current: 0.006 });
  const refused = await ask("GET", `${at}/reduction`);
  expect(refused.status).toBe(422);
  expect(refused.body).toMatchObject({ code: "run.without-propeller" });
  expect(refused.body.detail).toContain("identify the motor");
});

test("a run with a propeller has electrical plateaus as well", async () => {
  const { store, ask } = await startedApp();
  await loadDemo(store, DEMO, LOGS);
  const projectId = store.projects.list()[0]?.id ?? "";
  const run = store
    .runs(projectId)
    .list()
    .find(({ document }) => document.file.name === "torque-motor-b.tsv");
  const { status, body } = await ask("GET", `/api/projects/${projectId}/runs/${run?.id}/electrical`);
  expect(status).toBe(200);
  expect(body.plateaus.every(({ torque }: { torque: unknown }) => torque !== null)).toBe(true);
});

const POINT = { load: "noLoadDry", voltage: 50, current: 1.25, rotationRate: 35 };
const WORTH = { voltageUncertainty: 0.05, currentUncertainty: 0.01, rotationRateUncertainty: 0.05 };

test("points become constants, with a result that fits its schema", async () => {
  const { ask } = await startedApp();
  const body = { points: [{ ...POINT, ...WORTH }], stated: { resistance: { value: 1.03 } } };
  const answer = await ask("POST", "/api/compute/motor-identification", body);
  expect(answer.status).toBe(200);
  expect(MotorIdentification.safeParse(answer.body).error?.issues ?? []).toEqual([]);
  // Fitzgerald, Kingsley & Umans, Electric Machinery, 6th ed. (from memory), K_m recomputed without rounding.
  expect(answer.body.constants.torqueConstant.value).toBeCloseTo(0.221509576153, 9);
});

test("pole pairs alone need no points", async () => {
  const { ask } = await startedApp();
  const body = { polePairReadings: [{ electrical: 525, shaft: 75 }] };
  const answer = await ask("POST", "/api/compute/motor-identification", body);
  expect(answer.status).toBe(200);
  expect(answer.body).toMatchObject({ constants: null, polePairs: { polePairs: 7 } });
});

test.each([
  { name: "no resistance", body: { points: [{ ...POINT, ...WORTH }] }, code: "motor.resistance-unknown" },
  { name: "a speed of zero", body: { points: [{ ...POINT, rotationRate: 0 }] }, code: null },
  {
    name: "half a pole pair",
    body: { polePairReadings: [{ electrical: 487, shaft: 75 }] },
    code: "motor.pole-pairs-unclear",
  },
])("$name is a problem that says what is needed", async ({ body, code }) => {
  const { ask } = await startedApp();
  const answer = await ask("POST", "/api/compute/motor-identification", body);
  expect([400, 422]).toContain(answer.status);
  expect(answer.body.detail).toMatch(/Needed|allowed|at least|more than/i);
  if (code !== null) expect(answer.body.code).toBe(code);
});

test("a flooded rotor is estimated, flagged as an estimate", async () => {
  const { ask } = await startedApp();
  const body = {
    radius: 0.014,
    length: 0.012,
    radialGap: 3e-4,
    axialGap: 1e-3,
    density: 998.6,
    kinematicViscosity: 1.0541758461846585e-6,
    rotationRate: 5000 / 60,
  };
  const answer = await ask("POST", "/api/compute/flooded-rotor", body);
  expect(answer.status).toBe(200);
  // Bilgen & Boulos 1973 and Daily & Nece 1960 (from memory), evaluated outside this project.
  expect(answer.body.power.value).toBeCloseTo(1.0901286566, 8);
  expect(answer.body.warnings[0].code).toBe("motor.wet-loss-estimated");
});

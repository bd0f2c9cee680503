import { afterAll, expect, test } from "vitest";
import { BROKEN_LOGS } from "../unit/brokenLogs.ts";
import { builtPool } from "./builtPool.ts";
import { PROPELLER } from "./exampleDocuments.ts";
import { listeningApp, upload } from "./startedApp.ts";

const pool = builtPool();
afterAll(() => pool.close());

const bytesOf = (name: string) => Buffer.from(BROKEN_LOGS.find((log) => log.name === name)!.bytes);
const METER = Buffer.from(BROKEN_LOGS.find((log) => log.name === "two logs apart")!.companion!);

async function withRun(name: string) {
  const { runs, store, projectId } = await listeningApp({ pool });
  store.parts(projectId, "propellers").add({ ...PROPELLER, diameter: 0.076 });
  const { run } = (await upload(runs, `${name}.csv`, bytesOf(name))).body;
  const address = `${runs}/${run.id}`;
  const get = async (path: string) => {
    const response = await fetch(`${address}/${path}`);
    return { status: response.status, body: await response.json() };
  };
  const put = async (version: number, document: object) => {
    const body = JSON.stringify({ version, document });
    const response = await fetch(address, { method: "PUT", headers: { "content-type": "application/json" }, body });
    return { status: response.status, body: await response.json() };
  };
  return { run, address, get, put };
}
// biome-ignore lint/suspicious/noExplicitAny: JSON as it came
const codesOf = (told: any) => told.map(({ code }: { code: string }) => code);

test("the first look tells what each reading of a doubtful column would mean for the propeller of the run", async () => {
  const { get, put, run } = await withRun("gram-force labelled newton");
  const [choice] = (await get("inspection")).body.choices;
  expect(choice).toMatchObject({ role: "thrust", recommended: "g" });
  // Momentum theory for the watts of the log; nothing was switched.
  expect(run.document.recipe.columns[choice.column].unit).toBe("N");
  const columns = run.document.recipe.columns.map((use: { column: number }) =>
    use.column === choice.column ? { ...use, unit: choice.recommended } : use,
  );
  const { status } = await put(run.version, { ...run.document, recipe: { ...run.document.recipe, columns } });
  expect(status).toBe(200);
  expect((await get("inspection")).body.choices).toEqual([]);
  expect((await get("reduction")).body.thrustCoefficient.value).toBeCloseTo(0.2, 3);
});

test("what a person states about the text is read afresh, and taken back is read as before", async () => {
  const { get, put, run } = await withRun("ragged rows");
  const before = (await get("inspection")).body;
  const short = before.repairs.find(({ code }: { code: string }) => code === "log.short-row");
  expect(short).toMatchObject({ refusable: true, count: 8 });
  const recipe = { ...run.document.recipe, reading: { refusedRepairs: ["log.short-row"] } };
  const stored = (await put(run.version, { ...run.document, recipe })).body;
  const refused = (await get("inspection")).body;
  expect(refused.rows).toBe(before.rows - 8);
  expect(refused.repairs.find(({ code }: { code: string }) => code === "log.short-row").refused).toBe(true);
  expect((await get("reduction")).body.source.rows).toBe(before.rows - 8);
  await put(stored.version, run.document);
  expect((await get("inspection")).body).toEqual(before);
  expect((await get("reduction")).body.source.rows).toBe(before.rows);
});

test("a reading that does not fit is a readable problem of the first look, and the run can still be changed", async () => {
  const { get, put, run } = await withRun("tab");
  const recipe = { ...run.document.recipe, reading: { delimiter: "|" } };
  const stored = await put(run.version, { ...run.document, recipe });
  expect(stored.status).toBe(200);
  expect(await get("inspection")).toMatchObject({ status: 422, body: { code: "log.reading-fits-nothing" } });
  expect((await put(stored.body.version, run.document)).status).toBe(200);
  expect((await get("inspection")).status).toBe(200);
});

test("the electrical log of a run is laid over it: lag, picture, electrical power; a stated lag counts", async () => {
  const { get, put, run, address } = await withRun("two logs apart");
  const sent = await upload(`${address}/companion`, "meter.csv", METER);
  expect(sent.status).toBe(201);
  expect(sent.body.companion).toMatchObject({ file: { name: "meter.csv" }, lag: { mode: "automatic" } });
  const stored = (await put(run.version, { ...run.document, companion: sent.body.companion })).body;
  const { body: picture } = await get("companion/alignment?points=100");
  expect(picture.alignment.lag.value).toBeCloseTo(-412.3, 1);
  expect([picture.times, picture.first, picture.second].map((part) => part.length)).toEqual([100, 100, 100]);
  const { body: reduction } = await get("reduction");
  expect(reduction.plateaus[0].electricalPower.value).toBeGreaterThan(5);
  expect(codesOf(reduction.warnings)).toContain("bench.logs-aligned");
  const trace = (await get("trace?points=50")).body.channels.map(({ role }: { role: string }) => role);
  expect(trace).toEqual(expect.arrayContaining(["voltage", "current"]));
  expect((await get("companion/inspection")).body.shape.columns).toHaveLength(3);
  const moved = { ...sent.body.companion, lag: { mode: "stated", seconds: 5000 } };
  await put(stored.version, { ...run.document, companion: moved });
  expect((await get("companion/alignment")).body.alignment).toMatchObject({ mode: "stated", overlap: 0 });
  expect((await get("reduction")).body.plateaus[0].electricalPower).toBeNull();
});

test("a companion that was never sent, or is the log itself, or is no log, is refused and changes nothing", async () => {
  const { get, put, run, address } = await withRun("two logs apart");
  const file = { name: "x.csv", sha256: "0".repeat(64), size: 3 };
  const unknown = await put(run.version, {
    ...run.document,
    companion: { file, columns: [], lag: { mode: "automatic" } },
  });
  expect(unknown).toMatchObject({ status: 422, body: { code: "run.no-such-file" } });
  const outside = { ...file, sha256: "../../../etc/passwd".padEnd(64, "x") };
  const climbing = await put(run.version, { ...run.document, companion: { file: outside, columns: [] } });
  expect(climbing.status).toBe(400);
  const itself = await upload(`${address}/companion`, "same.csv", bytesOf("two logs apart"));
  expect(itself).toMatchObject({ status: 422, body: { code: "run.same-file" } });
  const empty = await upload(`${address}/companion`, "empty.csv", "");
  expect(empty).toMatchObject({ status: 422, body: { code: "intake.empty-file" } });
  expect(await get("companion/alignment")).toMatchObject({ status: 422, body: { code: "run.no-companion" } });
});

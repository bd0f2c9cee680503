import { afterAll, expect, test } from "vitest";
import { builtPool } from "./builtPool.ts";
import { PROPELLER } from "./exampleDocuments.ts";
import { standLog } from "./standLog.ts";
import { listeningApp, upload } from "./startedApp.ts";

const pool = builtPool();
afterAll(() => pool.close());

test("a reduction carries the checks of its run, and what a person states of the stand decides those left open", async () => {
  const { runs, store, projectId } = await listeningApp({ pool });
  store.parts(projectId, "propellers").add(PROPELLER);
  const { run } = (await upload(runs, "log.csv", standLog())).body;
  const verdictOf = async (code: string) => {
    const { quality } = await (await fetch(`${runs}/${run.id}/reduction`)).json();
    expect(quality).toHaveLength(14);
    return quality.find((check: { code: string }) => check.code === code).verdict;
  };
  expect(await verdictOf("bench.immersion")).toBe("unknown");
  const document = { ...run.document, recipe: { ...run.document.recipe, stand: { shaftImmersion: 0.3 } } };
  const stored = await fetch(`${runs}/${run.id}`, {
    method: "PUT",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ version: run.version, document }),
  });
  expect(stored.status).toBe(200);
  expect(await verdictOf("bench.immersion")).toBe("pass");
});

test("a depth below zero is refused with the field it stands in", async () => {
  const { runs, store, projectId } = await listeningApp({ pool });
  store.parts(projectId, "propellers").add(PROPELLER);
  const { run } = (await upload(runs, "log.csv", standLog())).body;
  const document = { ...run.document, recipe: { ...run.document.recipe, stand: { shaftImmersion: -0.3 } } };
  const refused = await fetch(`${runs}/${run.id}`, {
    method: "PUT",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ version: run.version, document }),
  });
  expect(refused.status).toBeGreaterThanOrEqual(400);
  expect(JSON.stringify(await refused.json())).toMatch(/shaftImmersion/);
});

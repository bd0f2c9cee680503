import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { loadDemo } from "../../server/demo/loadDemo.ts";
import { PROJECT_FOLDER } from "../../server/projectFolder.ts";
import { ComparisonAnswer } from "../../shared/model/comparisonRequest.ts";
import { MountingPlan } from "../../shared/model/mountingPlan.ts";
import { keptApp } from "./startedApp.ts";

const LOGS = pathToFileURL(`${PROJECT_FOLDER}/samples/logs/`);

const opened = keptApp(({ store }) => loadDemo(store, DEMO, LOGS));

/** One server with the demonstration for all: nothing here changes it. */
function demonstration() {
  const { store, ask } = opened();
  const project = store.projects.list()[0]!.id;
  return { store, ask, at: `/api/projects/${project}/comparison`, project };
}

test("groups made by a property, with every part of the answer that was asked for", async () => {
  const { ask, at } = demonstration();
  const request = {
    groupBy: "finish",
    filter: { tags: [], factors: [{ factor: "pitchRatio", text: "1" }] },
    pairs: "all",
    robustness: true,
    spreads: "separate",
    anova: { factors: ["finish"] },
  };
  const { status, body } = await ask("POST", at, request);
  expect(status).toBe(200);
  const answer = ComparisonAnswer.parse(body);
  expect(answer.comparisons).toHaveLength(1);
  expect(answer.comparisons[0]!.thrustCoefficientRatio.spreads!.used).toBe("separate");
  expect(answer.factors.compared).toContain("finish");
  expect(answer.robustness).toHaveLength(1);
  // The demonstration states a claim, and nobody chose a baseline: the finish measured first is it.
  expect(answer.comparisons[0]!.baseline.name).toBe("as printed");
  expect(answer.claim).toMatchObject({ factor: 2, verdicts: [{ variant: "sanded", verdict: "refuted" }] });
  expect(answer.anova!.rows[0]!.pValue!).toBeLessThan(0.01);
  expect(answer.runs.length).toBe(answer.comparisons[0]!.baseline.runs + answer.comparisons[0]!.variant.runs);
});

test("runs made with another motor or instrument are named as confounded", async () => {
  const { ask, at, store, project } = demonstration();
  const named = (variant: string) =>
    store
      .runs(project)
      .list()
      .filter(({ document }) => document.variant === variant)
      .map(({ id }) => id);
  const groups = [
    { name: "sanded", runs: named("sanded") },
    { name: "pitch 1.2", runs: named("pitch 1.2") },
  ];
  const claim = { factor: 0.5, source: "nobody" };
  const { body } = await ask("POST", at, { groups, baseline: "sanded", claim });
  expect(body.claim).toMatchObject({ ...claim, verdicts: [{ verdict: "supported" }] });
  const told = body.comparisons[0].warnings.map(
    ({ code, where }: { code: string; where: string }) => `${code} ${where}`,
  );
  expect(told).toContain("compare.confounded calibration");
});

test.each([
  { request: { groupBy: "material" }, status: 422, code: "compare.one-group" },
  { request: { baseline: "nobody" }, status: 422, code: "compare.no-baseline" },
  { request: { groupBy: "colour" }, status: 400, code: undefined },
  { request: { groupBy: "finish", trend: { factor: "roughness" } }, status: 422, code: "compare.trend-few-values" },
])("$request is refused with $status and a sentence", async ({ request, status, code }) => {
  const { ask, at } = demonstration();
  const refused = await ask("POST", at, request);
  expect(refused.status).toBe(status);
  if (code !== undefined) expect(refused.body.code).toBe(code);
  expect(refused.body.detail).toMatch(/\w/);
});

test("the plan of mountings comes with its sheet, and a chance below one half is refused", async () => {
  const { ask } = opened();
  const request = { runToRun: 0.02, difference: 0.05, sheet: { variants: ["a", "b"], seed: 3 } };
  const { status, body } = await ask("POST", "/api/compute/plan", request);
  expect(status).toBe(200);
  expect(MountingPlan.parse(body).sheet!.rows).toHaveLength(8);
  const refused = await ask("POST", "/api/compute/plan", { ...request, power: 0.2 });
  expect(refused.status).toBe(400);
  expect(refused.body.detail).toContain("power");
});

import { expect, test } from "vitest";
import type { Schema } from "../../server/docs/schemaText.ts";
import { PROBLEM_CODES } from "../../shared/model/problemCodes.data.ts";
import { startedApp } from "./startedApp.ts";

interface Described {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, Record<string, unknown>>>;
  readonly components: { readonly schemas: Record<string, Schema> };
}

async function described(): Promise<Described> {
  const { ask } = await startedApp();
  return (await ask("GET", "/api/openapi.json")).body;
}

/** Every schema in the document with the way that leads to it. */
function* schemas(value: unknown, path = "#"): Generator<readonly [string, Schema]> {
  if (typeof value !== "object" || value === null) return;
  yield [path, value as Schema];
  for (const [key, inner] of Object.entries(value)) yield* schemas(inner, `${path}/${key}`);
}

const isNumber = ({ type }: Schema) => [type].flat().some((one) => one === "number" || one === "integer");

test("it is a document of OpenAPI 3.1 that lists every address of the interface", async () => {
  const { openapi, paths } = await described();
  expect(openapi).toBe("3.1.0");
  const project = "/api/projects/{projectId}";
  const addresses = [
    "get /api/health",
    ...["get", "post"].map((method) => `${method} /api/projects`),
    ...["get", "put", "delete"].map((method) => `${method} ${project}`),
    `post ${project}/restore`,
    `get ${project}/bundle`,
    "post /api/bundles",
    `get ${project}/parts`,
    ...["propellers", "motors", "controllers", "packs", "tethers", "gears", "instruments"].flatMap((kind) => [
      `post ${project}/parts/${kind}`,
      `put ${project}/parts/${kind}/{id}`,
      `delete ${project}/parts/${kind}/{id}`,
      `post ${project}/parts/${kind}/{id}/restore`,
    ]),
    ...["propellers", "motors", "controllers", "packs", "tethers", "gears"].flatMap((kind) => [
      `get ${project}/parts/${kind}/table`,
      `post ${project}/parts/${kind}/table`,
      `post ${project}/parts/${kind}/table/preview`,
    ]),
    ...["get", "post"].map((method) => `${method} ${project}/runs`),
    `post ${project}/runs/table`,
    ...["get", "put", "delete"].map((method) => `${method} ${project}/runs/{id}`),
    `post ${project}/runs/{id}/restore`,
    `get ${project}/runs/{id}/electrical`,
    ...["motor-identification", "flooded-rotor"].map((what) => `post /api/compute/${what}`),
    ...["inspection", "reduction", "reduction/progress", "monte-carlo", "monte-carlo/progress", "trace", "file"].map(
      (what) => `get ${project}/runs/{id}/${what}`,
    ),
    `post ${project}/runs/{id}/companion`,
    ...["inspection", "alignment"].map((what) => `get ${project}/runs/{id}/companion/${what}`),
    ...["get", "post"].map((method) => `${method} ${project}/recordings`),
    ...["get", "put", "delete"].map((method) => `${method} ${project}/recordings/{id}`),
    ...["restore", "end", "lines"].map((what) => `post ${project}/recordings/{id}/${what}`),
    ...["result", "events", "file"].map((what) => `get ${project}/recordings/{id}/${what}`),
    ...["get", "post"].map((method) => `${method} ${project}/shortlists`),
    ...["progress", "designs", "designs/progress", "{id}/restore"].map((what) => `post ${project}/shortlists/${what}`),
    ...["get", "delete"].map((method) => `${method} ${project}/shortlists/{id}`),
    `get ${project}/shortlists/{id}/file`,
    `post ${project}/comparison`,
    ...["operating-point", "bollard-estimate", "fluid", "plan"].map((what) => `post /api/compute/${what}`),
    ...["drive-train", "control-table", "wire-and-fuse"].map((what) => `post /api/compute/${what}`),
    "get /api/compute/printed-materials",
    "get /api/compute/blade-elements/evidence",
    ...["blade-elements", "blade-geometry", "section-polar"].map((what) => `post /api/compute/${what}`),
    ...["vehicle", "vehicle-layout", "vehicle-drag", "tether"].map((what) => `post /api/compute/${what}`),
    ...["blade-strength", "finish-fit", "loss-report", "surface-state"].map((what) => `post /api/compute/${what}`),
    ...["series", "series-geometry", "best-pitch", "cavitation", "carry-over", "thrust-at-speed"].map(
      (what) => `post /api/compute/${what}`,
    ),
  ];
  const listed = Object.entries(paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method} ${path}`),
  );
  expect(listed.sort()).toEqual(addresses.sort());
});

test("every reference leads to a schema that is there", async () => {
  const whole = await described();
  const names = new Set(Object.keys(whole.components.schemas).map((name) => `#/components/schemas/${name}`));
  const missing = [...schemas(whole)].filter(([, { $ref }]) => typeof $ref === "string" && !names.has($ref));
  expect(missing.map(([path]) => path)).toEqual([]);
});

test("every number says its unit, or in words what it counts", async () => {
  const whole = await described();
  const bare = [...schemas(whole)].filter(([path, schema]) => {
    // Said one step further out: the field that holds the list or the choice, the parameter that has the schema.
    const within = /\/(items|prefixItems\/\d+|anyOf\/\d+|additionalProperties|parameters\/\d+\/schema)$/.test(path);
    return isNumber(schema) && !within && schema.unit === undefined && schema.description === undefined;
  });
  expect(bare.map(([path]) => path)).toEqual([]);
});

test("every parameter says what it is", async () => {
  const { paths } = await described();
  const operations = Object.values(paths).flatMap((path) => Object.values(path));
  const parameters = operations.flatMap((operation) => (operation["parameters"] ?? []) as Schema[]);
  expect(parameters.length).toBeGreaterThan(20);
  expect(parameters.filter(({ description }) => description === undefined)).toEqual([]);
});

test("units and symbols of the documents arrive", async () => {
  const { components } = await described();
  expect(components.schemas["Propeller"]?.properties?.["diameter"]).toMatchObject({ unit: "m", symbol: "D" });
  expect(components.schemas["Reduction"]?.properties?.["thrustCoefficient"]).toMatchObject({
    unit: "1",
    symbol: "K_T",
  });
});

test("sending a log is described as a form with a file, and every address says how it refuses", async () => {
  const { paths } = await described();
  const upload = paths["/api/projects/{projectId}/runs"]?.["post"] as { requestBody: { content: object } };
  expect(Object.keys(upload.requestBody.content)).toEqual(["multipart/form-data"]);
  for (const operation of Object.values(paths).flatMap((path) => Object.values(path))) {
    expect(operation["responses"]).toHaveProperty("default");
    expect(operation["summary"]).toMatch(/\w/);
  }
});

test("the page to read shows every address and every unit, and runs no script", async () => {
  const { app } = await startedApp();
  const { body, headers } = await app.inject({ url: "/api/docs" });
  expect(headers["content-type"]).toBe("text/html; charset=utf-8");
  for (const path of Object.keys((await described()).paths)) expect(body).toContain(path);
  for (const unit of ["kg/m³", "rad/(V·s)", "rev/s", "N·m"]) expect(body).toContain(`<td>${unit}</td>`);
  expect(body).not.toMatch(/<script|\sstyle=|\son\w+=/);
  expect((await app.inject({ url: "/api/docs.css" })).headers["content-type"]).toBe("text/css; charset=utf-8");
});

test("the page lists every code of a problem or warning with its meaning", async () => {
  const { app } = await startedApp();
  const { body } = await app.inject({ url: "/api/docs" });
  const missing = Object.keys(PROBLEM_CODES).filter((code) => !body.includes(`<td><code>${code}</code></td><td>`));
  expect(missing).toEqual([]);
});

test("every link of the page leads to a place on it", async () => {
  const { app } = await startedApp();
  const { body } = await app.inject({ url: "/api/docs" });
  const ids = new Set([...body.matchAll(/id="([^"]+)"/g)].map(([, id]) => id));
  const links = [...body.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id);
  expect(links.length).toBeGreaterThan(20);
  expect(links.filter((id) => !ids.has(id))).toEqual([]);
});

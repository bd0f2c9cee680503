import { expect, test } from "vitest";
import { PROJECT, PROPELLER } from "./exampleDocuments.ts";
import { quietConsole, startedApp } from "./startedApp.ts";

const NOBODY = "00000000-0000-4000-8000-000000000000";

test("it answers that it is there, with program and version", async () => {
  const { ask } = await startedApp();
  expect((await ask("GET", "/api/health")).body).toEqual({
    status: "ok",
    program: expect.stringMatching(/^Bollard Bench /),
  });
});

test("a project is begun, read, changed, deleted and restored", async () => {
  const { ask } = await startedApp();
  const made = await ask("POST", "/api/projects", { name: "Dabchick", water: PROJECT.water });
  expect(made).toMatchObject({
    status: 201,
    body: { version: 1, document: { name: "Dabchick", note: "", invented: false } },
  });
  const at = `/api/projects/${made.body.id}`;
  expect((await ask("GET", at)).body).toEqual(made.body);
  const changed = await ask("PUT", at, { version: 1, document: { ...PROJECT, name: "Second" } });
  expect(changed).toMatchObject({ status: 200, body: { version: 2, document: { name: "Second" } } });
  expect((await ask("DELETE", `${at}?version=2`)).status).toBe(204);
  expect((await ask("GET", at)).status).toBe(404);
  expect((await ask("GET", "/api/projects")).body).toEqual({ projects: [] });
  expect(await ask("POST", `${at}/restore`)).toMatchObject({ status: 200, body: { document: { name: "Second" } } });
});

test("a change to an older version is a 409 that names the version that is stored", async () => {
  const { ask } = await startedApp();
  const { id } = (await ask("POST", "/api/projects", PROJECT)).body;
  await ask("PUT", `/api/projects/${id}`, { version: 1, document: PROJECT });
  const late = await ask("PUT", `/api/projects/${id}`, { version: 1, document: PROJECT });
  expect(late.status).toBe(409);
  expect(late.type).toBe("application/problem+json");
  expect(late.body).toEqual({
    type: "urn:bollard-bench:problem:store.stale-version",
    title: "Changed meanwhile",
    status: 409,
    detail: expect.stringContaining("version 2 is stored, the change was made to version 1"),
    code: "store.stale-version",
    where: `project ${id}`,
    currentVersion: 2,
  });
});

test("parts of each kind are added, listed, changed, deleted and restored", async () => {
  const { ask } = await startedApp();
  const { id } = (await ask("POST", "/api/projects", PROJECT)).body;
  const parts = `/api/projects/${id}/parts`;
  const made = {
    propellers: (await ask("POST", `${parts}/propellers`, PROPELLER)).body,
    motors: (
      await ask("POST", `${parts}/motors`, {
        name: "Motor A",
        speedConstant: 47.6,
        resistance: 0.12,
        noLoadCurrent: 0.55,
      })
    ).body,
    controllers: (await ask("POST", `${parts}/controllers`, { name: "Reversing", resistance: 0.008 })).body,
    packs: (await ask("POST", `${parts}/packs`, { name: "Four cells", openCircuitVoltage: 14.8, resistance: 0.035 }))
      .body,
    tethers: (await ask("POST", `${parts}/tethers`, { name: "80 m", diameter: 0.007 })).body,
    gears: (await ask("POST", `${parts}/gears`, { name: "Spur", ratio: 3, efficiency: 0.95 })).body,
  };
  const all = (await ask("GET", parts)).body;
  for (const [kind, part] of Object.entries(made)) {
    expect(all[kind]).toEqual([part]);
    const at = `${parts}/${kind}/${part.id}`;
    const changed = await ask("PUT", at, { version: 1, document: { ...part.document, note: "measured again" } });
    expect(changed.body).toMatchObject({ version: 2, document: { note: "measured again" } });
    expect((await ask("DELETE", `${at}?version=1`)).status).toBe(409);
    expect((await ask("DELETE", `${at}?version=2`)).status).toBe(204);
    expect((await ask("POST", `${at}/restore`)).body.document.note).toBe("measured again");
  }
});

test("nothing of a deleted project is reached", async () => {
  const { ask } = await startedApp();
  const { id } = (await ask("POST", "/api/projects", PROJECT)).body;
  await ask("DELETE", `/api/projects/${id}?version=1`);
  expect((await ask("GET", `/api/projects/${id}/parts`)).status).toBe(404);
  expect((await ask("GET", `/api/projects/${id}/runs`)).status).toBe(404);
  expect((await ask("POST", `/api/projects/${id}/parts/propellers`, PROPELLER)).status).toBe(404);
});

test.each([
  { method: "GET", url: `/api/projects/${NOBODY}`, status: 404, code: "store.nothing-there", why: "unknown id" },
  { method: "GET", url: "/api/projects/one", status: 400, code: "request.wrong-form", why: "no id at all" },
  { method: "GET", url: "/api/nowhere", status: 404, code: "server.no-such-address", why: "unknown address" },
  { method: "POST", url: "/api/health", status: 404, code: "server.no-such-address", why: "unknown method" },
  { method: "DELETE", url: `/api/projects/${NOBODY}`, status: 400, code: "request.missing", why: "no version" },
  {
    method: "DELETE",
    url: `/api/projects/${NOBODY}?version=new`,
    status: 400,
    code: "request.wrong-type",
    why: "version in words",
  },
] as const)("$method $url is a $status problem, $code ($why)", async ({ method, url, status, code }) => {
  const { ask } = await startedApp();
  const answer = await ask(method, url);
  expect(answer).toMatchObject({ status, type: "application/problem+json", body: { status, code } });
  expect(answer.body.detail).not.toMatch(/NaN|invalid|undefined/i);
});

test("a document that does not fit is a 400 with a sentence for each field", async () => {
  const { ask } = await startedApp();
  const { id } = (await ask("POST", "/api/projects", PROJECT)).body;
  const answer = await ask("POST", `/api/projects/${id}/parts/propellers`, {
    ...PROPELLER,
    diameter: 76,
    bladeCount: 0,
  });
  expect(answer.status).toBe(400);
  expect(answer.body.problems.map(({ where }: { where: string }) => where)).toEqual(["diameter", "bladeCount"]);
  expect(answer.body.detail).toContain(
    "diameter: 76 m is too large. Needed: at most 1 m. If you meant millimetres, send 0.076.",
  );
});

test.each([
  { payload: '{"name": ', type: "application/json", status: 400, code: "server.not-json" },
  { payload: "name=Dabchick", type: "application/x-www-form-urlencoded", status: 415, code: "server.wrong-content" },
  { payload: `"${"x".repeat(9_000_000)}"`, type: "application/json", status: 413, code: "server.body-too-large" },
])("a body of $type that can not be taken is a $status problem, $code", async ({ payload, type, status, code }) => {
  const { app } = await startedApp();
  const response = await app.inject({
    method: "POST",
    url: "/api/projects",
    payload,
    headers: { "content-type": type },
  });
  expect(response.statusCode).toBe(status);
  expect(response.headers["content-type"]).toBe("application/problem+json");
  expect(response.json()).toMatchObject({ status, code });
});

test("a fault of the server tells nothing of its inside, but its window shows it", async () => {
  const shown = quietConsole();
  const { ask, store } = await startedApp();
  store.projects.list = () => {
    throw new TypeError("secret of /root/program");
  };
  const answer = await ask("GET", "/api/projects");
  expect(answer).toMatchObject({ status: 500, body: { code: "server.unexpected" } });
  expect(JSON.stringify(answer.body)).not.toMatch(/secret|TypeError|\/root/);
  expect(shown).toHaveBeenCalledWith(expect.objectContaining({ message: "secret of /root/program" }));
});

test("a full disk is a 507 that says what to do", async () => {
  quietConsole();
  const { ask, store } = await startedApp();
  store.projects.add = () => {
    throw Object.assign(new Error("database or disk is full"), { code: "SQLITE_FULL" });
  };
  expect(await ask("POST", "/api/projects", PROJECT)).toMatchObject({ status: 507, body: { code: "store.full" } });
});

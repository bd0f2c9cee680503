import { mkdirSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { expect, test } from "vitest";
import { PROJECT } from "./exampleDocuments.ts";
import { listeningApp, startedApp } from "./startedApp.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

interface Sent {
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Record<string, string>;
}

/** A request with headers that `fetch` would not let through. */
function send(address: string, { method = "GET", path = "/api/health", headers = {} }: Sent) {
  const { hostname, port } = new URL(address);
  return new Promise<{ status: number; body: string }>((resolve, reject) => {
    const sending = request({ hostname, port, path, method, headers }, (answer) => {
      let body = "";
      answer.on("data", (chunk) => {
        body += chunk;
      });
      answer.on("end", () => resolve({ status: answer.statusCode ?? 0, body }));
    });
    sending.on("error", reject);
    sending.end(method === "POST" ? JSON.stringify(PROJECT) : undefined);
  });
}

test.each(["127.0.0.1", "localhost", "[::1]"])("it answers to the name %s with its own port", async (name) => {
  const { address } = await listeningApp();
  const host = `${name}:${new URL(address).port}`;
  expect((await send(address, { headers: { host } })).status).toBe(200);
});

test.each([
  { host: "workbench.example", why: "another name that points here" },
  { host: "127.0.0.1", why: "no port" },
  { host: "127.0.0.1:1", why: "another port" },
  { host: "localhost.example:PORT", why: "a name that begins like ours" },
  { host: "user@localhost:PORT", why: "a name with something before it" },
  { host: "0.0.0.0:PORT", why: "every address at once" },
])("a request for the host $host is refused ($why)", async ({ host }) => {
  const { address } = await listeningApp();
  const headers = { host: host.replace("PORT", new URL(address).port) };
  const answer = await send(address, { headers });
  expect(answer.status).toBe(421);
  expect(JSON.parse(answer.body)).toMatchObject({ code: "server.not-this-host" });
});

test.each([
  { origin: "https://elsewhere.example", status: 403 },
  { origin: "http://127.0.0.1:1", status: 403 },
  { origin: "https://localhost:PORT", status: 403 },
  { origin: "null", status: 403 },
  { origin: "http://127.0.0.1:PORT", status: 201 },
  { origin: "http://localhost:PORT", status: 201 },
])("a write from the origin $origin is answered $status", async ({ origin, status }) => {
  const { address } = await listeningApp();
  const headers = { origin: origin.replace("PORT", new URL(address).port), "content-type": "application/json" };
  expect((await send(address, { method: "POST", path: "/api/projects", headers })).status).toBe(status);
});

test("a write without origin is taken, unless the browser says it comes from another site", async () => {
  const { address } = await listeningApp();
  const json = { "content-type": "application/json" };
  const write = (headers: Record<string, string>) => send(address, { method: "POST", path: "/api/projects", headers });
  expect((await write(json)).status).toBe(201);
  expect((await write({ ...json, "sec-fetch-site": "cross-site" })).status).toBe(403);
});

test("it listens on this computer alone", async () => {
  const { app } = await listeningApp();
  expect(app.addresses()).toEqual([expect.objectContaining({ address: "127.0.0.1" })]);
});

test("every answer carries the strict policy, refusals too", async () => {
  const { app } = await startedApp();
  for (const url of ["/api/health", "/api/docs", "/api/nowhere", "/", "/nothing.js"]) {
    const { headers } = await app.inject({ url });
    const policy = String(headers["content-security-policy"]);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("style-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain("unsafe");
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers).not.toHaveProperty("access-control-allow-origin");
  }
});

test("more requests than the limit are a 429 problem", async () => {
  const { ask } = await startedApp({ requestsPerMinute: 3 });
  const answers = [];
  for (let i = 0; i < 4; i += 1) answers.push(await ask("GET", "/api/health"));
  expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 429]);
  expect(answers[3]).toMatchObject({ type: "application/problem+json", body: { code: "server.too-many" } });
});

test("the built page is served: itself never cached, its files for good, addresses of the page give the page", async () => {
  const webFolder = temporaryFolder();
  mkdirSync(join(webFolder, "assets"));
  writeFileSync(join(webFolder, "index.html"), "<!doctype html><title>the page</title>");
  writeFileSync(join(webFolder, "assets", "main-1a2b.js"), "1;");
  const { app } = await startedApp({ webFolder });
  for (const url of ["/", "/bench", "/variants/one?x=1"]) {
    const page = await app.inject({ url });
    expect(page.body).toContain("the page");
    expect(page.headers).toMatchObject({ "cache-control": "no-cache", "content-type": "text/html; charset=utf-8" });
  }
  const script = await app.inject({ url: "/assets/main-1a2b.js" });
  expect(script.headers["cache-control"]).toBe("public, max-age=31536000, immutable");
  expect((await app.inject({ url: "/assets/gone.js" })).statusCode).toBe(404);
});

test("nothing outside the folder of the page is served", async () => {
  const webFolder = join(temporaryFolder(), "web");
  mkdirSync(webFolder);
  writeFileSync(join(webFolder, "index.html"), "the page");
  writeFileSync(join(webFolder, "..", "secret.txt"), "secret");
  const { app } = await startedApp({ webFolder });
  for (const url of ["/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/assets/..%5c..%5csecret.txt"]) {
    expect((await app.inject({ url })).body).not.toContain("secret\n");
    expect((await app.inject({ url })).body).not.toBe("secret");
  }
});

test("without a built page it says how to build one", async () => {
  const { app } = await startedApp({ webFolder: join(temporaryFolder(), "nothing") });
  const page = await app.inject({ url: "/" });
  expect(page.statusCode).toBe(200);
  expect(page.body).toContain("npm run build");
});

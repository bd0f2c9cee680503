import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance, InjectOptions } from "fastify";
import { afterAll, beforeAll, onTestFinished, vi } from "vitest";
import { type AppOptions, buildApp } from "../../server/app.ts";
import { openStore } from "../../server/store/openStore.ts";
import type { Store } from "../../server/store/store.ts";
import { builtPool } from "./builtPool.ts";
import { PROJECT } from "./exampleDocuments.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

export interface Answer {
  readonly status: number;
  readonly type: string;
  // biome-ignore lint/suspicious/noExplicitAny: whatever JSON came; the tests say what it must be
  readonly body: any;
}

export interface Asked {
  readonly app: FastifyInstance;
  readonly store: Store;
  readonly folder: string;
  /** Asks without a port. */
  ask(method: NonNullable<InjectOptions["method"]>, url: string, body?: unknown): Promise<Answer>;
}

/** A server on a folder of its own, not listening; both are gone when the test is over. */
export async function startedApp(options: Partial<AppOptions> = {}): Promise<Asked> {
  const { close, ...asked } = await openApp(temporaryFolder(), options);
  onTestFinished(close);
  return asked;
}

/** The same for the tests of a whole file. */
export function keptApp(prepare: (asked: Asked) => Promise<void>): () => Asked {
  const folder = mkdtempSync(join(tmpdir(), "bollard-"));
  let opened: Awaited<ReturnType<typeof openApp>>;
  beforeAll(async () => {
    opened = await openApp(folder);
    await prepare(opened);
  });
  afterAll(async () => {
    await opened.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return () => opened;
}

async function openApp(folder: string, options: Partial<AppOptions> = {}) {
  const store = await openStore(folder);
  const pool = builtPool(store.files.cacheFolder());
  const app = await buildApp({ store, pool, ...options });
  const ask: Asked["ask"] = async (method, url, body) => {
    const payload = body === undefined ? {} : { payload: body as object };
    const address = app.server.address();
    const host = typeof address === "object" && address !== null ? `127.0.0.1:${address.port}` : "localhost";
    const response = await app.inject({ method, url, headers: { host }, ...payload });
    const type = String(response.headers["content-type"] ?? "");
    return { status: response.statusCode, type, body: response.body === "" ? null : JSON.parse(response.body) };
  };
  const close = async () => {
    await app.close();
    await pool.close();
    store.close();
  };
  return { app, store, folder, ask, close };
}

/** What the window of the server is told of faults, kept out of the window of the tests. */
export function quietConsole() {
  const shown = vi.spyOn(console, "error").mockImplementation(() => {});
  onTestFinished(() => shown.mockRestore());
  return shown;
}

/** The same, listening on a free port of this computer. */
export async function listeningApp(options: Partial<AppOptions> = {}) {
  const started = await startedApp(options);
  const address = await started.app.listen({ host: "127.0.0.1", port: 0 });
  const { id } = started.store.projects.add(PROJECT);
  const runs = `${address}/api/projects/${id}/runs`;
  return { ...started, address, projectId: id, runs };
}

/** Sends a log as a browser does. */
export async function upload(address: string, name: string, bytes: BlobPart): Promise<Answer> {
  const form = new FormData();
  form.append("file", new File([bytes], name));
  const response = await fetch(address, { method: "POST", body: form });
  return { status: response.status, type: response.headers.get("content-type") ?? "", body: await response.json() };
}

import { existsSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { buildApp } from "../../server/app.ts";
import { openStore } from "../../server/store/openStore.ts";
import { PROJECT } from "./exampleDocuments.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

const DAY = 86_400_000;

/** A workbench on `folder` whose clock stands at `day`, while `work` is done with it. */
async function onDay<T>(
  folder: string,
  day: number,
  work: (ask: (method: "GET" | "POST" | "DELETE", url: string, body?: object) => Promise<number>) => Promise<T>,
): Promise<T> {
  const store = await openStore(folder, () => new Date(Date.UTC(2026, 0, 1) + day * DAY));
  const app = await buildApp({ store });
  try {
    return await work(async (method, url, body) => {
      const payload = body === undefined ? {} : { payload: body };
      return (await app.inject({ method, url, headers: { host: "localhost" }, ...payload })).statusCode;
    });
  } finally {
    await app.close();
    store.close();
  }
}

async function withDiscarded() {
  const folder = temporaryFolder();
  const store = await openStore(folder, () => new Date(Date.UTC(2026, 0, 1)));
  const { id: projectId } = store.projects.add(PROJECT);
  const app = await buildApp({ store });
  const recordings = `/api/projects/${projectId}/recordings`;
  const make = async (name: string) => {
    const made = await app.inject({
      method: "POST",
      url: recordings,
      headers: { host: "localhost" },
      payload: { name, header: "time (s),thrust (N)" },
    });
    return made.json().id as string;
  };
  const [discarded, open] = [await make("Discarded"), await make("Left open")];
  const gone = await app.inject({
    method: "DELETE",
    url: `${recordings}/${discarded}?version=1`,
    headers: { host: "localhost" },
  });
  expect(gone.statusCode).toBe(204);
  await app.close();
  store.close();
  const has = (id: string) => existsSync(join(folder, "recordings", id));
  return { folder, recordings, discarded, open, has };
}

test("the lines of a discarded recording are there for 30 days and gone at the next start after them; an open one stays", async () => {
  const { folder, recordings, discarded, open, has } = await withDiscarded();
  await onDay(folder, 29, async () => expect([has(discarded), has(open)]).toEqual([true, true]));
  await onDay(folder, 30, async (ask) => {
    expect([has(discarded), has(open)]).toEqual([false, true]);
    expect(await ask("POST", `${recordings}/${discarded}/restore`)).toBe(404);
    expect(await ask("GET", `${recordings}/${open}`)).toBe(200);
  });
});

test("a discarded recording that was taken back in time is not thrown away later", async () => {
  const { folder, recordings, discarded, has } = await withDiscarded();
  await onDay(folder, 10, (ask) => ask("POST", `${recordings}/${discarded}/restore`));
  await onDay(folder, 60, async (ask) => {
    expect(has(discarded)).toBe(true);
    expect(await ask("GET", `${recordings}/${discarded}`)).toBe(200);
  });
});

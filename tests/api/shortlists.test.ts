import { expect, test, vi } from "vitest";
import type { Order } from "../../server/work/jobs.ts";
import { WorkPool } from "../../server/work/workPool.ts";
import type { ThreadEvents } from "../../server/work/workThread.ts";
import { Shortlist } from "../../shared/model/shortlistResult.ts";
import { BOX, listed, REQUIREMENT } from "../unit/shortlistBox.ts";
import { listeningApp } from "./startedApp.ts";

const REQUEST = { requirement: { ...REQUIREMENT, name: "Vertical pair" }, box: BOX, rows: 500, misses: 200 };

async function asked() {
  const started = await listeningApp();
  const shortlists = `/api/projects/${started.projectId}/shortlists`;
  return { ...started, shortlists };
}

test("a shortlist is worked out on the threads, kept, listed, read, deleted and taken back", async () => {
  const { ask, shortlists } = await asked();
  const made = await ask("POST", shortlists, { request: REQUEST });
  expect(made.status).toBe(201);
  const { id, version, document } = made.body;
  expect(document).toMatchObject({ name: "Vertical pair", program: expect.stringContaining("Bollard Bench") });
  // The same numbers as in one piece in this thread, to the last digit.
  const whole = listed({ name: "Vertical pair" });
  expect(Shortlist.parse(document.result)).toEqual(JSON.parse(JSON.stringify(whole)));

  const { body: list } = await ask("GET", shortlists);
  expect(list.shortlists).toHaveLength(1);
  expect(list.shortlists[0]).toMatchObject({ id, combinations: 48, meeting: whole.counts.meeting });
  expect((await ask("GET", `${shortlists}/${id}`)).body.document.result.answer).toBe(whole.answer);
  expect((await ask("DELETE", `${shortlists}/${id}?version=${version}`)).status).toBe(204);
  expect((await ask("GET", `${shortlists}/${id}`)).status).toBe(404);
  expect((await ask("POST", `${shortlists}/${id}/restore`)).status).toBe(200);
});

test("a shortlist comes as a table for a spreadsheet and as JSON", async () => {
  const { ask, app, address, shortlists } = await asked();
  const { id } = (await ask("POST", shortlists, { request: REQUEST })).body;
  expect(app.server.listening).toBe(true);
  const csv = await fetch(`${address}${shortlists}/${id}/file`);
  expect(csv.headers.get("content-type")).toBe("text/csv; charset=utf-8");
  expect(csv.headers.get("content-disposition")).toContain("shortlist.csv");
  expect((await csv.text()).split("\r\n").filter((line) => line !== "")).toHaveLength(1 + listed().counts.meeting);
  const json = await fetch(`${address}${shortlists}/${id}/file?format=json`);
  expect(((await json.json()) as { name: string }).name).toBe("Vertical pair");
});

/** The events of an answer, by name. */
async function events(response: Response) {
  const text = await response.text();
  return [...text.matchAll(/event: (.*)\ndata: (.*)\n/g)].map(([, name, data]) => ({ name, data: JSON.parse(data!) }));
}

const post = (body: unknown, more: RequestInit = {}): RequestInit => ({
  method: "POST",
  headers: { "content-type": "application/json" },
  body: JSON.stringify(body),
  ...more,
});

test("progress is told as events that end with what is kept", async () => {
  const { address, shortlists } = await asked();
  const told = await events(await fetch(`${address}${shortlists}/progress`, post({ request: REQUEST })));
  const shares = told.filter(({ name }) => name === "progress").map(({ data }) => data.fraction);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(told.at(-1)).toMatchObject({ name: "shortlist", data: { version: 1, document: { name: "Vertical pair" } } });
});

test("an empty box is refused with a sentence, also among events", async () => {
  const { ask, address, shortlists } = await asked();
  const request = { ...REQUEST, box: { ...BOX, motors: [] } };
  const refused = await ask("POST", shortlists, { request });
  expect(refused.status).toBe(422);
  expect(refused.body).toMatchObject({ code: "shortlist.empty-box" });
  const told = await events(await fetch(`${address}${shortlists}/progress`, post({ request })));
  expect(told.at(-1)).toMatchObject({ name: "problem", data: { code: "shortlist.empty-box" } });
});

test("closing the connection stops the search", async () => {
  const orders: Order[] = [];
  const start = (_: unknown, __: ThreadEvents) => ({
    order: (order: Order) => void orders.push(order),
    stop: async () => {},
  });
  const { address, projectId } = await listeningApp({ pool: new WorkPool({ threads: 2, start }) });
  const abort = new AbortController();
  const at = `${address}/api/projects/${projectId}/shortlists/progress`;
  const waiting = fetch(at, post({ request: REQUEST }, { signal: abort.signal })).then((answer) => answer.text());
  await vi.waitFor(() => expect(orders).toHaveLength(2));
  abort.abort();
  await expect(waiting).rejects.toThrow();
  await vi.waitFor(() => expect(orders.filter((order) => "cancel" in order)).toHaveLength(2));
});

test("propellers of a series are designed", async () => {
  const { ask, shortlists } = await asked();
  const { packs, motors, controllers } = BOX;
  const series = [{ family: "wageningen-b", blades: 4, areaRatio: 0.55 }];
  const designed = await ask("POST", `${shortlists}/designs`, {
    requirement: REQUIREMENT,
    box: { packs, motors: motors!.slice(0, 1), controllers },
    series,
  });
  expect(designed.status).toBe(200);
  expect(designed.body.designs).toHaveLength(4);
});

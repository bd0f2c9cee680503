import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { request } from "node:http";
import { expect, onTestFinished, test } from "vitest";
import type { LiveResult } from "../../shared/model/recording.ts";
import { PROPELLER } from "./exampleDocuments.ts";
import { standLog } from "./standLog.ts";
import { type Answer, listeningApp, upload } from "./startedApp.ts";

/** A first pass starts a thread; on a busy machine that takes its time. */
const PATIENT = { timeout: 30_000 };

const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");

async function send(method: string, address: string, body?: BodyInit | object): Promise<Answer> {
  const json = typeof body === "object" && !(body instanceof Uint8Array) && !(body instanceof ReadableStream);
  const response = await fetch(address, {
    method,
    ...(json && { headers: { "content-type": "application/json" } }),
    ...(body !== undefined && { body: json ? JSON.stringify(body) : (body as BodyInit) }),
  });
  const text = await response.text();
  const type = response.headers.get("content-type") ?? "";
  return { status: response.status, type, body: type.includes("json") ? JSON.parse(text) : text };
}

/** A workbench that listens, with a propeller, and one recording begun. */
async function recordingApp(start: object = { name: "Live" }, options = {}) {
  const app = await listeningApp(options);
  app.store.parts(app.projectId, "propellers").add(PROPELLER);
  const recordings = `${app.address}/api/projects/${app.projectId}/recordings`;
  const { status, body } = await send("POST", recordings, start);
  expect(status).toBe(201);
  const one = `${recordings}/${body.id}`;
  const post = (lines: string | Uint8Array, offset?: number) =>
    send("POST", `${one}/lines${offset === undefined ? "" : `?offset=${offset}`}`, lines as BodyInit);
  const lines = async () => (await fetch(`${one}/file`)).text();
  return { ...app, recordings, recording: body, one, post, lines };
}

test("lines are kept byte for byte in the order they are posted, also where one is cut between two posts", async () => {
  const { post, lines } = await recordingApp();
  expect((await post("time,thrust\n0.0,1")).body).toMatchObject({ bytes: 17, lines: 1 });
  expect((await post(".5\n0.1,1.6\n")).body).toMatchObject({ bytes: 28, lines: 3 });
  expect(await lines()).toBe("time,thrust\n0.0,1.5\n0.1,1.6\n");
});

test("a post that says where it belongs is taken once, however often and however it overlaps", async () => {
  const { post, lines } = await recordingApp();
  await post("a,b\n1,2\n", 0);
  expect((await post("a,b\n1,2\n", 0)).body).toMatchObject({ bytes: 8, lines: 2 });
  expect((await post("1,2\n3,4\n", 4)).body).toMatchObject({ bytes: 12, lines: 3 });
  expect(await lines()).toBe("a,b\n1,2\n3,4\n");
});

test("a gap is refused, nothing of it is kept, and the answer tells where to go on", async () => {
  const { post, lines } = await recordingApp();
  await post("a,b\n", 0);
  const refused = await post("3,4\n", 8);
  expect(refused).toMatchObject({ status: 422, body: { code: "recording.gap" } });
  expect(refused.body.detail).toContain("4 bytes are held");
  expect(refused.body.detail).toContain("from byte 4 on");
  expect(await lines()).toBe("a,b\n");
});

test("two programs that bring different lines for one place are told apart, and the first is kept", async () => {
  const { post, lines } = await recordingApp();
  await post("a,b\n1,2\n", 0);
  expect(await post("1,3\n", 4)).toMatchObject({ status: 422, body: { code: "recording.other-bytes" } });
  expect(await lines()).toBe("a,b\n1,2\n");
});

test("bytes that are no text in any encoding are kept as they came", async () => {
  const { one, post } = await recordingApp();
  const bytes = Uint8Array.from({ length: 256 }, (_, value) => value);
  await post(bytes);
  expect(new Uint8Array(await (await fetch(`${one}/file`)).arrayBuffer())).toEqual(bytes);
});

test("of a connection that drops in the middle of a post, what came is kept, and sending it again doubles nothing", async () => {
  const { address, one, post, lines, recording, projectId } = await recordingApp();
  const { hostname, port } = new URL(address);
  const path = `/api/projects/${projectId}/recordings/${recording.id}/lines?offset=0`;
  const cut = request({ hostname, port, path, method: "POST" });
  cut.on("error", () => {});
  cut.write("a,b\n1,2\n3");
  await expect.poll(async () => (await send("GET", one)).body.held.bytes).toBe(9);
  cut.destroy();
  expect((await post("a,b\n1,2\n3,4\n", 0)).body).toMatchObject({ bytes: 12, lines: 3 });
  expect(await lines()).toBe("a,b\n1,2\n3,4\n");
});

/** A post whose body goes on until it is ended. */
function openPost(address: string) {
  let write: (text: string) => void = () => {};
  let end = () => {};
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      write = (text) => controller.enqueue(new TextEncoder().encode(text));
      end = () => controller.close();
    },
  });
  const sent = fetch(address, { method: "POST", body, duplex: "half" } as RequestInit);
  return { write: (text: string) => write(text), end: () => end(), sent };
}

test("a body without end is taken as it comes", async () => {
  const { one, lines } = await recordingApp();
  const { write, end, sent } = openPost(`${one}/lines`);
  for (const [index, line] of ["a,b\n", "1,2\n", "3,4\n"].entries()) {
    write(line);
    await expect.poll(async () => (await send("GET", one)).body.held.lines).toBe(index + 1);
  }
  end();
  expect(await (await sent).json()).toMatchObject({ bytes: 12, lines: 3 });
  expect(await lines()).toBe("a,b\n1,2\n3,4\n");
});

test("a body that still comes when the recording is discarded is refused from then on", async () => {
  const { one, recording, lines } = await recordingApp();
  const { write, sent } = openPost(`${one}/lines`);
  write("a,b\n");
  await expect.poll(async () => (await send("GET", one)).body.held.lines).toBe(1);
  expect((await send("DELETE", `${one}?version=${recording.version}`)).status).toBe(204);
  write("1,2\n");
  expect((await sent).status).toBe(404);
  await send("POST", `${one}/restore`);
  expect(await lines()).toBe("a,b\n");
});

test("a head that the stand does not write becomes the first line", async () => {
  const { recording, post, lines } = await recordingApp({ name: "Live", header: "time (s),thrust (N)" });
  expect(recording.held).toMatchObject({ bytes: 20, lines: 1 });
  await post("0,1\n");
  expect(await lines()).toBe("time (s),thrust (N)\n0,1\n");
});

test("a recording that ends is the run that the same file gives: same hash, same coefficient to the last digit", async () => {
  const { recordings, one, post, runs } = await recordingApp();
  const log = standLog();
  for (let at = 0; at < log.length; at += 9973) await post(log.slice(at, at + 9973), at);
  const ended = await send("POST", `${one}/end`);
  expect(ended.status).toBe(201);
  const { run } = ended.body;
  // Whoever watched the recording finds the run at the same address.
  expect(one.endsWith(run.id)).toBe(true);
  expect(run.document.file).toEqual({ name: "Live.csv", sha256: sha256(log), size: log.length });
  const dropped = (await upload(runs, "Live.csv", log)).body.run;
  expect(run.document.recipe).toEqual(dropped.document.recipe);
  const [live, whole] = await Promise.all(
    [run, dropped].map(async ({ id }) => (await send("GET", `${runs}/${id}/reduction`)).body),
  );
  expect(live).toEqual(whole);
  expect((await send("GET", recordings)).body.recordings).toEqual([]);
  expect((await send("GET", one)).status).toBe(404);
  expect((await send("POST", `${one}/restore`)).status).toBe(404);
});

test("the result of all lines is the reduction of the run that they become", async () => {
  const { one, post, runs } = await recordingApp();
  const log = standLog();
  await post(log);
  const result: LiveResult = (await send("GET", `${one}/result`)).body;
  const { run } = (await send("POST", `${one}/end`)).body;
  const reduction = (await send("GET", `${runs}/${run.id}/reduction`)).body;
  expect(result.reduction).toEqual(reduction);
  expect(result).toMatchObject({ sha256: sha256(log), lines: log.split("\n").length - 1, problem: null });
  expect(result.columns).toEqual(run.document.recipe.columns);
});

test("too little for a result is told, not refused: no line, a head alone, one step", async () => {
  const { one, post } = await recordingApp();
  const result = async (): Promise<LiveResult> => (await send("GET", `${one}/result`)).body;
  expect(await result()).toMatchObject({ lines: 0, inspection: null, trace: null, reduction: null });
  const rows = standLog().split("\n");
  await post(`${rows[0]}\n`);
  expect((await result()).problem?.message).toMatch(/\w/);
  await post(`${rows.slice(1, 150).join("\n")}\n`);
  const one_ = await result();
  expect(one_.inspection?.rows).toBe(149);
  expect(one_.trace?.channels.map(({ role }) => role)).toContain("thrust");
  expect(one_).toMatchObject({ reduction: null, problem: { code: "bench.too-few-plateaus" } });
});

test("a line that is not whole yet is no part of the result", async () => {
  const { one, post } = await recordingApp();
  await post(`${standLog().split("\n").slice(0, 50).join("\n")}\n4.`);
  const { body } = await send("GET", `${one}/result`);
  expect(body).toMatchObject({ lines: 50, inspection: { rows: 49, repairs: [] } });
});

test("columns, propeller and water can be stated while it runs and go with the run", async () => {
  const { one, recording, post } = await recordingApp();
  await post(standLog());
  const columns = [
    { column: 0, role: "time", unit: "s" },
    { column: 2, role: "thrust", unit: "gf" },
    { column: 3, role: "rotationRate", unit: "rpm" },
  ];
  const document = { ...recording.document, variant: "sanded", recipe: { ...recording.document.recipe, columns } };
  expect((await send("PUT", one, { version: recording.version, document })).status).toBe(200);
  expect(await send("PUT", one, { version: recording.version, document })).toMatchObject({ status: 409 });
  expect((await send("GET", `${one}/result`)).body.columns).toEqual(columns);
  const { run } = (await send("POST", `${one}/end`)).body;
  expect(run.document).toMatchObject({ variant: "sanded", recipe: { columns } });
});

test("an instrument can be named while it runs; one that is deleted meanwhile counts as not stated", async () => {
  const { address, projectId, one, recording, post } = await recordingApp();
  await post(standLog());
  const instruments = `${address}/api/projects/${projectId}/parts/instruments`;
  const points = [0, 10, 20, 30, 20, 10, 0].map((applied) => ({ applied, reading: 2 * applied }));
  const calibration = { kind: "deadWeights", appliedUnit: "N", readingUnit: "N", appliedTolerance: 0.003, points };
  const cell = (await send("POST", instruments, { name: "Cell", role: "thrust", calibration })).body;
  const coefficient = async () => (await send("GET", `${one}/result`)).body.reduction.thrustCoefficient.value;
  const before = await coefficient();
  const recipe = { ...recording.document.recipe, instrumentIds: { thrust: cell.id } };
  const document = { ...recording.document, recipe };
  expect((await send("PUT", one, { version: recording.version, document })).status).toBe(200);
  expect((await coefficient()) / before).toBeCloseTo(0.5, 6);
  expect((await send("DELETE", `${instruments}/${cell.id}?version=${cell.version}`)).status).toBe(204);
  expect(await coefficient()).toBe(before);
});

test("what is held and what it says comes as events while lines are posted, and the end is told", async () => {
  const { one, post } = await recordingApp();
  const stop = new AbortController();
  onTestFinished(() => stop.abort());
  const stream = (await fetch(`${one}/events`, { signal: stop.signal })).body!.pipeThrough(new TextDecoderStream());
  let text = "";
  const reading = (async () => {
    for await (const chunk of stream) text += chunk;
  })();
  reading.catch(() => {});
  const events = (name: string) =>
    [...text.matchAll(new RegExp(`event: ${name}\\ndata: (.*)\\n\\n`, "g"))].map((match) => JSON.parse(match[1]!));
  const log = standLog();
  const half = log.indexOf("\n", log.length / 2) + 1;
  await post(log.slice(0, half));
  await expect.poll(() => events("held").at(-1)?.bytes, PATIENT).toBe(half);
  await expect.poll(() => events("result").at(-1)?.sha256, PATIENT).toBe(sha256(log.slice(0, half)));
  await post(log.slice(half));
  await expect.poll(() => events("result").at(-1)?.sha256, PATIENT).toBe(sha256(log));
  expect(events("result").at(-1).reduction.plateaus.length).toBeGreaterThan(
    events("result").find(({ sha256: of }) => of === sha256(log.slice(0, half))).reduction?.plateaus.length ?? 0,
  );
  await send("POST", `${one}/end`);
  await reading;
  expect(events("problem")).toEqual([expect.objectContaining({ status: 404 })]);
});

test("a discarded recording is out of the list, takes no lines, and comes back whole", async () => {
  const { recordings, one, recording, post, lines } = await recordingApp();
  await post("a,b\n1,2\n");
  expect((await send("DELETE", `${one}?version=${recording.version}`)).status).toBe(204);
  expect((await send("GET", recordings)).body.recordings).toEqual([]);
  expect((await post("3,4\n")).status).toBe(404);
  expect((await send("POST", `${one}/restore`)).body.held).toMatchObject({ bytes: 8, lines: 2 });
  await post("3,4\n", 8);
  expect(await lines()).toBe("a,b\n1,2\n3,4\n");
});

test("one without lines, or without a table in them, can not become a run, and stays", async () => {
  const { one, post } = await recordingApp();
  expect(await send("POST", `${one}/end`)).toMatchObject({ status: 422, body: { code: "recording.nothing-came" } });
  await post("hello\n");
  expect(await send("POST", `${one}/end`)).toMatchObject({ status: 422, body: { code: "log.no-numbers" } });
  await post("world\n", 6);
  expect((await send("GET", one)).body.held).toMatchObject({ bytes: 12, lines: 2 });
});

test("a recording does not grow over the greatest size of a log", async () => {
  const { one, post } = await recordingApp({ name: "Live" }, { fileLimit: 10 });
  await post("12345678\n");
  expect(await post("90\n")).toMatchObject({ status: 413, body: { code: "server.file-too-large" } });
  expect((await send("GET", one)).body.held.bytes).toBe(9);
});

test("lines from a page of another site are refused", async () => {
  const { one } = await recordingApp();
  const response = await fetch(`${one}/lines`, {
    method: "POST",
    body: "1\n",
    headers: { origin: "https://elsewhere.example" },
  });
  expect(response.status).toBe(403);
});

test("a page of the workbench may ask for a serial port, and for nothing else of the computer", async () => {
  const { address } = await recordingApp();
  const policy = (await fetch(`${address}/`)).headers.get("permissions-policy") ?? "";
  expect(policy).toContain("serial=(self)");
  expect(policy).toContain("camera=()");
});

test("a recording belongs to its project", async () => {
  const { address, store, recording } = await recordingApp();
  const other = store.projects.add({ ...store.projects.list()[0]!.document, name: "Another" });
  const answer = await send("POST", `${address}/api/projects/${other.id}/recordings/${recording.id}/lines`, "1\n");
  expect(answer.status).toBe(404);
});

test("a demonstration log posted line by line is held as the file is", async () => {
  const { post, lines } = await recordingApp();
  const log = readFileSync("samples/logs/kitchen-scale.txt", "utf8");
  let at = 0;
  for (const line of log.split(/(?<=\n)/)) {
    await post(line, at);
    at += Buffer.byteLength(line);
  }
  expect(await lines()).toBe(log);
});

import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { editRun, removeRun } from "../../web/app/edits.ts";
import { needReductions, reductions } from "../../web/app/reductions.ts";
import { parts, project, runs } from "../../web/app/session.ts";
import { forgetActs, redo, undo } from "../../web/app/undo.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const WATER = { kind: "fresh", temperature: 291.15 } as const;

/** A server with one run in it that counts versions as the real one does. */
function pretendServer(first: StoredDocument<Run>) {
  let stored = first;
  let away = false;
  const asked: string[] = [];
  const next = (document: Run) => {
    stored = { ...stored, version: stored.version + 1, document };
    return json(stored);
  };
  const answer = async (path: string, init: RequestInit = {}) => {
    asked.push(`${init.method} ${path.replace(/^.*\/runs/, "")}`);
    const body = typeof init.body === "string" ? JSON.parse(init.body) : {};
    if (init.method === "PUT")
      return body.version === stored.version ? next(body.document) : refusal(409, stored.version);
    if (init.method === "DELETE") {
      away = true;
      return new Response(null, { status: 204 });
    }
    if (path.endsWith("/restore")) {
      away = false;
      return next(stored.document);
    }
    return path.endsWith("/reduction") ? json(reductionOf({ thrustCoefficient: stored.version / 10 })) : refusal(404);
  };
  vi.stubGlobal("fetch", answer);
  return { asked, stored: () => (away ? null : stored) };
}

const json = (body: unknown) => new Response(JSON.stringify(body), { status: 200 });
const refusal = (status: number, currentVersion?: number) =>
  new Response(JSON.stringify({ detail: "No.", code: "x.y", status, currentVersion }), { status });

beforeEach(() => {
  project.value = {
    id: "p",
    version: 1,
    updatedAt: "2026-11-25T12:00:00Z",
    document: { name: "P", note: "", water: WATER, invented: false },
  };
  parts.value = { propellers: [], motors: [], controllers: [], packs: [], tethers: [], gears: [], instruments: [] };
  runs.value = [runOf("r")];
  reductions.value = new Map();
  forgetActs();
});
afterEach(() => vi.unstubAllGlobals());

describe("an edit of a run", () => {
  test("is stored, taken back and done again, each as a version of its own", async () => {
    const server = pretendServer(runOf("r"));
    await editRun("r", "Named it", (run) => ({ ...run, name: "new" }));
    expect([runs.value[0]?.version, runs.value[0]?.document.name]).toEqual([2, "new"]);
    await undo();
    expect([server.stored()?.version, server.stored()?.document.name]).toEqual([3, "r"]);
    await redo();
    expect([runs.value[0]?.version, runs.value[0]?.document.name]).toEqual([4, "new"]);
  });

  test("made right after another one names the version that the first one made", async () => {
    const server = pretendServer(runOf("r"));
    const both = [
      editRun("r", "Note", (run) => ({ ...run, note: "wet" })),
      editRun("r", "Name", (run) => ({ ...run, name: "new" })),
    ];
    expect(await Promise.all(both)).toEqual([true, true]);
    expect(server.stored()?.document).toMatchObject({ note: "wet", name: "new" });
  });
});

test("a run that is put away leaves the list and comes back by undo", async () => {
  const server = pretendServer(runOf("r"));
  await removeRun("r");
  expect([runs.value.length, server.stored()]).toEqual([0, null]);
  await undo();
  expect(runs.value.map(({ id }) => id)).toEqual(["r"]);
});

describe("reductions", () => {
  const settled = () => vi.waitFor(() => expect(reductions.value.get("r")?.state).not.toBe("working"));

  test("are asked for once while nothing changes", async () => {
    const server = pretendServer(runOf("r"));
    needReductions(["r"]);
    needReductions(["r"]);
    await settled();
    needReductions(["r"]);
    expect(server.asked).toEqual(["GET /r/reduction"]);
  });

  test("are asked for again when the run is another version, and the last one stays until then", async () => {
    pretendServer(runOf("r"));
    needReductions(["r"]);
    await settled();
    runs.value = [{ ...runOf("r"), version: 2 }];
    needReductions(["r"]);
    expect(reductions.value.get("r")).toMatchObject({ state: "working", reduction: expect.anything() });
    await settled();
  });

  test("an answer that an edit has overtaken is dropped", async () => {
    const waiting: ((response: Response) => void)[] = [];
    vi.stubGlobal("fetch", () => new Promise<Response>((resolve) => waiting.push(resolve)));
    needReductions(["r"]);
    runs.value = [{ ...runOf("r"), version: 2 }];
    needReductions(["r"]);
    waiting[1]!(json(reductionOf({ thrustCoefficient: 0.3 })));
    await settled();
    waiting[0]!(json(reductionOf({ thrustCoefficient: 0.1 })));
    await new Promise((done) => setTimeout(done, 5));
    expect(reductions.value.get("r")?.reduction?.thrustCoefficient.value).toBe(0.3);
  });

  test("that are refused keep the sentence of the refusal", async () => {
    vi.stubGlobal("fetch", async () => refusal(422));
    needReductions(["r"]);
    await settled();
    expect(reductions.value.get("r")).toMatchObject({ state: "refused", reduction: null, problem: { message: "No." } });
  });

  test("say that the workbench does not answer when it is stopped", async () => {
    vi.stubGlobal("fetch", async () => Promise.reject(new TypeError("Failed to fetch")));
    needReductions(["r"]);
    await settled();
    expect(reductions.value.get("r")?.problem?.message).toContain("does not answer");
  });
});

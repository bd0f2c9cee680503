import { beforeEach, describe, expect, test } from "vitest";
import { ApiProblem, problemFrom } from "../../web/api/apiProblem.ts";
import { type Choice, conflict, KeptNewer, settlingConflict } from "../../web/app/conflict.ts";
import { parseRoute } from "../../web/app/route.ts";
import { toasts } from "../../web/app/toast.ts";
import { act, canRedo, canUndo, forgetActs, forgetActsAbout, nextUndo, redo, undo } from "../../web/app/undo.ts";

describe("what was done can be taken back", () => {
  let log: string[];
  const noted = (name: string) => ({
    label: name,
    run: async () => log.push(`do ${name}`),
    undo: async () => log.push(`undo ${name}`),
  });

  beforeEach(() => {
    log = [];
    forgetActs();
    toasts.value = [];
  });

  test("last first, and again in the same order", async () => {
    await act(noted("a"));
    await act(noted("b"));
    await undo();
    await undo();
    await redo();
    expect(log).toEqual(["do a", "do b", "undo b", "undo a", "do a"]);
    expect([nextUndo.value, canRedo.value]).toEqual(["a", true]);
  });

  test("a new act ends what could be done again", async () => {
    await act(noted("a"));
    await undo();
    await act(noted("b"));
    await redo();
    expect(log).toEqual(["do a", "undo a", "do b"]);
  });

  test("an act that fails is told and not remembered", async () => {
    const failing = {
      label: "x",
      run: () => Promise.reject(new Error("The disk is full.")),
      undo: async () => undefined,
    };
    expect(await act(failing)).toBe(false);
    expect(canUndo.value).toBe(false);
    expect(toasts.value.map(({ tone, text }) => [tone, text])).toEqual([["problem", "The disk is full."]]);
  });

  test("an act that would change nothing is neither done nor told nor remembered", async () => {
    await act(noted("a"));
    toasts.value = [];
    expect(await act({ ...noted("b"), isNeeded: () => false })).toBe(true);
    expect([log, nextUndo.value, toasts.value]).toEqual([["do a"], "a", []]);
  });

  test("what was done to a thing that is gone is forgotten, and does not stand before what can be taken back", async () => {
    await act(noted("a"));
    await act({ ...noted("b"), about: "recording" });
    await act({ ...noted("c"), about: "recording" });
    await undo();
    forgetActsAbout("recording");
    expect([nextUndo.value, canRedo.value]).toEqual(["a", false]);
  });

  test("two acts started together run one after the other", async () => {
    const slow = {
      label: "slow",
      run: () => new Promise<void>((done) => setTimeout(done, 5)).then(() => log.push("slow")),
      undo: async () => undefined,
    };
    await Promise.all([act(slow), act(noted("b"))]);
    expect(log).toEqual(["slow", "do b"]);
  });
});

describe("a document that another tab changed", () => {
  const stale = (currentVersion: number) =>
    new ApiProblem({ status: 409, code: "store.stale", detail: "Changed.", currentVersion });
  const answering = (choice: Choice) => {
    const stop = conflict.subscribe((open) => open && queueMicrotask(() => open.choose(choice)));
    return stop;
  };

  test("is written over at its newer version when the person keeps their own", async () => {
    const stop = answering("mine");
    const versions: number[] = [];
    const write = async (version: number) => {
      versions.push(version);
      if (version < 7) throw stale(7);
      return "written";
    };
    expect(await settlingConflict({ what: "Pack", version: 3, write, load: async () => undefined })).toBe("written");
    expect(versions).toEqual([3, 7]);
    stop();
  });

  test("is loaded, and the change not made, when the person takes the newer", async () => {
    const stop = answering("newer");
    let loaded = 0;
    const write = () => Promise.reject(stale(7));
    const load = async () => {
      loaded++;
    };
    await expect(settlingConflict({ what: "Pack", version: 3, write, load })).rejects.toBeInstanceOf(KeptNewer);
    expect([loaded, conflict.value]).toEqual([1, null]);
    stop();
  });

  test("no other refusal asks a question", async () => {
    const write = () => Promise.reject(new ApiProblem({ status: 422, code: "x.y", detail: "No." }));
    await expect(settlingConflict({ what: "Pack", version: 3, write, load: async () => undefined })).rejects.toThrow(
      "No.",
    );
    expect(conflict.value).toBeNull();
  });
});

// Fields of problem details: RFC 9457 (2023), section 3.1.
describe("a refusal of the server", () => {
  test("keeps sentence, code, place and current version", () => {
    const body = {
      type: "urn:x",
      title: "Stale",
      status: 409,
      detail: "Version 3 is old.",
      code: "store.stale",
      where: "version",
      currentVersion: 5,
    };
    expect(problemFrom(409, body)).toMatchObject({
      message: "Version 3 is old.",
      code: "store.stale",
      where: "version",
      currentVersion: 5,
      isConflict: true,
    });
  });
  test.each([{ body: null }, { body: "<html>" }, { body: [] }])(
    "with the body $body still gives a sentence",
    ({ body }) => {
      expect(problemFrom(502, body)).toMatchObject({
        code: "page.unknown-answer",
        message: expect.stringMatching(/Reload/),
        isConflict: false,
      });
    },
  );
});

test.each([
  { hash: "", screen: "overview", project: null, choices: "" },
  { hash: "#/bench?project=p1&run=r1", screen: "bench", project: "p1", choices: "run=r1" },
  { hash: "#/parts", screen: "parts", project: null, choices: "" },
])("the address $hash shows $screen", ({ hash, screen, project, choices }) => {
  const route = parseRoute(hash);
  expect([route.screen, route.project, route.choices.toString()]).toEqual([screen, project, choices]);
});

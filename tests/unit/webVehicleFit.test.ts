import { describe, expect, test } from "vitest";
import { readLog } from "../../shared/log/readLog.ts";
import { DragFitData } from "../../shared/model/vehicle/dragFit.ts";
import { fitDrag } from "../../shared/vehicle/drag/fitDrag.ts";
import {
  askedOf,
  type FitAsked,
  FRESH_ASK,
  neededOf,
  readFit,
  withAsked,
} from "../../web/views/vehicle/build/fit/fitDraft.ts";
import { doubtShares, fitChart, keptInWords, METHOD_WORDS } from "../../web/views/vehicle/build/fit/fitWords.ts";

const MASS = { value: 10, doubt: 0.2 };
const asked = (change: Partial<FitAsked>): FitAsked => ({ ...FRESH_ASK, mass: 10, massDoubt: 0.2, ...change });
const table = (text: string) => readLog(new TextEncoder().encode(text), "table");
const WATER = 1000;

describe("a table becomes the measurement that a drag is fitted to", () => {
  test.each([
    { ask: asked({ method: "tow" }), kept: "Tow, 4 points" },
    { ask: asked({ method: "coastDown" }), kept: "Coast-down, 6 rows" },
    { ask: asked({ method: "timedRuns", by: "distance" }), kept: "Timed runs, 4 runs" },
    { ask: asked({ method: "terminal", netWeight: 2 }), kept: "Dive, 1 run" },
  ])("$ask.method: the example of the form is read, fitted and drawn", ({ ask, kept }) => {
    const { data, problem } = readFit(table(METHOD_WORDS[ask.method].example), ask, WATER);
    expect(problem).toBe("");
    expect(DragFitData.safeParse(data).error?.issues ?? []).toEqual([]);
    expect(keptInWords(data!)).toBe(kept);
    const fit = fitDrag(data!);
    expect(fit.dragArea.value).toBeGreaterThan(0);
    expect(fitChart(fit).series.map(({ points }) => points.length)).toEqual([
      fit.fitted.points.length,
      fit.fitted.points.length,
    ]);
    expect(fitChart(fit).y.unit).not.toBe("");
  });

  test("a tow that follows D = ½ ρ C_D A V² gives back its drag area", () => {
    // 22.5 N at 1 m/s and 90 N at 2 m/s in 1000 kg/m³: C_D A = 2 · 22.5/1000 = 0.045 m², by hand.
    const text = "speed (m/s),force (N)\n1,22.5\n2,90\n3,202.5\n";
    const { data } = readFit(table(text), asked({ doubts: [0, 0] }), WATER);
    expect(fitDrag(data!).dragArea.value).toBeCloseTo(0.045, 10);
  });

  test("a column that is not there is asked for, and a named one is taken", () => {
    const text = "one,two,three\n0,1,22\n1,2,88\n2,3,200\n";
    expect(readFit(table(text), asked({}), WATER).problem).toMatch(/no column looks like/);
    const stated = [
      { quantity: "speed" as const, column: 1, unit: "m/s" },
      { quantity: "force" as const, column: 2, unit: "N" },
    ];
    const { data, uses } = readFit(table(text), asked({ stated }), WATER);
    expect(data).toMatchObject({ method: "tow", speed: [1, 2, 3], force: [22, 88, 200] });
    expect(uses.find(({ quantity }) => quantity === "speed")?.reason).toBe("A person named it.");
  });

  test("only the rows of the chosen stretch count, and a stretch outside the log is refused", () => {
    const text = METHOD_WORDS.coastDown.example;
    const { data } = readFit(table(text), asked({ method: "coastDown", from: 1, to: 4 }), WATER);
    expect(data).toMatchObject({ time: [1, 2, 3, 4] });
    expect(readFit(table(text), asked({ method: "coastDown", from: 90 }), WATER).problem).toMatch(/no row lies/);
  });

  test("a long log is thinned to what a document holds, and says so", () => {
    const rows = Array.from({ length: 9000 }, (_, i) => `${i / 100},${(10 / (1 + i / 900)).toFixed(4)}`);
    const { data, thinned } = readFit(
      table(`time (s),speed (m/s)\n${rows.join("\n")}\n`),
      asked({ method: "coastDown" }),
      WATER,
    );
    expect(thinned).toEqual({ from: 9000, to: 1800 });
    expect(data?.method === "coastDown" && data.time.length).toBe(1800);
  });

  test("runs that go there and back in turn carry their way", () => {
    const text = "thrust (N),speed (m/s)\n10,0.6\n10,0.5\n20,0.85\n20,0.74\n";
    const { data } = readFit(table(text), asked({ method: "timedRuns", alternates: true }), WATER);
    expect(data?.method === "timedRuns" && data.runs.map(({ way }) => way)).toEqual(["there", "back", "there", "back"]);
  });

  test("a dive without its net weight says nothing yet; runs that were read stay beside a new one", () => {
    const dive = table(METHOD_WORDS.terminal.example);
    expect(readFit(dive, asked({ method: "terminal" }), WATER).data).toBeNull();
    const first = readFit(dive, asked({ method: "terminal", netWeight: 2 }), WATER).data!;
    const runs = first.method === "terminal" ? first.runs : [];
    const both = readFit(dive, asked({ method: "terminal", netWeight: 3, runs }), WATER).data!;
    expect(keptInWords(both)).toBe("Dive, 2 runs");
    expect(readFit(null, asked({ method: "terminal", runs }), WATER).data).toEqual(first);
  });
});

test.each(["tow", "coastDown", "timedRuns", "terminal"] as const)(
  "a kept %s is opened, left as it is and kept the same",
  (method) => {
    const ask = asked({ method, by: method === "timedRuns" ? "distance" : "speed", netWeight: 2, note: "calm" });
    const { data } = readFit(table(METHOD_WORDS[method].example), ask, WATER);
    expect(withAsked(data!, askedOf(data!, MASS), WATER)).toEqual(data);
  },
);

test("the columns that are needed follow the method", () => {
  expect(neededOf({ method: "coastDown", by: "distance" })).toEqual(["time", "distance"]);
  expect(neededOf({ method: "timedRuns", by: "distance" })).toEqual(["force", "distance", "time"]);
});

test("the causes of the doubt are told by their share of the variance, the greatest first", () => {
  const parts = [
    { cause: "force", standardUncertainty: 3 },
    { cause: "speed", standardUncertainty: 4 },
    { cause: "none", standardUncertainty: 0 },
  ];
  expect(doubtShares({ parts })).toEqual([
    { cause: "speed", share: "64 %" },
    { cause: "force", share: "36 %" },
  ]);
});

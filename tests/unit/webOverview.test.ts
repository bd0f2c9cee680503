import { describe, expect, test } from "vitest";
import { compareAll } from "../../shared/compare/compareVariants.ts";
import type { Vehicle } from "../../shared/model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../../shared/model/vehicle/vehicleAnswer.ts";
import { ApiProblem } from "../../web/api/apiProblem.ts";
import type { ReductionState } from "../../web/app/reductions.ts";
import {
  type FullThrottle,
  type OverviewInput,
  overviewModel,
  tellingComparison,
} from "../../web/views/overview/overviewModel.ts";
import type { VehicleLine } from "../../web/views/overview/vehicleLines.ts";
import { reductionsOf, variantGroups } from "../../web/views/variants/variantGroups.ts";
import type { Beside } from "../../web/views/vehicle/besides.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const PROJECT = { name: "Dabchick", note: "", water: { kind: "fresh", temperature: 291.15 }, invented: true } as const;
const NO_PARTS = { propellers: [], motors: [], controllers: [], packs: [], tethers: [], gears: [], instruments: [] };

const ready = (thrustCoefficient: number, fileName: string): ReductionState => ({
  state: "ready",
  reduction: reductionOf({ thrustCoefficient, fileName }),
  problem: null,
  basis: "1",
});
const refused: ReductionState = {
  state: "refused",
  reduction: null,
  problem: new ApiProblem({ status: 422, code: "bench.no-rate", detail: "No rotation rate. Needed: a column." }),
  basis: "1",
};

/** A project whose runs are named by their variant and a number; every run has looked-at columns unless told otherwise. */
function inputOf(states: Readonly<Record<string, ReductionState>>, change: Partial<OverviewInput> = {}): OverviewInput {
  const runs = Object.keys(states).map((id) => runOf(id, { variant: id.split(" ")[0]!, confirmed: true }));
  const groups = variantGroups(runs, (id) => states[id]?.reduction ?? null);
  const known = groups
    .map((group) => ({ name: group.name, reductions: reductionsOf(group) }))
    .filter(({ reductions }) => reductions.length > 0);
  const comparisons = known.length > 1 ? compareAll({ groups: known, baseline: known[0]!.name }) : [];
  return {
    project: PROJECT,
    parts: NO_PARTS,
    runs,
    groups,
    comparisons,
    reductionOf: (id) => states[id],
    fullThrottle: new Map(),
    isReynoldsCarried: true,
    ...{ propellers: 0, vehicles: [], shownVehicle: -1, shortlists: 0 },
    ...change,
  };
}

const TWO = { "printed 1": ready(0.2, "a"), "sanded 1": ready(0.3, "b") };

describe("the answer", () => {
  test("of an empty project says where to begin", () => {
    const model = overviewModel(inputOf({}));
    expect(model).toMatchObject({ tone: "open", answer: expect.stringContaining("Nothing is measured yet") });
    expect(model.steps.map(({ screen }) => screen)).toEqual(["bench"]);
  });
  test("of one variant is its coefficient with its interval", () => {
    expect(overviewModel(inputOf({ "printed 1": ready(0.2, "a") })).answer).toMatch(
      /“printed” has a thrust coefficient of 0\.200 ± 0\.004/,
    );
  });
  test("of two variants is the sentence of their comparison, and both are drawn", () => {
    const input = inputOf(TWO);
    expect(overviewModel(input)).toMatchObject({
      answer: input.comparisons[0]!.sentence,
      tone: "known",
      drawn: ["printed", "sanded"],
    });
  });
  test("of runs that can not be reduced sends to what each needs", () => {
    const { answer, steps } = overviewModel(inputOf({ "printed 1": refused }));
    expect(answer).toBe("1 log came in, and none can be worked out yet. See below what each needs.");
    expect(steps[0]).toMatchObject({
      text: "printed 1: No rotation rate. Needed: a column.",
      screen: "bench",
      choices: { run: "printed 1" },
    });
  });
});

test("the telling comparison rests on repeated mountings before it is a great change", () => {
  const input = inputOf({
    "printed 1": ready(0.2, "a"),
    "printed 2": ready(0.202, "b"),
    "sanded 1": ready(0.3, "c"),
    "sanded 2": ready(0.302, "d"),
    "steep 1": ready(0.5, "e"),
  });
  expect(tellingComparison(input.comparisons)?.variant.name).toBe("sanded");
});

describe("the lines", () => {
  test("put the variants of the answer first", () => {
    const states = { ...TWO, "a 1": refused };
    expect(overviewModel(inputOf(states)).lines.map(({ name }) => name)).toEqual(["printed", "sanded", "a"]);
  });
  test("show no bollard thrust without motor and pack", () => {
    expect(overviewModel(inputOf(TWO)).lines.map(({ bollardThrust }) => bollardThrust)).toEqual(["–", "–"]);
  });
  test("shows what is within the limits of the parts, and flags what was not measured", () => {
    const at = (thrust: number, rotationRate: number) => ({
      thrust,
      supplyCurrent: 2 * thrust,
      rotationRate,
      uncertainties: null,
    });
    const sentence = "“printed” at 100 % throttle is past what its parts allow.";
    const full = {
      point: at(50, 60),
      within: { throttle: 0.714, point: at(20, 50), sentence },
      measuredRate: 40,
    } as unknown as FullThrottle;
    const { lines, driveNotes } = overviewModel(inputOf(TWO, { fullThrottle: new Map([["printed", full]]) }));
    expect([lines[0]!.bollardThrust, lines[0]!.thrustCondition, lines[0]!.supplyCurrent]).toEqual([
      "20.0\u202fN",
      "at 71\u202f% throttle, extrapolated",
      "40.0\u202fA",
    ]);
    expect(driveNotes).toEqual([
      sentence,
      "Extrapolated: “printed” turns at 3000\u202frpm, measured up to 2400\u202frpm.",
    ]);
  });
  test("say that the power is not known where no shaft power was measured", () => {
    const reduction = reductionOf({ thrustCoefficient: 0.2, powerCoefficient: null });
    const [line] = overviewModel(inputOf({ "printed 1": { ...ready(0.2, "a"), reduction } })).lines;
    expect(line).toMatchObject({ powerCoefficient: "power not known", staticMerit: "power not known" });
  });
});

describe("what to do next", () => {
  test("asks to repeat what was mounted once, and to add what the drive lacks", () => {
    const texts = overviewModel(inputOf(TWO)).steps.map(({ text }) => text);
    expect(texts[0]).toContain("repeat “printed” and “sanded”");
    expect(texts[1]).toContain("Add a motor and a pack");
  });
  test("asks for a look at columns that nobody agreed with", () => {
    const runs = [runOf("printed 1", { variant: "printed", confirmed: false })];
    const { steps } = overviewModel(inputOf({ "printed 1": ready(0.2, "a") }, { runs }));
    expect(steps[0]).toMatchObject({
      text: "Look at the columns of printed 1 and agree with what they stand for.",
      screen: "bench",
    });
  });
});

const uncertain = (value: number, half: number) => ({
  ...{ value, standardUncertainty: half / 2 },
  interval95: [value - half, value + half],
});
const demand = (name: string, met: boolean, margin: number | null, probability: number) => ({
  ...{ demand: "speed", name, met, margin, probability, probabilityDrawn: null },
  limitedBy: { part: "pack", drive: null, limit: "supply current", text: "The pack limits it." },
});
const besideOf = (requirement: object | null): Beside => ({
  ...{ name: "Grebe", gap: "" },
  answered: {
    state: "answered",
    of: {} as Vehicle,
    answer: {
      motions: [
        {
          ...{ way: "ahead", force: uncertain(100, 7), speed: uncertain(1.78, 0.27) },
          atSpeed: {
            current: uncertain(60, 0),
            power: uncertain(850, 34),
            limitedBy: { part: "motor", text: "The motor limits it." },
          },
          shares: [{ name: "drag ahead", share: 0.93, mend: "Measure it" }],
          warnings: [],
        },
      ],
      endurance: { mission: { lasts: uncertain(13560, 2400) }, speeds: null },
      requirement,
    } as unknown as VehicleAnswer,
  },
});
const withVehicle = (vehicle: Beside) => overviewModel(inputOf(TWO, { vehicles: [vehicle], shownVehicle: 0 }));

describe("the vehicle", () => {
  test("is told with its interval, what it draws, how long it lasts, and the demand that is tightest", () => {
    const demands = [demand("Depth", true, null, 0.99), demand("Speed", true, 0.26, 0.97)];
    const { vehicleAnswer, vehicles, chain } = withVehicle(besideOf({ certain: true, demands }));
    expect(vehicleAnswer).toBe("“Grebe” goes ahead at 1.78 ± 0.27\u202fm/s and meets its 2 demands.");
    expect(vehicles[0]!.facts.map(({ value }) => value)).toEqual([
      "1.78 ± 0.27\u202fm/s",
      "100 ± 7\u202fN",
      "60.0\u202fA",
      "850 ± 34\u202fW",
      "226 ± 40\u202fmin",
    ]);
    expect(vehicles[0]!.verdict).toEqual({
      tone: "met",
      text: "Meets all it must: 2 demands, each sure enough. Tightest: Speed, margin +26\u202f%, 97\u202f% sure.",
    });
    expect(vehicles[0]!.limit).toEqual({ text: "The pack limits it.", section: "build-supply" });
    expect(chain.find(({ name }) => name === "Vehicle")).toMatchObject({ state: "stands" });
  });

  test("that misses a demand says which, and its step leads to the limiting part", () => {
    const demands = [demand("Lift", true, 0.1, 0.8), demand("Speed", false, -0.2, 0.03)];
    const { vehicleAnswer, vehicles, steps } = withVehicle(besideOf({ certain: false, demands }));
    expect(vehicleAnswer).toContain("misses 1 of its 2 demands");
    expect(vehicles[0]!.verdict).toMatchObject({ tone: "missed", text: expect.stringContaining("Speed, margin −20") });
    expect(steps.at(-1)).toMatchObject({ screen: "vehicle", choices: { vehicle: "0", section: "build-supply" } });
  });

  test("that is not sure to meet them says what to measure next", () => {
    const { steps } = withVehicle(besideOf({ certain: false, demands: [demand("Speed", true, 0.1, 0.8)] }));
    expect(steps.at(-1)!.text).toContain("93\u202f% of the doubt of its speed is drag ahead. Measure it.");
  });

  test("of which nothing is asked is sent to where it is said", () => {
    expect(withVehicle(besideOf(null)).steps.at(-1)).toMatchObject({ choices: { section: "build-require" } });
  });

  test.each<[string, Partial<Beside>, VehicleLine["state"], string]>([
    [
      "that is refused",
      { answered: { state: "refused", of: {} as Vehicle, why: "The pack has no charge." } },
      "problem",
      "no charge",
    ],
    ["that lacks a part", { answered: { state: "none" }, gap: "No motor. Choose one." }, "problem", "Choose one"],
    ["that is awaited", { answered: { state: "none" } }, "working", "working it out"],
  ])("%s says so in a sentence", (_name, change, state, words) => {
    const { vehicles, vehicleAnswer } = withVehicle({ ...besideOf(null), ...change });
    expect(vehicles[0]).toMatchObject({ state, facts: [], sentence: expect.stringContaining(words) });
    expect(vehicleAnswer).toBe("");
  });

  test("that is not there yet is the last step to take", () => {
    expect(overviewModel(inputOf(TWO)).steps.at(-1)).toMatchObject({ screen: "vehicle", label: "To the vehicle" });
  });
});

describe("from log to report", () => {
  const states = (change: Partial<OverviewInput>, of = TWO as Readonly<Record<string, ReductionState>>) =>
    overviewModel(inputOf(of, change)).chain.map(({ name, state }) => `${name} ${state}`);
  test("an empty project has nothing of it", () => {
    expect(states({}, {}).every((one) => one.endsWith("missing"))).toBe(true);
  });
  test("each stage stands by what the project holds", () => {
    expect(states({ propellers: 2, shortlists: 1 })).toEqual([
      "Log stands",
      "Variants stands",
      "Drive partly",
      "Shortlist stands",
      "Vehicle missing",
      "Report stands",
    ]);
  });
  test("a log that can not be worked out is one to look at", () => {
    const { chain } = overviewModel(inputOf({ ...TWO, "a 1": refused }));
    expect(chain[0]).toMatchObject({ state: "partly", text: "3 runs, 1 to look at" });
  });
});

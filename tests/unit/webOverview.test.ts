import { describe, expect, test } from "vitest";
import { compareAll } from "../../shared/compare/compareVariants.ts";
import { ApiProblem } from "../../web/api/apiProblem.ts";
import type { ReductionState } from "../../web/app/reductions.ts";
import { type OverviewInput, overviewModel, tellingComparison } from "../../web/views/overview/overviewModel.ts";
import { reductionsOf, variantGroups } from "../../web/views/variants/variantGroups.ts";
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

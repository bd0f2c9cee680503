import { expect, test } from "vitest";
import type { StoredParts } from "../../web/api/client.ts";
import { notesOf } from "../../web/app/notes.ts";
import { withPropeller } from "../../web/views/bench/recipeEdits.ts";
import { takenForGranted, withoutTakenPropeller } from "../../web/views/bench/takenModel.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const PROPELLER = { name: "Net propeller", diameter: 0.076, diameterUncertainty: 0.0001, finish: "sanded" };
const stored = <T>(id: string, document: T) => ({ id, version: 1, updatedAt: "2026-01-01T00:00:00Z", document });
const partsWith = (propellers: readonly string[]) =>
  ({
    propellers: propellers.map((id) => stored(id, PROPELLER)),
    motors: [],
    controllers: [],
    packs: [],
    instruments: [],
  }) as unknown as StoredParts;

const run = (change: object) => ({
  ...runOf("sanded").document,
  propellerId: "p1",
  takenPartIds: ["p1"],
  confirmed: false,
  ...change,
});

test("the only propeller of a project that a new run took is named", () => {
  const taken = takenForGranted(run({}), partsWith(["p1"]));
  expect(taken?.title).toBe("Was “Net propeller” on the stand?");
  expect(taken?.sentence).toMatch(
    /the propeller “Net propeller” was taken, the only one of its kind in this project when the log came\.$/,
  );
});

test("a propeller that was made after the log came does not take the question away", () => {
  expect(takenForGranted(run({}), partsWith(["p1", "p2"]))?.title).toBe("Was “Net propeller” on the stand?");
});

test("the water is named only where nobody stated it, and a propeller that a person chose is no longer taken", () => {
  const { recipe } = run({});
  expect(takenForGranted(run({ recipe: { ...recipe, fluidAssumed: true } }), partsWith(["p1"]))?.sentence).toMatch(
    /, in fresh water/,
  );
  const chosen = withPropeller(run({}), stored("p1", PROPELLER) as never);
  expect(chosen).not.toHaveProperty("takenPartIds");
  expect(takenForGranted(chosen, partsWith(["p1"]))).toBeNull();
});

test.each([
  { why: "a person has confirmed the run", change: { confirmed: true }, propellers: ["p1"] },
  { why: "a person chose or made the propeller", change: { takenPartIds: undefined }, propellers: ["p1"] },
  { why: "the propeller is asked for", change: { propellerId: undefined }, propellers: ["p1"] },
  { why: "there was no propeller", change: { purpose: "noLoadDry" }, propellers: ["p1"] },
] as const)("nothing is said where $why", ({ change, propellers }) => {
  expect(takenForGranted(run(change) as ReturnType<typeof run>, partsWith(propellers))).toBeNull();
});

test("another propeller takes the variant that came with the first away, and leaves one that was typed", () => {
  const taken = withoutTakenPropeller(run({ variant: "sanded" }), PROPELLER as never);
  expect(taken).toMatchObject({ variant: "" });
  expect(taken).not.toHaveProperty("propellerId");
  expect(withoutTakenPropeller(run({ variant: "polished" }), PROPELLER as never).variant).toBe("polished");
});

test("what a flagged check of the quality card says is not said a second time", () => {
  const low = { code: "bench.low-reynolds", message: "low", where: "rotation rate" };
  const other = { code: "bench.glitches", message: "glitches", where: "thrust" };
  const check = { code: "bench.reynolds-range", name: "Reynolds", measured: null, limit: "", sentence: "", mend: "" };
  const { warnings: _none, ...reduction } = reductionOf();
  const notes = (verdict: "flag" | "pass") =>
    notesOf({ ...reduction, warnings: [low, other], quality: [{ ...check, verdict }] }).map(({ code }) => code);
  expect(notes("flag")).toEqual(["bench.glitches"]);
  expect(notes("pass")).toEqual(["bench.low-reynolds", "bench.glitches"]);
});

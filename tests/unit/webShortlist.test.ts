import { expect, test } from "vitest";
import { ShortlistRequirement } from "../../shared/model/shortlist.ts";
import type { FailureCount, Shortlist, ShortlistRow } from "../../shared/model/shortlistResult.ts";
import { readLengths, readNumbers, readVoltages } from "../../web/forms/quantityLists.ts";
import { boxOf, NOTHING_LEFT_OUT, sizeText } from "../../web/views/shortlist/box.ts";
import { demandsOf, unpaired, withDemand } from "../../web/views/shortlist/demands.ts";
import { frontChart } from "../../web/views/shortlist/frontCharts.ts";
import { DEMAND_GROUPS } from "../../web/views/shortlist/requirementFields.ts";
import {
  combinationText,
  failureBars,
  marginRows,
  scoreText,
  shownColumns,
  sureText,
} from "../../web/views/shortlist/resultModel.ts";

const WATER = { kind: "fresh", temperature: 291.15 } as const;

test("every field of the form is a field of the requirement", () => {
  const everything = Object.fromEntries(
    DEMAND_GROUPS.flatMap(({ fields }) => fields).map(({ path }) => [path.filter(Boolean).join("."), 0.5]),
  );
  const parsed = ShortlistRequirement.safeParse({ ...demandsOf(everything), windingTemperature: 350, water: WATER });
  expect(parsed.error?.issues ?? []).toEqual([]);
  expect(parsed.data).toMatchObject({ thrustAtSpeed: { thrust: 0.5, speed: 0.5 }, supplyVoltage: { least: 0.5 } });
});

test("a demand is typed, changed and taken away", () => {
  const typed = withDemand(withDemand({}, "thrustAhead", 15), "diameter", 0.08);
  expect(demandsOf(typed)).toEqual({ thrustAhead: 15, diameter: 0.08 });
  expect(demandsOf(withDemand(typed, "thrustAhead", null))).toEqual({ diameter: 0.08 });
});

test("half of a pair is not asked, and the missing half is told", () => {
  const half = { "thrustAtSpeed.thrust": 5 };
  expect(demandsOf(half)).toEqual({});
  expect(unpaired(half)).toEqual(["“That speed” is missing, so that demand is not asked."]);
  expect(unpaired({ ...half, "thrustAtSpeed.speed": 1 })).toEqual([]);
  expect(unpaired({ "endurance.reserve": 0.2 })).toHaveLength(1);
});

const part = (id: string) => ({ id, document: { name: id } });
const PARTS = {
  ...{ propellers: [], instruments: [], motors: [part("m1"), part("m2")], controllers: [part("c")] },
  ...{ packs: [part("p1"), part("p2"), part("p3")], gears: [part("g")] },
  tethers: [part("bare"), { id: "t", document: { name: "t", conductor: {} } }],
} as never;
const PROPELLER = { name: "sanded" } as never;

test("the size of the search is the product of what is taken", () => {
  const box = boxOf(PARTS, [PROPELLER], { ...NOTHING_LEFT_OUT, scaleTo: [0.07] });
  // By hand: 2 motors, 1 controller, 3 packs aboard, 1 propeller in 2 sizes, a gear and none.
  expect(sizeText(box)).toBe("2 motors × 1 controller × 3 supplies × 2 propellers × 2 gearings = 24 combinations");
});

test("parts left out stay out, and only tethers that carry power feed the packs' current", () => {
  const leftOut = new Set(["m1", "sanded"]);
  const box = boxOf(PARTS, [PROPELLER], { ...NOTHING_LEFT_OUT, leftOut, throughTether: true, directDrive: false });
  expect(box.motors).toEqual([{ name: "m2" }]);
  expect(box.propellers).toEqual([]);
  expect(box.tethers).toEqual([{ name: "t", conductor: {} }]);
  expect(sizeText(box)).toContain("= 0 combinations");
});

test("what is not kept is not counted as one", () => {
  const none = {
    ...{ propellers: [], instruments: [], motors: [], controllers: [] },
    packs: [],
    gears: [],
    tethers: [],
  };
  const box = boxOf(none as never, [], NOTHING_LEFT_OUT);
  expect(sizeText(box)).toBe(
    "0 motors × no controller kept × 0 supplies × 0 propellers × direct drive = 0 combinations",
  );
});

test.each([
  { text: "70 mm, 90 mm", values: [0.07, 0.09] },
  { text: "70 mm; 9,5 cm", values: [0.07, 0.095] },
  { text: "", values: [] },
])("lengths are read one after the other: $text", ({ text, values }) => {
  const read = readLengths(text);
  expect(read.problem).toBeNull();
  expect(read.values.map((value) => Number(value.toFixed(6)))).toEqual(values);
});

test("a length without a unit is told, not guessed; pure numbers and voltages are read as such", () => {
  expect(readLengths("70, 90").problem).toContain("unit");
  expect(readNumbers("0.6, 1.0").values).toEqual([0.6, 1]);
  expect(readVoltages("16.8 V, 14.8 V").values).toEqual([16.8, 14.8]);
});

const COMBINATION = { number: 0, motor: "M", controller: "C", supply: "P", gear: null, propeller: "D" };

test("a combination is told with what is between motor and propeller", () => {
  expect(combinationText(COMBINATION)).toBe("M with C, D, on P");
  expect(combinationText({ ...COMBINATION, gear: "G" })).toBe("M with C and G, D, on P");
  expect(combinationText({ ...COMBINATION, controller: null })).toBe("M, D, on P");
});

test.each([
  { probability: 0.9999, text: "over 99\u202f%" },
  { probability: 0.953, text: "95\u202f%" },
  { probability: 0.001, text: "under 1\u202f%" },
  { probability: null, text: "–" },
])("no probability is told as certain: $probability", ({ probability, text }) => {
  expect(sureText(probability)).toBe(text);
});

const demand = (share: number | null) => ({ share, demand: "voltage" }) as ShortlistRow["demands"][number];

test("margins stand tightest first, unknown ones last", () => {
  expect(marginRows([demand(0.5), demand(null), demand(0.1)]).map(({ share }) => share)).toEqual([0.1, 0.5, null]);
});

const ROW = {
  ...{ rank: 1, combination: COMBINATION, score: 0.62, mass: null, price: 40, endurance: null, tightest: "x" },
  ...{ probability: 0.97, drawn: null, demands: [], warnings: [] },
  scores: [
    { criterion: "thrustPerPower", weight: 0.5, contribution: 0.41 },
    { criterion: "price", weight: 0.5, contribution: 0.21 },
    { criterion: "mass", weight: 0, contribution: 0 },
  ],
  points: [{ duty: "ahead", windingTemperature: 333.15, greatestThrust: 20 }],
} as unknown as ShortlistRow;

test("a score is the sum of what each weight brought", () => {
  expect(scoreText(ROW)).toBe("Score 0.62 = 0.41 for thrust for its power + 0.21 for price");
});

test("columns that say nothing of any row are left out", () => {
  const keys = shownColumns([ROW]).map(({ key }) => key);
  expect(keys).toContain("price");
  expect(keys).toContain("winding");
  expect(keys).not.toContain("mass");
  expect(keys).not.toContain("gear");
});

test("the bar of a reason is its share of all combinations", () => {
  const failure = { count: 30 } as FailureCount;
  const result = { failures: [failure], counts: { combinations: 120 } } as unknown as Shortlist;
  expect(failureBars(result)).toEqual([{ failure, share: 0.25 }]);
});

test("a front is drawn in the units people weigh in, each point with its parts", () => {
  const { x, series } = frontChart({
    ...{ x: "mass", y: "thrust", of: 3, on: 1 },
    points: [{ combination: COMBINATION, x: 0.2, y: 25 }],
  });
  expect(x.unit).toBe("g");
  expect(series[0]!.points).toEqual([{ x: 200, y: 25, note: "M with C, D, on P" }]);
});
